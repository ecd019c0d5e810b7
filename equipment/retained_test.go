package equipment

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	words "minim/report/words/influence"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

const oneMillilitre = "[[pipette]]\nname = \"x\"\nkind = \"one-mark\"\ncapacity = \"1 mL\"\ntolerance = \"0 mL\"\n"

// A 1 mL pipette is adjusted without the film that stays in it. Rinsed into the
// flask it gives that too: of 0.01 mL, 98 % come along (common practice, no source),
// about +1 % of the volume (from memory). Blown out it gives all of it.
func TestRinsedPipetteGivesTooMuch(t *testing.T) {
	for emptying, want := range map[Emptying]float64{drained: 1, Rinsed: 1 + 0.01*(1-0.02), BlownOut: 1.01} {
		for _, spread := range []string{`"0.01 mL"`, `{ mean = "0.01 mL" }`, `{ mean = "10 µL", spread = "4 µL" }`} {
			u := quiet()
			u.Emptying = emptying
			got := delivered(t, one(t, oneMillilitre+"retained = "+spread), u, 1)
			near.Relative(t, string(emptying), want, got.Value, 1e-12)
			near.Relative(t, "intended", 1, got.Intended, 1e-12)
			for _, c := range got.Budget {
				assert.Equal(t, false, c.Assumed)
			}
		}
	}
}

// The scatter of what stays, with ρ as its factor: in full when drained, 2 % of it
// when rinsed, none when blown out.
func TestRetainedScatterByEmptying(t *testing.T) {
	k := one(t, oneMillilitre+`retained = { mean = "0.010 mL", spread = "0.004 mL" }`)
	for emptying, want := range map[Emptying]float64{drained: 0.004, Rinsed: 0.02 * 0.004, BlownOut: 0} {
		u := quiet()
		u.Emptying = emptying
		near.Absolute(t, string(emptying), want, delivered(t, k, u, 1).StandardUncertainty, 1e-15)
	}
	text := one(t, oneMillilitre+"retained = \"0.010 mL\"") // 0 to twice the mean
	near.Relative(t, "text", 0.01/math.Sqrt(3), delivered(t, text, quiet(), 1).StandardUncertainty, 1e-12)
}

// The last drop of a pipette, not stated: 0.01 to 0.05 mL (from memory). Of one
// piece it is anything in between, the same each time.
func TestLastDropAssumed(t *testing.T) {
	k, u := one(t, oneMillilitre), quiet()
	u.Emptying = BlownOut
	got := delivered(t, k, u, 1)
	near.Relative(t, "too much", 1.03, got.Value, 1e-12)
	assert.Equal(t, 1.0, got.Intended)
	near.Relative(t, "u", 0.04/math.Sqrt(12), got.StandardUncertainty, 0.005)
	assert.Equal(t, []string{"the last drop in the tip of the x is about 0.03 mL (from memory)"}, worded(u.Notes).Assumed)
	near.Relative(t, "assumed", 1, got.AssumedShare(), 1e-12)
	near.Relative(t, "twice", 1, correlation(t, u, node(t, k, u, "a", 1), node(t, k, u, "b", 1)), 1e-9)
	// From 5 mL on a drop left and a drop expelled have been measured apart
	// (trabalhosfeitos.com/ensaios/Relatorio/821595.html): 0.10 mL, s = 0.05 mL.
	u = quiet()
	u.Emptying = BlownOut
	five := delivered(t, one(t, "[[pipette]]\nname = \"x\"\nkind = \"graduated\"\ncapacity = \"5 mL\"\ndivision = \"0.1 mL\"\ntolerance = \"0 mL\"\n"), u, 4)
	near.Relative(t, "5 mL", 4.10, five.Value, 1e-12)
	near.Relative(t, "u of 5 mL", 0.05, five.StandardUncertainty, 1e-12)
	stated := one(t, oneMillilitre+"retained = \"0.02 mL\"")
	near.Relative(t, "stated", 1.02, delivered(t, stated, u, 1).Value, 1e-12)
}

