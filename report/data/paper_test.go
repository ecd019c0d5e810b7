package data

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
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

// hostileTexts are texts that a user might give, or be given, as a name.
var hostileTexts = []string{
	`<script>alert(1)</script>`, `</style><script>x</script>`, `</title><b>`, `"><img src=x onerror=y>`, `'><svg/onload=z>`, `&lt;`, `&amp;`, `&#60;`, `<!-- `, `--> `,
	`]]>`, `{{.}}`, `{{template "x"}}`, "`x`", "$(id)", "| a | b |", `\|`, `*bold*`, `_under_`, `~~struck~~`, `[a](http://b)`, `![a](b)`, `# head`, "- item", "1. item", "+ item", "> quote",
	"=1+1", "+1", "-1", "@x", "\ttab", "two\nlines", "two\r\nlines", "null\x00byte", "bell\a", "\u202eright to left", "\u2066isolate", "zero\u200bwidth", "\ufeffmark", "a\u0085b", "x\ufffdy", "javascript:alert(1)", "data:text/html,x",
}

// Every hostile name is one cell of the CSV, which no spreadsheet takes for a formula.
func TestHostileNamesInCSV(t *testing.T) {
	for _, name := range hostileTexts {
		p := paperOf(100, 2)
		p.Results[0].Route.Name = name
		row := csvOf(t, p.Comparison)[0]
		want := strings.ReplaceAll(name, "\r\n", "\n") // a reader takes both line ends for one
		if strings.ContainsAny(name[:1], "=+-@\t") {
			want = "'" + want
		}
		assert.Equal(t, want, row["name"])
	}
}
