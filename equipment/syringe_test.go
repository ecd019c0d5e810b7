package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

const (
	tenSyringe = "[[syringe]]\nname = \"x\"\ncapacity = \"10 mL\"\n"
	oneSyringe = "[[syringe]]\nname = \"x\"\ncapacity = \"1 mL\"\n"
)

// ISO 7886-1:1993, by the calculation that a surgical materials testing laboratory
// publishes for it (http://www.smtl.co.uk/images/people/petephillips/Calculating-ISO-7886-TOGC.Rmd): 4 mL from a 10 mL syringe ±0.19 mL, 0.1 mL from a 1 mL one
// ±17 %. From half of the capacity on, 5 % (1 mL) and 4 % (10 mL, from memory).
func TestSyringeByVolume(t *testing.T) {
	for _, s := range []struct {
		text          string
		volume, limit float64
	}{
		{tenSyringe, 4, 0.19}, {oneSyringe, 0.1, 0.017}, {oneSyringe, 1, 0.05}, {tenSyringe, 10, 0.4}, {tenSyringe, 1, 0.16},
	} {
		u := alone()
		u.BenchReading = noReading
		got := delivered(t, one(t, s.text), u, s.volume)
		assert.Equal(t, set("bias of the x, relative to its limit"), names(got.Analytic))
		near.Relative(t, "u", s.limit/math.Sqrt(3), got.StandardUncertainty, 1e-12)
		bias := uncertainty.SummaryOf(term(got.Analytic, "bias of the x, relative to its limit").Distribution)
		low, high := bias.Low, bias.High
		assert.Equal(t, []float64{-1, 1}, []float64{low, high})
		assert.Equal(t, []float64{s.volume, s.volume}, []float64{got.Intended, got.Value})
	}
	u := alone()
	delivered(t, one(t, tenSyringe), u, 4)
	assert.Equal(t, said{
		Assumed: []string{
			"the x has the limits of ISO 7886-1:1993",
			"the limits of ISO 7886-1:1993 are used; of the edition of 2017, which supersedes it, the table was not seen",
			"the x is set within s = 0.025 mL, a quarter of the 0.1 mL from one line to the next",
		},
		FromMemory: []string{"the limit of the x, ±0.19 mL at 4 mL (ISO 7886-1:1993)"},
		NotCounted: []string{"scatter of what stays in the x as it delivers"},
	}, worded(u.Notes))
}

// One syringe is too large or too small at every volume alike: 1 part and 9 parts
// from it correlate fully, with limits of 0.16 and 0.36 mL, and what their ratio
// is wrong by is the difference of the relative limits, 16 and 4 %.
func TestSyringeOneAndNine(t *testing.T) {
	k, u := one(t, tenSyringe), quiet()
	u.Marks = 2
	a, b := node(t, k, u, "a", 1), node(t, k, u, "b", 9)
	near.Relative(t, "correlation", 1, correlation(t, u, a, b), 1e-9)
	near.Relative(t, "sum", (0.16+0.36)/math.Sqrt(3), propagate(t, u, u.Model.Add(a, b)).StandardUncertainty, 1e-12)
	ratio := propagate(t, u, u.Model.Divide(a, b))
	near.Relative(t, "ratio", (0.16-0.04)/math.Sqrt(3), ratio.StandardUncertainty/ratio.Value, 1e-9)
}

// Ten fills of one syringe err together, ten new syringes do not: u grows as n and
// as √n. Two pieces by count are as two new ones.
func TestSyringeSingleUse(t *testing.T) {
	for text, factor := range map[string]float64{
		tenSyringe: 10, tenSyringe + "single-use = true": math.Sqrt(10), tenSyringe + "single-use = false": 10,
	} {
		k, u := one(t, text), quiet()
		sum := u.Model.Constant(0)
		for _, step := range []string{"1", "2", "3", "4", "5", "6", "7", "8", "9", "10"} {
			sum = u.Model.Add(sum, node(t, k, u, step, 4))
		}
		near.Relative(t, text, factor*0.19/math.Sqrt(3), propagate(t, u, sum).StandardUncertainty, 1e-12)
	}
	k, u := one(t, tenSyringe+"count = 2"), quiet()
	first := node(t, k, u, "a", 4)
	u.Piece = 2
	near.Absolute(t, "two pieces", 0, correlation(t, u, first, node(t, k, u, "b", 4)), 1e-12)
}

// A chemist tested two makes of oral syringes: 97 to 98.5 % of the nominal delivered, 1 %
// repeatability (https://viewddit.com/r/daddit/comments/1dux8wl/oral_syringe_accuracy, one source): within ISO 7886-1, and a bias more than a scatter.
func TestSyringeAgainstMeasuredOnes(t *testing.T) {
	got := delivered(t, one(t, tenSyringe), alone(), 10)
	for _, mL := range []float64{9.7, 9.85} {
		assert.Equal(t, true, math.Abs(mL-10) < 0.4 && math.Abs(mL-10) < 2*got.StandardUncertainty)
	}
}

// ISO 7886-1: the dead space of a 10 mL syringe is at most 0.10 mL (from memory).
// It is not in what the scale shows, but in what a syringe brings along that was
// not rinsed with what it takes, and in what a rinse washes out of it.
func TestSyringeDeadSpace(t *testing.T) {
	k, u := one(t, tenSyringe), alone()
	film := propagate(t, u, k.Film(u))
	near.Relative(t, "mean", 0.05, film.Value, 1e-12)
	near.Relative(t, "u", 0.05/math.Sqrt(3), film.StandardUncertainty, 1e-12)
	assert.Equal(t, []string{"the dead space of the x is at most 0.1 mL (ISO 7886-1:1993, from memory)"}, worded(u.Notes).Assumed)
	u = quiet()
	u.Emptying = Rinsed
	got := delivered(t, k, u, 4)
	near.Relative(t, "rinsed", 4+0.98*0.05, got.Value, 1e-12)
	near.Relative(t, "u", math.Sqrt(0.19*0.19+0.05*0.05+0.001*0.001)/math.Sqrt(3), got.StandardUncertainty, 1e-9)
	stated := one(t, tenSyringe+"retained = \"0.08 mL\"")
	assert.Equal(t, 0.08, propagate(t, u, stated.Film(u.next("film"))).Value)
}
