package main

import (
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// batchOf writes the record of a batch by the two dilutions of the demo, all as planned
// but for what is weighed.
func batchOf(t *testing.T, weighed string) {
	t.Helper()
	lines := []string{`route = "two dilutions"`, "[entries]", `1 = { step = 1, weigh = "` + weighed + `", by = "AK", at = "2026-11-28 09:00" }`}
	for _, line := range []string{`2 = { step = 2`, `3 = { step = 3`, `4 = { step = 4`, `5 = { step = 5`, `6 = { step = 6`} {
		lines = append(lines, line+`, by = "AK", at = "2026-11-28 09:30" }`)
	}
	require.NoError(t, os.WriteFile("record.toml", []byte(strings.Join(lines, "\n")+"\n"), 0o644))
}

var addOption = regexp.MustCompile(`--add ("[^"]*")`)

// Batches far and less far off are brought right by the advice, which is recorded in the
// very words that the screen gives for it.
func TestAdviceBringsABatchRight(t *testing.T) {
	skipIfSlow(t)
	t.Chdir(t.TempDir())
	output(t, "new", "b")
	for _, weighed := range []string{"6.00 g", "4.00 g", "1.80 g", "1.28 g", "0.75 g"} {
		batchOf(t, weighed)
		args := []string{"made", "b/dye.toml", "record.toml", "--trials", "10000", "--all"}
		screen := output(t, args...)
		assert.Contains(t, screen, "\nOUTSIDE  two dilutions\n", weighed)
		_, advice, ok := strings.Cut(screen, "\nOnce done:")
		require.True(t, ok, weighed)
		args = append(args, "--by", "AK")
		for _, add := range addOption.FindAllStringSubmatch(advice, -1) {
			args = append(args, "--add", strings.Trim(add[1], `"`))
		}
		assert.Contains(t, output(t, args...), "\nINSIDE  two dilutions\n", weighed)
	}
}

// The JSON of a batch that was made as planned has the very figures of the plan, as
// minim compare gives them.
func TestMadeAsPlannedInJSON(t *testing.T) {
	skipIfSlow(t)
	t.Chdir(t.TempDir())
	output(t, "new", "b")
	batchOf(t, "1.50 g")
	type figures struct {
		Analytic, MonteCarlo map[string]any
		LeftOver             float64 `json:"left_over_mL"`
		Budget               []map[string]any
	}
	var made struct {
		Schema        string
		Planned, Made figures
	}
	var compared struct{ Routes []figures }
	require.NoError(t, json.Unmarshal([]byte(output(t, "made", "b/dye.toml", "record.toml", "--trials", "20000", "--format", "json")), &made))
	require.NoError(t, json.Unmarshal([]byte(output(t, "compare", "b/dye.toml", "--route", "two dilutions", "--trials", "20000", "--format", "json")), &compared))
	assert.Equal(t, "minim.made/1", made.Schema)
	assert.Equal(t, compared.Routes[0], made.Made)
	assert.Equal(t, compared.Routes[0], made.Planned)
	assert.NotEmpty(t, made.Made.Budget)
}

// An entry that is added leaves every earlier byte of the record as it was.
func TestAddAppends(t *testing.T) {
	t.Chdir(t.TempDir())
	output(t, "new", "b")
	output(t, "new", "--record", "b/dye.toml", "--route", "two dilutions", "record.toml")
	before := read(t, "record.toml")
	output(t, "made", "b/dye.toml", "record.toml", "--trials", "10000", "--by", "AK", "--at", "2026-11-28 10:00", "--add", "step 1: weighed 1.53 g", "--add", "bench: 22.5 °C within 1 °C")
	assert.Equal(t, before+`8 = { step = 1, weigh = "1.53 g", by = "AK", at = "2026-11-28 10:00" }
9 = { temperature = "22.5 °C", within = "1 °C", by = "AK", at = "2026-11-28 10:00" }
`, read(t, "record.toml"))
}
