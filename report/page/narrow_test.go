package page

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A name is cut at the end of a word, and never inside a number.
func TestNamesAreCutAtWords(t *testing.T) {
	for _, c := range []struct {
		name string
		most int
		want string
	}{
		{"two dilutions", 13, "two dilutions"}, {"two dilutions", 12, "two…"}, {"two dilutions", 5, "two…"},
		{"0.080 g up to 5.000 g", 18, "0.080 g up to…"}, {"0.080 g, 12345.678", 15, "0.080 g…"}, {"a1234567890", 8, "a123456…"},
		{"Lösungsmittelverdünnung", 12, "Lösungsmitt…"}, {"vessel12345.678", 9, "vessel…"}, {"stock + 17 mL", 9, "stock…"}, {"one dilution, 10 mL", 17, "one dilution…"}, {"one dilution, 10\u00a0mL", 17, "one dilution…"},
	} {
		got := Shorten(c.name, c.most)
		assert.Equal(t, c.want, got)
		assert.LessOrEqual(t, runes(got), c.most)
	}
}

// Words that are longer than a line are parted, those that are bound between words first.
func TestLongWordsAreParted(t *testing.T) {
	assert.Equal(t, []string{"a/long/path/o", "f/a/folder/", "1234567.toml"}, wrap("a/long/path/of/a/folder/1234567.toml", 13)[:3])
	assert.Equal(t, []string{"see pieces", "1234.5678 mL"}, wrap("see pieces 1234.5678 mL", 12))
	assert.Equal(t, []string{"batch", "1234.5678"}, wrap("batch1234.5678", 10))
}

// A table that is wider than the screen has its words wrapped, and is stacked where there is no
// room for that; nothing of it is lost.
func TestNarrowTables(t *testing.T) {
	table := &Table{
		Head: []string{"route", "inside", "why not"}, Numbers: 1, WordsLast: true, Indent: 2, Most: 30, Least: 12,
		Rows: []Row{{Cells: []string{"two dilutions of the stock", "99.7 in 100", ""}, Marked: true}, {Cells: []string{"drops", "31.2 in 100", "less sure than the 95 in 100 that are asked for"}}},
	}
	p := &Page{Blocks: []Block{table}}
	assert.Equal(t, strings.Join([]string{
		"  route                       inside  why not",
		"* two dilutions of the…  99.7 in 100",
		"  drops                  31.2 in 100  less sure than the 95 in 100 that are asked for", "",
	}, "\n"), p.Text(88))
	for width := 20; width <= 90; width++ {
		text := p.Text(width)
		for line := range strings.SplitSeq(text, "\n") {
			assert.LessOrEqual(t, runes(line), width, text)
		}
		words := strings.Join(strings.Fields(text), " ")
		assert.Contains(t, words, "99.7 in 100")
		assert.Contains(t, words, "asked for")
	}
	assert.Equal(t, strings.Join([]string{
		"* two dilutions of the", "    stock: inside 99.7 in 100",
		"  drops: inside 31.2 in 100;", "    less sure than the", "    95 in 100 that are asked", "    for", "",
	}, "\n"), p.Text(30))
}

// A table of many figures goes on below with the columns that there is no room for.
func TestTableInParts(t *testing.T) {
	p := &Page{Blocks: []Block{&Table{
		Head: []string{"glass", "division", "limit", "least"}, Numbers: 1,
		Rows: Rows([][]string{{"flask", "one mark", "±0.05 mL", "0.2 mL"}, {"syringe", "0.01 mL", "±0.008 mL", "0.31 mL"}}),
	}}}
	assert.Equal(t, strings.Join([]string{
		"glass    division      limit", "flask    one mark  ±0.05 mL", "syringe   0.01 mL  ±0.008 mL", "",
		"glass      least", "flask    0.2 mL", "syringe  0.31 mL", "",
	}, "\n"), p.Text(30))
	assert.Contains(t, p.Text(16), "  syringe:")
}
