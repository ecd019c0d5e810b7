package figure

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty/near"
	"minim/uncertainty/purchase"
)

func TestReadabilityStandsEveryPurchase(t *testing.T) {
	skipIfSlow(t)
	for name, p := range purchases(t) {
		t.Run(name, func(t *testing.T) {
			f, err := Readability(p)
			checkDrawn(t, f, err)
		})
	}
}

func TestReadabilitySaysWhatItShows(t *testing.T) {
	p := bought(compare(t, cases["usual"]))
	f, err := Readability(p)
	words := wordsOf(t, f, err)
	for _, want := range []string{
		"An invented recipe", "What the balance does to the give or take.", "a balance you have", "one you could buy", "bold: good enough",
		"direct", "one dilution", "two dilutions", "three dilutions", "0.01 g scale", "pocket scale", "\nanalytical balance\n240 EUR\n",
		"\n0.0001\n", "\n0.001\n", "\n0.01\n", "\n0.1\n", "readability of the balance / g", "give or take, in % of the strength (95 %)",
		"\nwithin 8 % of target\n", "Lines: the tightest routes with a balance like the fine scale, were it to read to so many g, with an expected strength within a tenth of",
		"No route was found with: coarse scale.",
		"0.0002 g direct, 0.005 g with one dilution, 0.1 g with two",
	} {
		assert.Contains(t, words, want)
	}
	assert.NotContains(t, words, "a pipette")
	assert.Equal(t, "What the readability of the balance does to the give or take with which one makes 15 mL of 0.04 % w/v dye in water, "+
		"within 8 % of target: lines for direct, one dilution, two dilutions, three dilutions. The coarsest that is good enough: 0.0002 g direct, 0.005 g with one dilution, "+
		"0.1 g with two dilutions, none with three dilutions. Balances: 0.1 g scale, 0.1 g, 3 %; 0.01 g scale, 0.01 g, 2.2 %; "+
		"0.001 g scale, 0.001 g, 1.5 %; pocket scale, 0.01 g, 30 %; semi-micro balance, 0.00001 g, 1 %; analytical balance, 0.0001 g, 1.1 %.",
		altOfReadability(p))
}

func TestReadabilityDrawsTheNearerLimit(t *testing.T) {
	skipIfSlow(t)
	for name, want := range map[string]float64{
		"usual": 8, "no tolerance": 0, "not above": 10, "not below": 5, "uneven": 2.5, "at the target": 0, "several": 5,
	} {
		p := bought(compare(t, cases[name]))
		near.Absolute(t, name, want, newReadable(p).half, 1e-9)
		f, err := Readability(p)
		words := wordsOf(t, f, err)
		assert.Equal(t, want > 0, strings.Contains(words, "Shaded: a give or take that fits within the tolerance"), name)
	}
}

// A line has a gap where there is no route.
func TestCurvesHaveGaps(t *testing.T) {
	inf := math.Inf(1)
	for _, test := range []struct {
		relative []float64
		want     [][]curvePoint
	}{
		{[]float64{inf, inf}, nil},
		{[]float64{0.01, 0.02}, [][]curvePoint{{{1, 1, false}, {2, 2, true}}}},
		{[]float64{inf, 0.02, inf, 0.04, 0.05, inf}, [][]curvePoint{{{2, 2, true}}, {{4, 4, false}, {5, 5, false}}}},
		{[]float64{math.NaN(), 0, 0.03}, [][]curvePoint{{{3, 3, false}}}},
	} {
		got := curveOf(&purchase.Curve{Readability: []float64{1, 2, 3, 4, 5, 6}, Relative: test.relative, CutShort: []bool{false, true, false, false, false, false}})
		assert.Equal(t, test.want, got.runs, "%v", test.relative)
	}
}

func TestReadabilityOfNothingIsAnError(t *testing.T) {
	c := compare(t, cases["usual"])
	for _, p := range []*purchase.Purchase{
		{Prep: c.Prep},
		{Prep: c.Prep, Curves: []purchase.Curve{{Readability: []float64{0.1}, Relative: []float64{math.Inf(1)}}}},
		{Prep: c.Prep, Choices: []purchase.Choice{{Name: "scale", Balance: &equipment.Balance{Readability: 0.1}}}},
	} {
		_, err := Readability(p)
		assert.EqualError(t, err, "no route was found on any balance, so there is nothing to draw against readability")
	}
}

// Every balance and every line has its name, none of which covers a point.
func TestReadabilityPlaces(t *testing.T) {
	skipIfSlow(t)
	for name, p := range purchases(t) {
		f := newReadable(p)
		f.setScales()
		f.name()
		names := len(f.balances) + len(f.curves)
		if f.half > 0 {
			names++
		}
		require.Len(t, f.labels, names, name)
		for _, l := range f.labels {
			for _, b := range f.balances {
				assert.False(t, l.at.holds(f.place(b.readability, b.relative)), name)
			}
			for _, c := range f.curves {
				for _, run := range c.runs {
					for _, q := range run {
						assert.False(t, l.at.holds(f.place(q.readability, q.relative)), name)
					}
				}
			}
		}
	}
}
