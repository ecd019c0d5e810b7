package figure

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/plan"
	"minim/uncertainty/purchase"
	"minim/uncertainty/route"
)

// demo compares the routes of the demo, in few trials.
func demo(t *testing.T) *route.Comparison {
	t.Helper()
	p, err := read.LoadPrep(context.Background(), "../../cmd/minim/demo/dye.toml", "")
	require.NoError(t, err)
	c, err := contest.Compare(context.Background(), p, "", uncertainty.Settings{Trials: 20_000, Seed: 1, Coverage: 0.95})
	require.NoError(t, err)
	return c
}

// planned is a plan in which the routes of a comparison are those that were found,
// and those of the prep itself.
func planned(c *route.Comparison) *plan.Plan {
	p := &plan.Plan{Comparison: c}
	for i, r := range c.Results {
		p.Own = append(p.Own, r)
		if r.Possible && r.Informative {
			p.Front = append(p.Front, plan.Member{Result: r, Group: i})
		}
	}
	return p
}

// made is a result with only what a figure looks at; relative is the relative
// expanded uncertainty.
func made(name string, dilutions int, leftOver, relative, chance float64) route.Result {
	return route.Result{
		Route: &route.Route{Name: name}, Possible: true, Informative: true, Dilutions: dilutions, LeftOverML: leftOver, MadeML: 1e9,
		Analytic: uncertainty.Analytic{Value: 0.04, ExpandedUncertainty: 0.04 * relative, CoverageProbability: 0.95},
		Inside:   []route.Chance{{Simulated: chance}},
	}
}

// front is a plan with routes that are made up; the first is the one to use.
func front(c *route.Comparison, results ...route.Result) *plan.Plan {
	with := *c
	with.Results, with.Verdict = results[:1], route.Verdict{Use: 0, Meets: results[0].Chance() >= c.Prep.LeastChance}
	p := &plan.Plan{Comparison: &with}
	for _, r := range results {
		p.Front = append(p.Front, plan.Member{Result: r})
	}
	return p
}

// crowd is a plan with many routes of every number of dilutions, some of them too
// wide, and many of the prep itself.
func crowd(c *route.Comparison, n int, most float64) *plan.Plan {
	list := []route.Result{made("1.50 g in 25 mL, 2 in 25 mL, 3 + 17 mL", 2, 0.02*most, 0.06, 0.97)}
	for i := range n {
		share := float64(i) / float64(n)
		list = append(list, made(fmt.Sprintf("route %d", i), i%7, most*math.Pow(share, 3), 0.03*math.Exp(3*math.Abs(math.Sin(7*share)))/(0.3+share), 0.7+0.3*share))
	}
	p := front(c, list...)
	for i := range n {
		p.Own = append(p.Own, made(fmt.Sprintf("own route %d by the old pipette", i), 1, most*math.Abs(math.Sin(float64(i))), 0.2*math.Abs(math.Cos(float64(i)))+0.01, 0.5))
	}
	return p
}

// plans are what a figure must stand.
func plans(t *testing.T) map[string]*plan.Plan {
	usual, none := compare(t, cases["usual"]), compare(t, cases["no tolerance"])
	own := front(usual, made("only", 1, 20, 0.05, 0.96))
	own.Own = []route.Result{made("own", 1, 20, 0.05, 0.96), made("wide", 0, 0, 1.2, 0.1), {Route: &route.Route{Name: "never"}}}
	hostileWords := crowd(hostile(compare(t, cases["usual"])), 10, 100)
	hostileWords.Results[0].Route.Name = strings.Repeat("W", 300)
	hostileWords.Own[0].Route.Name = "<b>&\"'\u202e\u200f\u05d0\n \u2603 \u207b\xff </text>"
	return map[string]*plan.Plan{
		"demo": planned(demo(t)), "usual": planned(usual), "no tolerance": planned(none),
		"one": front(usual, made("only", 1, 0, 0.05, 0.96)), "own": own,
		"certain": front(usual, made("exact", 0, 0, 0, 1), made("other", 1, 5, 0.01, 1)),
		"not met": front(usual, made("poor", 0, 0, 0.5, 0.2), made("worse", 5, 250, 0.9, 0.1)),
		"crowd":   crowd(usual, 60, 200), "large": crowd(usual, 60, 5000), "huge": crowd(none, 60, 1e7),
		"without 0": front(usual, made("a", 1, 100, 0.05, 0.96), made("b", 9, 1000, 0.001, 1)),
		"minute":    front(usual, made("a", 1, 0.06, 0.05, 0.96), made("b", 2, 400, 0.001, 1)),
		"hostile":   hostileWords,
	}
}

