package answer

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/page"
	"minim/uncertainty"
)

// A report has its result first, then what can be quoted, then the rest; how much rests on what is
// assumed stands beside the result, and how often another route comes closer does not stand in it.
func TestReportHasItsResultFirst(t *testing.T) {
	p := paperOf(100, 10)
	line := uncertainty.Contribution{Share: 0.4, Contribution: 1}
	line.Distribution, line.Assumed, line.Ground.Trust = uncertainty.Normal{Sigma: 1}, true, "from memory"
	p.Results[0].Analytic.Budget = []uncertainty.Contribution{line}
	report := reportPage(p)
	var heads []string
	for _, h := range blocksOf[page.Heading](report) {
		heads = append(heads, h.Text)
	}
	require.GreaterOrEqual(t, len(heads), 4)
	assert.Equal(t, []string{"Result", "Method, to be quoted", "Purpose", "What is stated"}, heads[:4])
	method := slices.IndexFunc(report.Blocks, func(b page.Block) bool { h, is := b.(page.Heading); return is && h.Text == "Method, to be quoted" })
	beside := slices.IndexFunc(report.Blocks, func(b page.Block) bool {
		text, is := b.(page.Paragraph)
		return is && text.Text == "40 % of the variance rests on assumed values, 40 % on figures from memory."
	})
	assert.True(t, beside >= 0 && beside < method, "%d of %d", beside, method)
	assert.NotContains(t, string(report.Markdown()), "closer to the target")
}
