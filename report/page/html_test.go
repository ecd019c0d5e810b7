package page

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// No line of a page breaks a date, wherever it stands, and nothing else becomes markup.
func TestDatesStayWhole(t *testing.T) {
	p := &Page{Title: "of 2026-11-28", Blocks: []Block{
		Paragraph{Text: "from 2026-11-28 09:40 to 2026-11-29, <b>12026-11-281"},
		&Table{Head: []string{"at", "when"}, Rows: Rows([][]string{{"1", "2026-11-28 09:40"}})},
		Facts{List: []Fact{{"made", "2026-11-28"}}},
	}}
	made, err := p.HTML()
	require.NoError(t, err)
	for _, want := range []string{
		"<p>from <span class=\"date\">2026-11-28</span>\u00a009:40\u00a0to <span class=\"date\">2026-11-29</span>, &lt;b&gt;12026-11-281</p>",
		"<td class=\"number\"><span class=\"date\">2026-11-28</span>\u00a009:40</td>", "<dd><span class=\"date\">2026-11-28</span></dd>",
		"<title>of 2026-11-28</title>", ".date { white-space: nowrap; }",
	} {
		assert.Contains(t, string(made), want)
	}
}