// bought is a purchase that is made up: lines that fall to what the glass allows,
// and balances on them.
func bought(c *route.Comparison) *purchase.Purchase {
	p := &purchase.Purchase{Prep: c.Prep, Like: &equipment.Balance{Name: "fine scale"}}
	for n := range 4 {
		curve := purchase.Curve{Dilutions: n}
		for _, d := range rungs(1e-5, 1) {
			u := math.Hypot(0.01*math.Sqrt(float64(1+n)), 1.5*d/(0.006*math.Pow(25, float64(n))))
			if u > 0.9 {
				u = math.Inf(1)
			}
			curve.Readability, curve.Relative = append(curve.Readability, d), append(curve.Relative, u)
		}
		p.Curves = append(p.Curves, curve)
		p.BreakEven = append(p.BreakEven, purchase.BreakEven{Dilutions: n, Readability: []float64{0.0002, 0.005, 0.1, 0}[n]})
	}
	add := func(name string, d, u float64, owned, meets bool) {
		o := purchase.Choice{Name: name, Balance: &equipment.Balance{Name: name, Readability: d}, Owned: owned, Found: u > 0, Meets: meets}
		if o.Found {
			o.Best = made("best", 1, 10, u, 0.96)
		}
		if !owned {
			o.Price = equipment.Price{Amount: 240, Currency: "EUR"}
		}
		p.Choices = append(p.Choices, o)
	}
	add("0.1 g scale", 0.1, 0.03, true, true)
	add("0.01 g scale", 0.01, 0.022, true, true)
	add("0.001 g scale", 0.001, 0.015, true, true)
	add("pocket scale", 0.01, 0.3, true, false)
	add("coarse scale", 1, 0, true, false)
	add("semi-micro balance", 0.00001, 0.0101, false, true)
	add("analytical balance", 0.0001, 0.0105, false, true)
	p.Choices = append(p.Choices, purchase.Choice{Name: "a pipette", Found: true, Best: made("best", 1, 10, 0.01, 1)})
	return p
}

// purchases are what a figure must stand.
func purchases(t *testing.T) map[string]*purchase.Purchase {
	list := map[string]*purchase.Purchase{}
	for name, prep := range cases {
		list[name] = bought(compare(t, prep))
	}
	usual := compare(t, cases["usual"])
	crowded := bought(usual)
	for i := range 12 {
		o := crowded.Choices[i%3]
		o.Name = fmt.Sprintf("balance %d %s", i, strings.Repeat("of the old kind ", i))
		crowded.Choices = append(crowded.Choices, o)
	}
	alone := &purchase.Purchase{Prep: usual.Prep, Choices: crowded.Choices[:1]}
	list["crowded"], list["one balance"] = crowded, alone
	list["hostile"] = bought(hostile(compare(t, cases["usual"])))
	list["hostile"].Choices[0].Name = strings.Repeat("W", 300)
	list["hostile"].Choices[4].Name = "<b>&\"'\u202e\u200f\u05d0\n \u2603 \u207b\xff </text>"
	return list
}

// checkDrawn checks what must hold of every figure.
func checkDrawn(t *testing.T, f *Figure, err error) {
	t.Helper()
	require.NoError(t, err)
	drawn := func(*route.Comparison) (*Figure, error) { return f, nil }
	svg := svgOf(t, drawn, nil)
	assert.Less(t, len(svg), 400_000)
	assert.NotContains(t, string(svg), "NaN")
	assert.NotContains(t, string(svg), "Inf")
	checkPlaces(t, drawn, nil)
}

// wordsOf are the texts of a figure, joined.
func wordsOf(t *testing.T, f *Figure, err error) string {
	t.Helper()
	require.NoError(t, err)
	return strings.Join(texts(t, svgOf(t, func(*route.Comparison) (*Figure, error) { return f, nil }, nil)), "\n")
}

func TestFiguresOfAPlanRepeatByteForByte(t *testing.T) {
	c := compare(t, cases["usual"])
	for name, draw := range map[string]func() (*Figure, error){
		"trade": func() (*Figure, error) { return Trade(crowd(c, 60, 200)) },
		"money": func() (*Figure, error) { return Changes(bought(c)) },
	} {
		checkRepeats(t, name, draw)
	}
}

// A picture of a changed kit says so.
func TestFiguresOfAPlanOnAChangedKit(t *testing.T) {
	c := compare(t, cases["usual"])
	change, err := benchfile.ParseChange("--change", "rough scale: readability = 0.001 g")
	require.NoError(t, err)
	c.Prep.Changes = []equipment.Change{{Name: change.Name, Key: change.Key, Value: change.Value}}
	trade, err := Trade(planned(c))
	words := wordsOf(t, trade, err)
	assert.Contains(t, words, "Changed: rough scale: readability = 0.001 g")
	assert.Contains(t, altOfTrade(planned(c)), ", on a changed kit")
	money, err := Changes(bought(c))
	words = wordsOf(t, money, err)
	assert.Contains(t, words, "On a changed kit. An invented")
	assert.Contains(t, altOfMoney(t, bought(c)), ", on a changed kit")
}
