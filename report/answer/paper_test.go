package answer

import (
	"fmt"
	"math"
	"math/big"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

// paperOf is a paper about a result with a value and an expanded uncertainty.
func paperOf(value, expanded float64) *words.Paper {
	r := route.Result{Route: &route.Route{Name: "r"}, Possible: true, Informative: true, MadeML: 10}
	r.Analytic = uncertainty.Analytic{Value: value, StandardUncertainty: expanded / 2, DegreesOfFreedom: math.Inf(1), CoverageProbability: 0.95, CoverageFactor: 2, ExpandedUncertainty: expanded}
	r.Quoted = uncertainty.Quoted{Lower: value - expanded, Upper: value + expanded}
	target, err := strengths.Parse("100 g/L")
	if err != nil {
		panic(err)
	}
	p := &route.Prep{Kit: new(equipment.Kit), Target: target, Volume: 10, LeastChance: 0.95}
	p.Solute.Name, p.Solvent.Name = "urea", "water"
	stock := &route.Stock{Name: "stock", Strength: route.Estimate{Value: value, Known: true}, Unit: target.Unit}
	r.Route.Steps = []route.Step{{Verb: route.Start, Stock: stock}}
	c := &route.Comparison{Prep: p, Results: []route.Result{r}, Settings: uncertainty.Settings{Coverage: 0.95}}
	return &words.Paper{Comparison: c}
}

// JCGM 100, 7.2.6: 10.47 may become 11, and 28.05 becomes 28; the value goes to the same
// place. NIST GLP 9 (from memory): two digits at most, and the value to the place of the
// last. The thresholds between w and w + 1 are where the part cut off is 1 % of U: at the
// first double that is w/0.99 or more as a decimal U goes up, one ulp below it does not.
func TestRoundingThroughThePapers(t *testing.T) {
	for _, test := range []struct {
		value, expanded float64
		want            string
	}{
		{1234.5, 10.47, "1235 ± 11"}, {1234.5, 28.05, "1235 ± 28"}, {0.040051, 0.00205, "0.0401 ± 0.0021"}, {9.995, 0.995, "10.00 ± 0.99"}, {-0.004, 0.25, "0.00 ± 0.25"},
	} {
		inAllPapers(t, paperOf(test.value, test.expanded), test.want)
	}
	for _, w := range []int64{10, 11, 28, 49, 50, 98} {
		threshold := big.NewRat(100*w, 99)
		up, _ := threshold.Float64()
		for decimalOf(up).Cmp(threshold) < 0 {
			up = math.Nextafter(up, math.Inf(1))
		}
		for decimalOf(math.Nextafter(up, 0)).Cmp(threshold) >= 0 {
			up = math.Nextafter(up, 0)
		}
		inAllPapers(t, paperOf(1000, up), fmt.Sprintf("1000 ± %d", w+1))
		inAllPapers(t, paperOf(1000, math.Nextafter(up, 0)), fmt.Sprintf("1000 ± %d", w))
	}
}

// decimalOf is the shortest decimal that stands for a double.
func decimalOf(x float64) *big.Rat {
	r, ok := new(big.Rat).SetString(fmt.Sprint(x))
	if !ok {
		panic(x)
	}
	return r
}

// below is the first block below a heading of a report.
func below[B page.Block](t *testing.T, p *words.Paper, heading string) B {
	t.Helper()
	blocks := reportPage(p).Blocks
	i := slices.IndexFunc(blocks, func(b page.Block) bool { h, is := b.(page.Heading); return is && h.Text == heading })
	require.GreaterOrEqual(t, i, 0, heading)
	return blocks[i+1].(B)
}

func inAllPapers(t *testing.T, p *words.Paper, want string) {
	t.Helper()
	d := labelPage(p, words.Label{Count: 1})
	for name, text := range map[string]string{
		"statement": below[page.Paragraph](t, p, "Result").Text, "method": below[page.Paragraph](t, p, "Method, to be quoted").Text, "label": d.Blocks[0].(page.Labels).List[0].Lines[1].Text,
	} {
		assert.Contains(t, strings.ReplaceAll(text, "(k", "k"), want, name)
	}
}

// hostileTexts are texts that a user might give, or be given, as a name.
var hostileTexts = []string{
	`<script>alert(1)</script>`, `</style><script>x</script>`, `</title><b>`, `"><img src=x onerror=y>`, `'><svg/onload=z>`, `&lt;`, `&amp;`, `&#60;`, `<!-- `, `--> `,
	`]]>`, `{{.}}`, `{{template "x"}}`, "`x`", "$(id)", "| a | b |", `\|`, `*bold*`, `_under_`, `~~struck~~`, `[a](http://b)`, `![a](b)`, `# head`, "- item", "1. item", "+ item", "> quote",
	"=1+1", "+1", "-1", "@x", "\ttab", "two\nlines", "two\r\nlines", "null\x00byte", "bell\a", "\u202eright to left", "\u2066isolate", "zero\u200bwidth", "\ufeffmark", "a\u0085b", "x\ufffdy", "javascript:alert(1)", "data:text/html,x",
}

// Whatever a name is, the page has only the elements of its template, the Markdown only
// its own lines, and what the name says can be read.
func TestHostileNames(t *testing.T) {
	skipIfSlow(t)
	require.GreaterOrEqual(t, len(hostileTexts), 40)
	plainHTML, plainMarkdown := papersNamed(t, "plain")
	for _, name := range hostileTexts {
		html, markdown := papersNamed(t, name)
		for kind := range html {
			assert.Equal(t, elements(plainHTML[kind]), elements(html[kind]), "%s named %q", kind, name)
			assert.NotContains(t, html[kind], "\x00")
			assert.False(t, strings.ContainsAny(html[kind], "\u202e\u2066\u200b\ufeff\u0085\a"), "%s named %q", kind, name)
			assert.Contains(t, html[kind], `content="default-src &#39;none&#39;; style-src &#39;sha256-`)
			assert.Equal(t, strings.Count(plainMarkdown[kind], "\n"), strings.Count(markdown[kind], "\n"), "%s named %q", kind, name)
			assert.False(t, strings.ContainsAny(markdown[kind], "\x00\u202e\u2066\u200b\a"), "%s named %q", kind, name)
		}
	}
}

// papersNamed are all papers about a solute, a title and a route of a name.
func papersNamed(t *testing.T, name string) (html, markdown map[string]string) {
	t.Helper()
	p := paperOf(100, 2)
	p.Prep.Solute.Name, p.Prep.Title, p.Prep.Note, p.Prep.Solvent.Hazards = name, name, name, []string{name}
	p.Results[0].Route = &route.Route{Name: name, Steps: []route.Step{{Verb: route.Start, Stock: &route.Stock{Name: name}}}}
	p.Results[0].Notes.Assume("property-lacking", "", name)
	p.Origin = words.Origin{Version: "1", Command: name, Files: []words.File{{Name: name, SHA256: "00"}}}
	spread := page.Figure{PNG: []byte("png"), Alt: name, File: "x.png"}
	html, markdown = make(map[string]string), make(map[string]string)
	for kind, d := range map[string]*page.Page{"report": reportPage(p, spread, spread, spread), "sheet": sheetPage(p, nil), "label": labelPage(p, words.Label{Count: 3, By: name, Batch: name, UseBy: name})} {
		data, err := d.HTML()
		require.NoError(t, err)
		html[kind], markdown[kind] = string(data), string(d.Markdown())
	}
	return html, markdown
}

var tag = regexp.MustCompile(`<[!/a-zA-Z][^\s>]*`)

// elements are the tags of a page, in order.
func elements(page string) []string { return tag.FindAllString(page, -1) }

// A page has one heading of the first level and then only those of the second, a heading
// for every column, and words for every picture.
func TestPagesCanBeReadAloud(t *testing.T) {
	html, _ := papersNamed(t, "plain")
	for kind, page := range html {
		assert.Contains(t, page, `<html lang="en">`, kind)
		if kind != "label" {
			assert.Equal(t, 1, strings.Count(page, "<h1>"), kind)
		}
		assert.NotContains(t, page, "<h3", kind)
		assert.Equal(t, strings.Count(page, "<thead>"), strings.Count(page, "<table"), kind)
		assert.Equal(t, strings.Count(page, "<img "), strings.Count(page, `alt="plain"`), kind)
		assert.Equal(t, strings.Count(page, "<thead><tr><th scope=\"col\""), strings.Count(page, "<thead>"), kind)
	}
}