// With a measured scatter of use, that of what stays is in it, and nothing is left
// to be said of it; unless the kit states it by itself.
func TestRetainedWithMeasuredScatter(t *testing.T) {
	for text, want := range map[string]float64{
		`repeatability = "0.003 mL"`:                                                             0.003,
		"repeatability = \"0.003 mL\"\nretained = \"0.01 mL\"":                                   0.003,
		"repeatability = \"0.003 mL\"\nretained = { mean = \"0.01 mL\", spread = \"0.004 mL\" }": 0.005,
		"readings = [\"0.999 mL\", \"1.000 mL\", \"1.001 mL\"]\nretained = \"0.01 mL\"":          0.001,
	} {
		u := alone()
		got := delivered(t, one(t, oneMillilitre+text), u, 1)
		near.Relative(t, text, want, got.StandardUncertainty, 1e-9)
		near.Relative(t, text, 1, got.Value, 1e-12)
		notes := worded(u.Notes)
		notes.NotCounted = slices.DeleteFunc(notes.NotCounted, func(n string) bool { return strings.HasPrefix(n, "the mean 1 mL of the 3 readings") })
		assert.Empty(t, slices.Concat(notes.Warnings, notes.Assumed, notes.FromMemory, notes.NotCounted), text)
	}
}

// A pipette that held a solution ten times stronger, film 0.01 mL, and was not
// rinsed with what it takes: film (c_before - c)/(c a) = 0.01 (10 - 1)/1, +9 % of
// an aliquot of 1 mL. With the spread of the film, ±9 % of u(X)/X.
func TestCarryOver(t *testing.T) {
	k, u := one(t, oneMillilitre+"retained = \"0.01 mL\""), quiet()
	m := u.Model
	aliquot, film := node(t, k, u, "take", 1), k.Film(u.next("take"))
	c, before := m.Constant(1), m.Constant(10)
	solute := m.Add(m.Multiply(c, aliquot), m.Multiply(film, m.Subtract(before, c)))
	got := outcomeOf(t, u, solute, nil)
	near.Relative(t, "solute", 1.09, got.Value, 1e-12)
	near.Relative(t, "intended", 1, got.Intended, 1e-12)
	same(t, got.Analytic, "film carried over in the x", 0.01/math.Sqrt(3))
	near.Relative(t, "contribution", 0.09/math.Sqrt(3), term(got.Analytic, "film carried over in the x").Contribution, 1e-12)
	shifts := got.Shifts()
	assert.Equal(t, "x, not rinsed", words.Group(shifts[0].Group)) // the cause, by name
	near.Relative(t, "shift", 0.09, shifts[0].Sum, 1e-12)
	// A film of solvent, which is wet: 0.01 (0 - 1)/1.
	wet := m.Add(aliquot, m.Multiply(film, m.Subtract(m.Constant(0), c)))
	near.Relative(t, "wet", 0.99, m.Expected(wet), 1e-12)
}

// What stays when nothing is stated: a cylinder's film by its size, a drop in the tip
// of a pipette, and nothing that is known in a flask.
func TestFilmNotStated(t *testing.T) {
	for text, want := range map[string]struct {
		mean    float64
		d       uncertainty.Distribution
		assumed []string
		not     []string
	}{
		oneCylinder + "division = \"0.2 mL\"\ntolerance = \"0.2 mL\"\n": {0.10, uncertainty.Gamma{Mu: 0.10, Sigma: 0.05},
			[]string{"the x keeps about 0.1 mL when it is poured out (unknown by half of that, and from pour to pour by a quarter)"}, nil},
		oneCylinder + "division = \"0.2 mL\"\ntolerance = \"0.2 mL\"\nmarked = \"Ex\"\n": {0.10, uncertainty.Gamma{Mu: 0.10, Sigma: 0.05},
			[]string{"the x keeps about 0.1 mL when it is poured out (unknown by half of that, and from pour to pour by a quarter)"}, nil},
		oneMillilitre: {0.03, uncertainty.Gamma{Mu: 0.03, Sigma: 0.0115},
			[]string{"the last drop in the tip of the x is about 0.03 mL (from memory)"}, nil},
		oneFlask + "class = \"A\"\n": {0, nil, nil, []string{"what stays in the x when it is poured out"}},
	} {
		u := alone()
		film := one(t, text).Film(u)
		near.Relative(t, text, want.mean, u.Model.Expected(film), 1e-12)
		assert.Equal(t, 0.0, u.Model.Intended(film))
		assert.Equal(t, said{Assumed: want.assumed, NotCounted: want.not}, worded(u.Notes), text)
		a := propagate(t, u, film)
		if want.d == nil {
			assert.Equal(t, 0, len(a.Budget))
			continue
		}
		assert.Equal(t, want.d, a.Budget[0].Distribution)
		assert.Equal(t, true, a.Budget[0].Assumed)
	}
}

// Each film is its own, made anew when the piece is used.
func TestFilmIsTheSteps(t *testing.T) {
	k, u := one(t, oneMillilitre+"retained = \"0.01 mL\""), quiet()
	near.Absolute(t, "two films", 0, correlation(t, u, k.Film(u.next("a")), k.Film(u.next("b"))), 1e-12)
}
