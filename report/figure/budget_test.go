package figure

import (
	"encoding/xml"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// lines makes a budget of shares, of influences called a, b, c and so on.
func lines(shares ...float64) []uncertainty.Contribution {
	var list []uncertainty.Contribution
	for i, share := range shares {
		code := uncertainty.Code(rune('a' + i))
		list = append(list, uncertainty.Contribution{Influence: uncertainty.Influence{Code: code, Owner: uncertainty.Owner{Name: "owner of it"}}, Uses: 1, Share: share})
	}
	return list
}

func TestBarsOf(t *testing.T) {
	for _, test := range []struct {
		shares []float64
		want   string
	}{
		{nil, ""},
		{[]float64{0, 0}, ""},
		{[]float64{1, 0}, "a 1.000"},
		{[]float64{0.2, 0.5, 0.3}, "b 0.500, c 0.300, a 0.200"},
		// The last of seven is shown, the last two of eight are added up.
		{[]float64{0.4, 0.2, 0.1, 0.1, 0.1, 0.06, 0.04}, "a 0.400, b 0.200, c 0.100, d 0.100, e 0.100, f 0.060, g 0.040"},
		{[]float64{0.4, 0.2, 0.1, 0.1, 0.1, 0.06, 0.03, 0.01}, "a 0.400, b 0.200, c 0.100, d 0.100, e 0.100, f 0.060, the rest (2) 0.040"},
		// Below one in a hundred: a single one is shown, more are added up.
		{[]float64{0.995, 0.005}, "a 0.995, b 0.005"},
		{[]float64{0.985, 0.009, 0.006}, "a 0.985, the rest (2) 0.015"},
		// Correlation: shares below zero and above one.
		{[]float64{0.1, 1.3, -0.4}, "b 1.300, c -0.400, a 0.100"},
		{[]float64{1.01, -0.006, -0.004}, "a 1.010, the rest (2) -0.010"},
	} {
		var got []string
		sum, whole := 0.0, 0.0
		for _, b := range barsOf(hand{}, lines(test.shares...)) {
			got = append(got, fmt.Sprintf("%s %.3f", b.words, b.share))
			sum += b.share
		}
		for _, share := range test.shares {
			whole += share
		}
		assert.Equal(t, test.want, strings.Join(got, ", "))
		near.Absolute(t, "sum of the bars", whole, sum, 1e-12)
	}
}

// Two influences of one name are told apart by their owners, and a long name does
// not hide them.
func TestInfluencesOfOneName(t *testing.T) {
	list := lines(0.6, 0.4)
	list[0].Owner, list[1].Owner = uncertainty.Owner{Kind: uncertainty.OneUse, Name: "two dilutions", Step: 1}, uncertainty.Owner{Name: "flask (piece 2)"}
	list[0].Code, list[1].Code = "reading", "reading"
	list[0].Group.Name, list[1].Group.Name = "flask", "flask"
	bars := barsOf(hand{}, list)
	assert.Equal(t, "reading of the flask (step 1)", bars[0].words)
	assert.Equal(t, "reading of the flask (flask (piece 2))", bars[1].words)

	long := uncertainty.Code(strings.Repeat("reading ", 30))
	list[0].Code, list[1].Code = long, long
	for _, b := range barsOf(hand{}, list) {
		assert.True(t, smallInk.Width(b.words) <= influencesTo-influencesFrom, b.words)
	}
	assert.Contains(t, barsOf(hand{}, list)[0].words, "… (step 1)")
}

func TestBudgetSaysWhatItShows(t *testing.T) {
	c := compare(t, cases["usual"])
	c.Results[1].Analytic.Budget[0].Assumed = true
	c.Results[1].AssumedShare = c.Results[1].Analytic.Budget[0].Share
	words := texts(t, svgOf(t, Budgets, c))
	for _, want := range []string{
		"An invented recipe: 15 mL of 0.04 % w/v dye in water, within 8 % of target", "What spoils the strength, in shares of its variance.",
		"fine, diluted", "rough, diluted", "direct", "could be nothing at all", "USE THIS ROUTE", "share of the variance / %",
		"linearity at the empty boat, rough scale", "bias of the 1 mL pipette at 1 mL", "S", "A", "an assumed one", "shared: the same error in several uses",
		"Not possible: too little. 0.004 g shows as 0.00 g on the rough scale; the least it can show is 0.01 g.",
	} {
		assert.Contains(t, words, want)
	}
	assert.Contains(t, strings.Join(words, "\n"), "assumed: ")
}

// A budget is that of the route to use, unless all are asked for.
func TestBudgetOfTheRouteToUse(t *testing.T) {
	c := compare(t, cases["usual"])
	words := strings.Join(texts(t, svgOf(t, Budget, c)), " ")
	assert.Contains(t, words, "Fine, diluted: spoilt most by 1 mL pipette (65 % of the variance), then dye (26 %)")
	for _, other := range []string{"rough, diluted", "could be nothing at all", "too little"} {
		assert.NotContains(t, words, other)
	}
}

// The key explains only what occurs.
func TestBudgetKey(t *testing.T) {
	c := compare(t, cases["one route"])
	draw := func(budget []uncertainty.Contribution) string {
		c.Results[0].Analytic.Budget, c.Results[0].AssumedShare = budget, 0
		return strings.Join(texts(t, svgOf(t, Budget, c)), "\n")
	}
	for _, words := range []string{"an assumed one", "the rest, added up", "shared"} {
		assert.NotContains(t, draw(lines(0.7, 0.3)), words)
	}
	assert.Contains(t, draw(nil), "nothing that is counted")
	marked := lines(0.7, 0.3)
	marked[0].Uses, marked[1].Assumed = 2, true
	words := draw(marked)
	assert.Contains(t, words, "shared")
	assert.Contains(t, words, "an assumed one")
	for _, letter := range []string{"S", "A"} {
		assert.Equal(t, 2, strings.Count("\n"+words+"\n", "\n"+letter+"\n"), "%s stands in the key and beside its bar", letter)
	}
	assert.Contains(t, draw(lines(0.99, 0.005, 0.005)), "the rest, added up")
}

// Under correlation a share may be negative: its bar runs left from zero, on the
// page and beside its words.
func TestBudgetStandsNegativeShares(t *testing.T) {
	for _, shares := range [][]float64{{1.3, -0.4, 0.1}, {-0.2, 1.2}, {1.02, -0.02}, {1, 1, -1}, {40, -39}} {
		c := compare(t, cases["one route"])
		c.Results[0].Analytic.Budget = lines(shares...)
		checkFigure(t, Budget, c)
		checkPlaces(t, Budget, c)
	}
	c := compare(t, cases["one route"])
	c.Results[0].Analytic.Budget = lines(1.3, -0.4, 0.1)
	assert.Contains(t, texts(t, svgOf(t, Budget, c)), "−40 %")
}

// Every bar lies between the ends of the axis, and a share of the whole is as
// long as the axis says.
func TestBudgetScale(t *testing.T) {
	for _, shares := range [][]float64{nil, {1}, {0.57, 0.43}, {1.3, -0.4, 0.1}, {0.2, 0.2, 0.2, 0.2, 0.2}} {
		b := &budget{panels: []*panel{{bars: barsOf(hand{}, lines(shares...))}}}
		b.scale()
		assert.LessOrEqual(t, b.low, 0.0)
		for _, share := range shares {
			from, to := b.span(share)
			assert.True(t, from >= barsFrom-1e-9 && to <= barsTo+1e-9, "%v of %v", share, shares)
			near.Absolute(t, "length of the bar", math.Abs(100*share)/(b.high-b.low), float64((to-from)/(barsTo-barsFrom)), 1e-9)
			assert.Equal(t, share < 0, from < b.x(0), "a negative bar runs left from zero")
		}
		first, last := b.ticks[0], b.ticks[len(b.ticks)-1]
		near.Absolute(t, "first mark", b.low, first.value, 1e-9)
		near.Absolute(t, "last mark", b.high, last.value, 1e-9)
	}
}

// What is told apart by colour is told apart by its pattern too.
func TestPatternsDifferWithoutColour(t *testing.T) {
	paths := func(r bar) (fills, strokes int) {
		c := newSVG(100, 100)
		f := &Figure{width: 100, height: 100, paint: func(on *sheet) { r.fill(on, 10, 10, 60, 18) }}
		f.Draw(c)
		svg, err := c.document("")
		require.NoError(t, err)
		var doc struct {
			G struct {
				Path []struct {
					Style string `xml:"style,attr"`
				} `xml:"path"`
			} `xml:"g"`
		}
		require.NoError(t, xml.Unmarshal(svg, &doc))
		for _, p := range doc.G.Path[1:] { // the first is the paper
			if strings.Contains(p.Style, "fill:none") {
				strokes++
			} else {
				fills++
			}
		}
		return fills, strokes
	}
	seen := map[[2]int]bool{}
	for _, r := range []bar{{}, {assumed: true}, {rest: 2}} {
		fills, strokes := paths(r)
		seen[[2]int{fills, strokes}] = true
	}
	assert.Equal(t, 3, len(seen))
}

func TestBudgetAlt(t *testing.T) {
	c := compare(t, cases["usual"])
	for i := range c.Results {
		c.Results[i].Analytic.Budget = lines(0.7, 0.3)
	}
	c.Results[0].Analytic.Budget = nil
	assert.Equal(t, "What spoils the strength by each route (3) to make 15 mL of 0.04 % w/v dye in water, within 8 % of target: "+
		"bars for the largest shares of the variance of each. Marked \"use this route\": fine, diluted, spoilt most by a (70 %) and b (30 %); "+
		"at the end: direct, spoilt by nothing that is counted; not possible: 1.", altOfBudget(c))
}
