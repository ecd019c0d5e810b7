package figure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty/purchase"
)

func TestMoneyStandsEveryPurchase(t *testing.T) {
	skipIfSlow(t)
	for name, p := range purchases(t) {
		t.Run(name, func(t *testing.T) {
			f, err := Changes(p)
			checkDrawn(t, f, err)
		})
	}
}

func TestMoneySaysWhatItShows(t *testing.T) {
	p := bought(compare(t, cases["usual"]))
	p.Verdict = purchase.Verdict{Present: 2, Buy: 6, Meets: true, Would: true}
	f, err := Changes(p)
	words := wordsOf(t, f, err)
	for _, want := range []string{
		"With analytical balance (240 EUR): 96.0 in 100 inside, 10 mL left", "In each mark: how many measurements.", "\ngood enough\n", "\nnot good enough\n",
		"0.01 g scale", "pocket scale", "a pipette", "\nanalytical balance\n240 EUR\n96.0\n0\n", "\nowned\n", "coarse scale\nowned\nno route\n",
		"\nleft over / mL\n", "readability of the balance / g, logarithmic scale",
		"The coarsest balance like the fine scale that is good enough, by its readability: direct 0.0002 g, one dilution 0.005 g, two",
	} {
		assert.Contains(t, words, want)
	}
	for _, want := range []string{"What an instrument changes of what is left over", "No route: coarse scale.", "three dilutions none."} {
		assert.Contains(t, f.Alt, want)
	}
}

// A piece that the best route uses has a row of what the bench comes to without it.
func TestMoneyWithoutAPiece(t *testing.T) {
	p := bought(compare(t, cases["usual"]))
	assert.NotContains(t, altOfMoney(t, p), "without")
	worse := p.Choices[0]
	worse.Name, worse.Meets, worse.Best.LeftOverML = "5 mL pipette", false, 31
	p.Without = []purchase.Choice{worse, {Name: "20 mL flask", Owned: true}}
	f, err := Changes(p)
	words := wordsOf(t, f, err)
	assert.Contains(t, words, "\nwithout 5 mL pipette\nowned\n")
	assert.Contains(t, words, "\nwithout 20 mL flask\nowned\nno route\n")
	assert.Contains(t, words, "that route uses no other glass")
	assert.Contains(t, f.Alt, "without 5 mL pipette (owned), ")
	assert.Contains(t, f.Alt, "31 mL left over")
}

// What is to be said of a bench, and of what could be bought.
func TestMoneyTitles(t *testing.T) {
	for _, test := range []struct {
		v    purchase.Verdict
		want string
	}{
		{purchase.Verdict{Present: 0, Buy: -1, Meets: true}, "Nothing need be bought: 0.1 g scale: 96.0 in 100 inside"},
		{purchase.Verdict{Present: 0, Buy: -1}, "Nothing here is good enough: 0.1 g scale: "},
		{purchase.Verdict{Present: -1, Buy: 5}, "No route on the bench as it is; with semi-micro balance (240 EUR): "},
		{purchase.Verdict{Present: -1, Buy: -1}, "No route was found on any bench."},
		{purchase.Verdict{Present: 0, Buy: 5, Meets: true}, "With semi-micro balance (240 EUR): 96.0 in 100 inside, 10 mL left over; now, with 0.1 g scale: "},
	} {
		p := bought(compare(t, cases["usual"]))
		p.Verdict = test.v
		assert.Contains(t, altOfMoney(t, p), test.want)
	}
}

// Every mark lies within its panel, and every readability that does within its own.
func TestMoneyPlaces(t *testing.T) {
	skipIfSlow(t)
	for name, p := range purchases(t) {
		for _, most := range []float64{1, 1e6} {
			for i := range p.Choices {
				p.Choices[i].Best.LeftOverML *= most * float64(i)
			}
			f, err := Changes(p)
			checkDrawn(t, f, err)
			m := &money{}
			m.Purchase = p
			m.setCoarse()
			for _, at := range m.coarse {
				x := m.coarsX.at(at.readability)
				assert.True(t, x >= moneyFrom && x <= rightTo, "%s: %v", name, x)
			}
		}
	}
}

func TestMoneyOfNothingIsAnError(t *testing.T) {
	c := compare(t, cases["usual"])
	for _, p := range []*purchase.Purchase{
		{Prep: c.Prep},
		{Prep: c.Prep, Curves: []purchase.Curve{{Readability: []float64{0.1}, Relative: []float64{math.Inf(1)}}}},
		{Prep: c.Prep, Choices: []purchase.Choice{{Name: "scale", Balance: &equipment.Balance{Readability: 0.1}}}},
	} {
		_, err := Changes(p)
		assert.EqualError(t, err, "no route was found with any instrument, so there is nothing to draw of what money changes")
	}
}

// A search that was cut short says so, and one that was not does not.
func TestMoneySaysThatASearchWasCutShort(t *testing.T) {
	p := bought(compare(t, cases["usual"]))
	f, err := Changes(p)
	assert.NotContains(t, wordsOf(t, f, err), "cut short")
	p.Choices[1].CutShort, p.BreakEven[0].CutShort, p.BreakEven[3].CutShort = true, true, true
	f, err = Changes(p)
	require.NoError(t, err)
	assert.Contains(t, wordsOf(t, f, err), "The search was cut short with: 0.01 g scale; a better route may exist there.")
	for _, want := range []string{"direct 0.0002 g or coarser", "three dilutions none found so far"} {
		assert.Contains(t, f.Alt, want)
	}
}
