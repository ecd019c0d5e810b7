package page

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// table has all that a table can: two lines of head, a marked row, names that are
// shortened, a row that runs across.
func table() *Table {
	return &Table{Head: []string{"", "strength", "left over"}, Units: []string{"route", "% w/v", "mL"}, Numbers: 1, Indent: 4, Most: 30, Least: 4,
		Rows: []Row{
			{Lead: "a  ", Cells: []string{"two dilutions", "0.0393", "36.5"}, Marked: true},
			{Lead: "b  ", Cells: []string{"drops", "not possible"}},
		}}
}

func TestTableInAllFormats(t *testing.T) {
	p := &Page{Blocks: []Block{table()}}
	assert.Equal(t, strings.Join([]string{
		"                   strength  left over",
		"    route             % w/v         mL",
		"*a  two dilutions    0.0393       36.5",
		" b  drops          not possible", "",
	}, "\n"), p.Text(80))
	assert.Equal(t, strings.Join([]string{
		"           strength  left over",
		"    route     % w/v         mL",
		"*a  two…     0.0393       36.5",
		" b  drops  not possible", "",
	}, "\n"), p.Text(30), "names are shortened until it fits, to no fewer than the longest that does")
	assert.Equal(t, strings.Join([]string{
		"| route | strength % w/v | left over mL |",
		"| --- | --: | --: |",
		"| **a two dilutions** | 0.0393 | 36.5 |",
		"| b drops | not possible |  |", "",
	}, "\n"), string(p.Markdown()))
	html := htmlOf(t, p)
	assert.Contains(t, html, `<tr class="marked"><th scope="row">a  two dilutions</th><td class="number">0.0393</td>`)
	assert.Contains(t, html, `<td colspan="2">not possible</td>`)
}

func htmlOf(t *testing.T, p *Page) string {
	t.Helper()
	data, err := p.HTML()
	require.NoError(t, err)
	return string(data)
}

// TestBlocksInAllFormats: one page of every other block, in each format.
func TestBlocksInAllFormats(t *testing.T) {
	p := &Page{Title: "Dye", Kind: "screen", Blocks: []Block{
		Paragraph{Text: "INVENTED", Style: "bar"},
		Title{Text: "Dye"},
		Paragraph{Label: "Wanted", Text: "15 mL"},
		Heading{Label: "USE", Text: "two steps"},
		Steps{Items: []string{"weigh", "mix"}},
		Gap{},
		Facts{List: []Fact{{"Strength", "0.04"}, {"", "or so"}}, At: 14, Indent: 2},
		Only{Blocks: []Block{Heading{Text: "What spoils it"}}},
		Only{Text: true, Blocks: []Block{Paragraph{Text: "only here", At: 4}}},
		Gap{},
		Notes{Label: "Assumed", Items: []string{"a", "b"}, At: 13},
		Notes{Label: "Cautions", Items: []string{"A.", "B."}, At: 13, Join: " "},
	}}
	assert.Equal(t, strings.Join([]string{
		"INVENTED", "Dye", "Wanted: 15 mL", "", "USE  two steps", "   1   weigh", "   2   mix", "",
		"  Strength    0.04", "              or so", "    only here", "", "Assumed:     a; b", "Cautions:    A. B.", "",
	}, "\n"), p.Text(80))
	assert.Equal(t, strings.Join([]string{
		"**INVENTED**", "", "# Dye", "", "Wanted: 15 mL", "", "## USE: two steps", "", "1. weigh", "2. mix", "",
		"- **Strength:** 0.04; or so", "", "## What spoils it", "", "## Assumed", "", "- a", "- b", "", "## Cautions", "", "- A.", "- B.", "",
	}, "\n"), string(p.Markdown()))
	html := htmlOf(t, p)
	_, body, _ := strings.Cut(html, "<main>\n")
	assert.Equal(t, strings.Join([]string{
		`<p class="bar">INVENTED</p>`, "<header>", "<h1>Dye</h1>", "</header>", "<p><b>Wanted:</b> 15\u00a0mL</p>", "<h2>USE: two steps</h2>",
		"<ol>", "<li>weigh</li>", "<li>mix</li>", "</ol>", "<dl>", "<dt>Strength</dt><dd>0.04; or so</dd>", "</dl>", "<h2>What spoils it</h2>",
		"<h2>Assumed</h2>", "<ul>", "<li>a</li>", "<li>b</li>", "</ul>", "<h2>Cautions</h2>", "<ul>", "<li>A.</li>", "<li>B.</li>", "</ul>", "</main>", "</body>", "</html>", "",
	}, "\n"), body)
	assert.NotContains(t, html, "<script")
}

// TestFoldAndFigure: text shows a fold open; HTML closes it and holds the picture, which
// Markdown has in a file beside it.
func TestFoldAndFigure(t *testing.T) {
	p := &Page{Blocks: []Block{Fold{Title: "More", Blocks: []Block{Paragraph{Text: "words"}, Figure{PNG: []byte("png"), File: "a b.png", Alt: "dots", Caption: "Spread"}}}}}
	assert.Equal(t, "More\nwords\n", p.Text(80))
	assert.Equal(t, "## More\n\nwords\n\n![dots](a%20b.png)\n\nSpread\n", string(p.Markdown()))
	assert.Contains(t, htmlOf(t, p), "<details>\n<summary>More</summary>\n<p>words</p>\n<figure>\n<img src=\"data:image/png;base64,cG5n\" alt=\"dots\">")
}

// TestWordsStayBeside: another column of words stands to the left, behind names that are as
// wide as was said.
func TestWordsStayBeside(t *testing.T) {
	p := &Page{Blocks: []Block{&Table{Head: []string{"", "", "inside"}, Units: []string{"route", "", "in 100"}, Numbers: 2, Indent: 2, Most: 30, Least: 6, NameWidth: 9,
		Rows: []Row{{Cells: []string{"direct", "before", "99.0"}}, {Cells: []string{"", "now", "98.0"}}}}}}
	assert.Equal(t, strings.Join([]string{
		"                     inside", "  route              in 100", "  direct     before  99.0", "             now     98.0", "",
	}, "\n"), p.Text(80))
}
