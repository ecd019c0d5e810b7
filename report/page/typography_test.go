package page

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/words/inline"
)

// Symbols are italic, their indices upright, whatever a name holds; what is copied stays.
func TestSymbolsInAllFormats(t *testing.T) {
	text := inline.Symbol("γ") + " = " + inline.Symbol("V", "1") + " -0.15 g of a*b_<i> by " + inline.Verbatim("minim -5 of 2026-11-28")
	p := &Page{Blocks: []Block{Paragraph{Label: "Result", Text: text}, &Table{Head: []string{inline.Symbol("x"), inline.Symbol("u", "c")}, Rows: Rows([][]string{{"-1", inline.Symbol("y") + " -2"}})}}}
	assert.Equal(t, "Result: γ = V_1 −0.15 g of a*b_<i> by minim -5 of 2026-11-28\nx   u_c\n−1  y −2\n", p.Text(80))
	assert.Equal(t, "Result: *γ* = *V*<sub>1</sub> −0.15 g of a\\*b\\_\\<i\\> by minim -5 of 2026-11-28\n\n| *x* | *u*<sub>c</sub> |\n| --: | --: |\n| −1 | *y* −2 |\n", string(p.Markdown()))
	html := htmlOf(t, p)
	assert.Contains(t, html, "<b>Result:</b> <i>γ</i>\u00a0=\u00a0<i>V</i><sub>1</sub> −0.15\u00a0g of a*b_&lt;i&gt; by minim -5 of <span class=\"date\">2026-11-28</span></p>")
	assert.Contains(t, html, "<th scope=\"col\" class=\"number\"><i>u</i><sub>c</sub></th>")
}

// A hyphen before a number that begins a word is a minus sign; every other stays.
func TestMinus(t *testing.T) {
	for text, want := range map[string]string{
		"-1": "−1", "-0.15 to -0.1": "−0.15 to −0.1", "(-1": "(−1", "2-5": "2-5", "a-5": "a-5", "--5": "--5", "- 5": "- 5", "=-5": "=-5", "2026-11-28": "2026-11-28", "1e-5": "1e-5",
	} {
		assert.Equal(t, want, strings.ReplaceAll(onScreen(text), unbroken, " "))
	}
}

// No line ends between a number and its unit, within a unit or at a sign.
func TestBound(t *testing.T) {
	for text, want := range map[string]string{
		"0.5 mL of": "0.5~mL of", "(0.0598 ± 0.0028) % w/v, k = 1.96": "(0.0598~±~0.0028)~%~w/v, k~=~1.96", "JCGM 106, ISO 835 class B (see)": "JCGM~106, ISO~835~class~B (see)",
		"over 99.9 in 100 inside, or under 0.1 in 100": "over~99.9~in~100~inside, or under~0.1~in~100", "piece 2, steps 4 and 6": "piece~2, steps~4~and 6", "(at 5) in all": "(at 5) in all", "between -0.15 and 0.9 mL": "between −0.15~and 0.9~mL", inline.Verbatim("a 5 b") + " 5 b": "a 5 b 5~b",
	} {
		assert.Equal(t, want, strings.ReplaceAll(onScreen(text), unbroken, "~"))
	}
	assert.Equal(t, []string{"up to", "(0.1 ± 0.2) % w/v", "in"}, wrap("up to (0.1 ± 0.2) % w/v in", 18))
}

// Decimal marks of a column stand below each other; several units stand in a column of theirs.
func TestDecimalMarks(t *testing.T) {
	p := &Page{Blocks: []Block{&Table{Head: []string{"", "u", "share"}, Numbers: 1, Rows: Rows([][]string{
		{"a", "0.144 mL", "29 %"}, {"b", "-2 g", "9.1 %"}, {"c", "0.00866", "0.73 %"}, {"d", "", "under 0.01 %"}, {"e", "none", ""}, {"f", "not possible"},
	})}}}
	assert.Equal(t, strings.Join([]string{
		"           u         share",
		"a   0.144 mL       29 %",
		"b  −2 g             9.1 %",
		"c   0.00866         0.73 %",
		"d             under 0.01 %",
		"e       none",
		"f  not possible", "",
	}, "\n"), p.Text(80))
	html := htmlOf(t, p)
	for _, want := range []string{
		`<th scope="col" colspan="2" class="number">u</th><th scope="col" class="number">share</th>`,
		"<td class=\"number parted n2\">0.144</td><td class=\"unit\">mL</td><td class=\"number n2 whole\">29\u00a0%</td>",
		"<td class=\"number parted n5 whole\">−2</td><td class=\"unit\">g</td><td class=\"number n1\">9.1\u00a0%</td>",
		"<td class=\"number parted\">0.00866</td><td class=\"unit\"></td>",
		"<td colspan=\"2\" class=\"number\">none</td>", "<td colspan=\"3\">not possible</td>",
	} {
		assert.Contains(t, html, want)
	}
}
