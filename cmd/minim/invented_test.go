package main

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/cmd/minim/demo"
)

const inventedMark = "INVENTED EXAMPLE"

// Whatever is made of the example that comes with the program says so, on screens, on paper
// and in JSON, also where the user's own files lie in the folder; what is made of those files
// does not.
func TestTheExampleIsMarked(t *testing.T) {
	skipIfSlow(t)
	t.Chdir(t.TempDir())
	output(t, "new", ".")
	require.NoError(t, os.WriteFile(demo.Files.Record.Name, demo.Files.Record.Data, 0o644))
	for _, command := range []struct {
		words, own []string
	}{
		{[]string{"compare", "--trials", "10000"}, []string{demo.Files.Prep.Name}}, {[]string{"plan", "--trials", "10000", "--steps", "0"}, []string{demo.Files.Prep.Name}},
		{[]string{"buy", "--trials", "10000", "--steps", "0"}, []string{demo.Files.Prep.Name}}, {[]string{"made", "--trials", "10000"}, []string{demo.Files.Prep.Name, demo.Files.Record.Name}},
		{[]string{"kit"}, []string{demo.Files.Kit.Name}}, {[]string{"report", "--trials", "10000"}, []string{demo.Files.Prep.Name}},
		{[]string{"sheet", "--trials", "10000"}, []string{demo.Files.Prep.Name}}, {[]string{"label", "--trials", "10000"}, []string{demo.Files.Prep.Name}},
	} {
		for _, variant := range variants(command.words[0]) {
			args := slices.Concat(command.words, variant)
			checkMark(t, true, variant, output(t, args...))
			checkMark(t, false, variant, output(t, slices.Concat(args, command.own)...))
		}
	}
}

// variants are the forms in which a command prints.
func variants(command string) [][]string {
	switch command {
	case "kit":
		return [][]string{nil}
	case "report", "sheet", "label":
		return [][]string{nil, {"--out", "page.html", "--force"}}
	}
	return [][]string{nil, {"--format", "markdown"}, {"--format", "json"}}
}

func checkMark(t *testing.T, want bool, variant []string, printed string) {
	t.Helper()
	if len(variant) > 0 && variant[0] == "--out" {
		page, err := os.ReadFile(variant[1])
		require.NoError(t, err)
		printed = string(page)
	}
	if strings.Join(variant, " ") == "--format json" {
		var out struct {
			Invented *bool `json:"invented_example"`
		}
		require.NoError(t, json.Unmarshal([]byte(printed), &out))
		require.NotNil(t, out.Invented)
		assert.Equal(t, want, *out.Invented)
		return
	}
	assert.Equal(t, want, strings.Contains(printed, inventedMark))
	if want && variant == nil {
		assert.Equal(t, 0, strings.Index(strings.TrimLeft(printed, "*\n"), inventedMark), "the mark comes first")
	}
}
