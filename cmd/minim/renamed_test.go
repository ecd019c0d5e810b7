package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
)

// nasty are names that were data once, or look like the program's own words.
var nasty = []string{
	"step 1 of two", "boat scale", "jug of solvent", "flask, piece 2", "entrys", "not stated", "as planned", "the day", "temperature",
	"evaporation", "the bench", "rung 1 of two", "day of one", "of solute", "hazard 1", "step 2 of two, tare", "x, not rinsed", "waterish",
	"fill 1 for the line of the jug", "routes", "2 and water", "boat", "solution", "not above 1 g/L", "no instrument", "%d (piece 2)",
}

var (
	aName    = regexp.MustCompile(`(?m)\b(?:name|weighed-as|title|note) = "([^"]+)"`)
	aDigest  = regexp.MustCompile(`(?m)^digest = .*\n`)
	kitNamed = regexp.MustCompile(`(?m)^kit = "[^"]*"`)
)

// writtenBench is a prep with its kit and perhaps a record, by their contents.
type writtenBench struct{ prep, kit, record string }

func readBench(t *testing.T, prep, record string) writtenBench {
	t.Helper()
	b := writtenBench{prep: read(t, prep), kit: read(t, filepath.Join(filepath.Dir(prep), "bench.toml"))}
	if record != "" {
		b.record = aDigest.ReplaceAllString(read(t, record), "")
	}
	return b
}

// names lists what the files name, each once. A solvent that is known by its name is what
// it is called, and so is a solid that is known to take up water.
func (b *writtenBench) names() (names []string) {
	for _, found := range aName.FindAllStringSubmatch(b.kit+"\n"+b.prep, -1) {
		if _, known := equipment.FindLiquid(found[1]); !known && !equipment.DrawsWater(found[1]) && !slices.Contains(names, found[1]) {
			names = append(names, found[1])
		}
	}
	return names
}

// renamed gives all that has a name another, and writes the files under the names given.
func (b *writtenBench) renamed(t *testing.T, to []string, prep, kit, record string) {
	t.Helper()
	var pairs []string
	for i, name := range b.names() {
		pairs = append(pairs, fmt.Sprintf("%q", name), fmt.Sprintf("%q", to[i]))
	}
	with := strings.NewReplacer(pairs...)
	require.NoError(t, os.WriteFile(prep, []byte(kitNamed.ReplaceAllString(with.Replace(b.prep), fmt.Sprintf("kit = %q", kit))), 0o644))
	require.NoError(t, os.WriteFile(kit, []byte(with.Replace(b.kit)), 0o644))
	if b.record != "" {
		require.NoError(t, os.WriteFile(record, []byte(with.Replace(b.record)), 0o644))
	}
}

// figures are all numbers and truths of a JSON by their places, and the texts that are no
// words.
func figures(t *testing.T, text string) map[string]any {
	t.Helper()
	var whole any
	decoder := json.NewDecoder(strings.NewReader(text))
	decoder.UseNumber()
	require.NoError(t, decoder.Decode(&whole))
	all := make(map[string]any)
	var walk func(place string, x any)
	walk = func(place string, x any) {
		switch x := x.(type) {
		case map[string]any:
			for key, y := range x {
				walk(place+"."+key, y)
			}
		case []any:
			all[place] = fmt.Sprint(len(x), " items")
			for i, y := range x {
				walk(fmt.Sprintf("%s[%d]", place, i), y)
			}
		case string:
			if strings.ContainsFunc(x, unicode.IsLetter) {
				x = "words"
			}
			all[place] = x
		default:
			all[place] = x
		}
	}
	walk("", whole)
	return all
}

// commandsOn are the figures of what can be asked of a bench.
func commandsOn(t *testing.T, prep, record, route string, finds bool) map[string]map[string]any {
	t.Helper()
	all := make(map[string]map[string]any)
	ask := func(args ...string) {
		all[args[0]] = figures(t, output(t, append(args, "--format", "json", "--trials", "20000")...))
	}
	ask("compare", prep)
	if finds {
		ask("plan", prep, "--steps", "1")
		ask("buy", prep, "--steps", "1")
	}
	if _, err := os.Stat(record); err != nil {
		output(t, "new", "--record", prep, "--route", route, record)
	}
	ask("made", prep, record)
	return all
}

// TestNamesAreNoFigures: whatever instruments, materials, routes, titles and files are
// called, every figure is the same to the last bit: those of a comparison, a search, an
// advice what to buy and a batch.
func TestNamesAreNoFigures(t *testing.T) {
	skipIfSlow(t)
	preps, err := filepath.Glob("../../testdata/benches/*/*.toml")
	require.NoError(t, err)
	preps = slices.DeleteFunc(preps, func(p string) bool { return filepath.Base(p) == "bench.toml" })
	for _, prep := range append(preps, "demo/dye.toml") {
		t.Run(filepath.Base(filepath.Dir(prep)), func(t *testing.T) {
			record := ""
			if strings.HasPrefix(prep, "demo") {
				record = "demo/batch.toml"
			}
			bench := filepath.Base(filepath.Dir(prep))
			sameFigures(t, readBench(t, prep, record), bench == "pistons" || bench == "pharmacy") // a search goes by the same models in all
		})
	}
}

func sameFigures(t *testing.T, b writtenBench, finds bool) {
	t.Chdir(t.TempDir())
	names := b.names()
	others := make([]string, len(names))
	for i := range names {
		others[i] = nasty[(i*7)%len(nasty)]
		if i >= len(nasty) {
			others[i] += fmt.Sprintf(", %d", i)
		}
	}
	first := regexp.MustCompile(`(?s)\[\[route\]\]\nname = "([^"]+)"`).FindStringSubmatch(b.prep)[1]
	b.renamed(t, names, "prep.toml", "kit.toml", "record.toml")
	b.renamed(t, others, "step 1 of two.toml", "boat, piece 2.toml", "entrys.toml")
	want := commandsOn(t, "prep.toml", "record.toml", first, finds)
	got := commandsOn(t, "step 1 of two.toml", "entrys.toml", others[slices.Index(names, first)], finds)
	for command := range want {
		assert.NotEmpty(t, want[command], command)
		for place, figure := range want[command] {
			if got[command][place] != figure {
				assert.Fail(t, "a name is a figure", "%s: %s is %v, renamed %v", command, place, figure, got[command][place])
			}
		}
		assert.Len(t, got[command], len(want[command]), command)
	}
}
