package main

import (
	"encoding/json"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// layers from the ground up: a package may import what stands before it.
var layers = []string{
	"minim/report/words/clause",
	"minim/report/words/inline",
	"minim/report/words/note",
	"minim/uncertainty/parallel",
	"minim/uncertainty/portable",
	"minim/uncertainty/rounding",
	"minim/uncertainty/random",
	"minim/uncertainty/statistics",
	"minim/uncertainty/posterior",
	"minim/uncertainty/mixture",
	"minim/uncertainty/law",
	"minim/uncertainty/sharp",
	"minim/uncertainty/distribution",
	"minim/uncertainty",
	"minim/equipment/quantity",
	"minim/equipment/benchfile",
	"minim/report/words/influence", // what messages of route name
	"minim/equipment",
	"minim/uncertainty/strengths",
	"minim/uncertainty/hazards",
	"minim/uncertainty/mixed",
	"minim/uncertainty/policy", // below route, whose verdict goes by it
	"minim/uncertainty/route",
	"minim/uncertainty/tolerances",
	"minim/uncertainty/contest",
	"minim/uncertainty/search",
	"minim/report/words/verb", // below plan, which names its routes, and record, which reads additions, by the words of steps
	"minim/uncertainty/plan",
	"minim/uncertainty/purchase",
	"minim/uncertainty/rescue",
	"minim/uncertainty/record",
	"minim/uncertainty/bench",
	"minim/report/page",
	"minim/report/words/equation",
	"minim/report/words/reminder",
	"minim/report/words/beside",
	"minim/report/words/kits",
	"minim/report/words", // every sentence of a result: data and pages read it
	"minim/report/words/glance",
	"minim/report/data",
	"minim/report/words/picture",
	"minim/report/figure",
	"minim/report/answer",
	"minim/report/figure/png",
	"minim/cmd/minim/demo",
	"minim/cmd/minim",
}

// testing packages stand beside the house.
var besideTheHouse = []string{"minim/uncertainty/near", "minim/uncertainty/smallbench", "minim/uncertainty/independent", "minim/equipment/benchfile/broken", "minim/report/webtest"}

// TestImportArrows holds the order of the packages: data flows one way, and the
// engine imports nothing else but the standard library and gonum.
func TestImportArrows(t *testing.T) {
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", "minim/...").Output()
	require.NoError(t, err)
	decoder := json.NewDecoder(strings.NewReader(string(out)))
	seen := 0
	for decoder.More() {
		var p struct {
			ImportPath string
			Imports    []string
		}
		require.NoError(t, decoder.Decode(&p))
		if slices.Contains(besideTheHouse, p.ImportPath) {
			continue
		}
		level := slices.Index(layers, p.ImportPath)
		require.GreaterOrEqual(t, level, 0, "%s has no place in the house: add it to layers", p.ImportPath)
		seen++
		for _, path := range p.Imports {
			if strings.HasPrefix(path, "minim/") {
				assert.Less(t, slices.Index(layers, path), level, "%s must not import %s", p.ImportPath, path)
				assert.NotContains(t, besideTheHouse, path, "%s imports a package for tests", p.ImportPath)
				assert.False(t, p.ImportPath == "minim/report/data" && path == "minim/report/page", "data know nothing of pages")
			} else if p.ImportPath == "minim/report/answer" {
				assert.NotContains(t, []string{"os", "io", "io/fs", "net/http", "github.com/spf13/pflag"}, path, "answers are given to a page in a browser as well")
			} else if p.ImportPath == "minim/uncertainty/portable" {
				assert.NotContains(t, path, ".", "what is the same on every machine rests on nothing but the standard library")
			} else if strings.HasPrefix("minim/uncertainty/parallel", p.ImportPath) && strings.Contains(path, ".") {
				assert.True(t, strings.HasPrefix(path, "gonum.org/v1/gonum/"), "the engine must not import %s", path)
			}
		}
	}
	assert.Equal(t, len(layers), seen, "a layer is missing")
}

// TestTopLevel holds what stands at the top, as DEVELOPERS.md has it. It looks at
// what git keeps, so that a user's own folders do not count.
func TestTopLevel(t *testing.T) {
	out, err := exec.Command("git", "ls-files", "--full-name", "../..").Output()
	if err != nil {
		t.Skip("not a git checkout, so that kept files cannot be told from others")
	}
	var found []string
	for _, path := range strings.Fields(string(out)) {
		top, _, _ := strings.Cut(path, "/")
		if !strings.HasPrefix(top, ".") && !slices.Contains(found, top) {
			found = append(found, top)
		}
	}
	slices.Sort(found)
	assert.Equal(t, []string{"DEVELOPERS.md", "README.md", "cmd", "equipment", "go.mod", "go.sum", "report", "testdata", "uncertainty"}, found)
}

// TestDirectDependencies holds the five that DEVELOPERS.md gives reasons for.
func TestDirectDependencies(t *testing.T) {
	out, err := exec.Command("go", "list", "-m", "-f", "{{if not (or .Indirect .Main)}}{{.Path}}{{end}}", "all").Output()
	require.NoError(t, err)
	assert.Equal(t, []string{
		"github.com/pelletier/go-toml/v2", "github.com/spf13/pflag", "github.com/stretchr/testify",
		"gonum.org/v1/gonum", "gonum.org/v1/plot",
	}, strings.Fields(string(out)))
}
