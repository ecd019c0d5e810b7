package answer_test

import (
	"context"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/answer"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

// The report of the demo has every input in its table, and whoever adds up the contributions that it
// prints comes to the u that it states.
func TestReportHasAllInputs(t *testing.T) {
	q, err := answer.Read(answer.Files{Kit: fileAt(t, "../../cmd/minim/demo/bench.toml"), Prep: fileAt(t, "../../cmd/minim/demo/dye.toml")})
	require.NoError(t, err)
	q.Settings = uncertainty.Settings{Trials: 10_000, Seed: 1, Coverage: 0.95}
	a, err := answer.Ask(context.Background(), "report", q)
	require.NoError(t, err)
	text, err := a.In("markdown")
	require.NoError(t, err)
	_, table, found := strings.Cut(string(text), "## Inputs")
	require.True(t, found)
	table, _, _ = strings.Cut(table, "\n## ")
	r := a.Comparison.Results[a.Comparison.Verdict.Use]
	variance, rows := 0.0, 0
	for line := range strings.Lines(table) {
		cells := strings.Split(line, "|")
		if len(cells) != 10 || strings.TrimSpace(cells[1]) == "" || strings.Contains(cells[1], "---") {
			continue
		}
		part, err := strconv.ParseFloat(strings.ReplaceAll(strings.TrimSpace(cells[7]), "−", "-"), 64)
		require.NoError(t, err, line)
		variance += part * part
		rows++
	}
	assert.Equal(t, len(r.Analytic.Budget), rows)
	near.Relative(t, "u", r.Analytic.StandardUncertainty, math.Sqrt(variance), 2e-3)
	assert.NotContains(t, string(text), "others together")
	for _, want := range []string{"ISO 4788:2005 class B, tall form (one source), of the limit ±0.5 mL", "the kit states", "careful reading, within 0.2 of a division of 0.5 mL", "rectangular within ±3 °C", "type B", "table of liquids: ethanol (two sources)"} {
		assert.Contains(t, table+string(text), want)
	}
}
