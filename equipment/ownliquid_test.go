package equipment

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// withEthanol are readings that were taken with ethanol.
func withEthanol(of Held, mark, values string) string {
	return "readings = { liquid = \"Ethanol\", of = \"" + string(of) + "\", at = \"" + mark + "\", values = [" + values + "] }\n"
}

// Readings with ethanol stand, by every kind, for what is used with ethanol, with the mean, its
// uncertainty and the scatter, and nothing of the meniscus, of a cushion of air, of the limit, of what
// stays or of what clings; they say nothing of water, with which all is as if there were none.
func TestOwnMeanOfAnotherLiquid(t *testing.T) {
	for what, c := range owns {
		k := one(t, c.text+withEthanol(c.of, "1 mL", nine))
		require.Equal(t, Alone, k.Judged[0].Standing, what)
		u := of(alone(), "ethanol")
		got := used(t, k, u, c.of)
		near.Relative(t, what, ofNine.mean, got.Value, 2e-4)
		near.Relative(t, "u of the "+what, k.Judged[0].S*math.Sqrt(10.0/9), got.StandardUncertainty, 1e-9)
		counted := 0
		for _, line := range got.Budget {
			if line.StandardUncertainty > 0 {
				counted++
				assert.False(t, line.Assumed, what)
				assert.Equal(t, 8.0, line.DegreesOfFreedom, what)
			}
		}
		assert.Equal(t, 2, counted, what)
		water := alone()
		near.Relative(t, what+" with water", used(t, one(t, c.text), alone(), c.of).StandardUncertainty, used(t, k, water, c.of).StandardUncertainty, 1e-12)
		assert.Contains(t, strings.Join(worded(water.Notes).NotCounted, "\n"), "the readings of the x with Ethanol, which say nothing of water", what)
		assert.NotContains(t, strings.Join(worded(u.Notes).NotCounted, "\n"), "say nothing of", what)
	}
}

// Readings with water are as they were for other liquids: the mean of the piece counts, and the
// meniscus or the cushion beside it.
func TestOwnMeanOfWaterWithAnotherLiquid(t *testing.T) {
	flask, piston := owns["flask"], owns["piston"]
	u := of(alone(), "ethanol")
	got := used(t, one(t, flask.text+readAt(flask.of, "1 mL")), u, flask.of)
	assert.Contains(t, names(got.Analytic), "meniscus of ethanol")
	assert.Contains(t, names(got.Analytic), "bias of the x at 1 mL, by its readings")
	got = used(t, one(t, piston.text+readAt(piston.of, "1 mL")), of(alone(), "ethanol"), piston.of)
	assert.Contains(t, names(got.Analytic), "bias of the x with ethanol at 1 mL, relative to its limit")
	assert.Contains(t, names(got.Analytic), "bias of the x at 1 mL, by its readings")
}

// Of both, each counts for its own liquid, with its own standard deviation; the mistake of one mark
// of one liquid that is read twice is not made.
func TestOwnMeansOfTwoLiquids(t *testing.T) {
	both := "readings = [ { values = [\"1.002 mL\", \"1.001 mL\", \"1.003 mL\", \"1.002 mL\"] },\n{ liquid = \"ethanol\", values = [\"0.97 mL\", \"0.98 mL\", \"0.99 mL\", \"0.98 mL\"] } ]\n"
	k := one(t, "[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"1 mL\"\n"+both)
	require.Len(t, k.Judged, 2)
	u := alone()
	water, ethanol := node(t, k, u, "a", 1), node(t, k, of(u, "ethanol"), "b", 1)
	a, b := propagate(t, u, water), propagate(t, u, ethanol)
	near.Relative(t, "water", 1.002, a.Value, 1e-3)
	near.Relative(t, "ethanol", 0.98, b.Value, 1e-9)
	near.Relative(t, "s of ethanol", math.Sqrt(0.0002/3), term(b, "repeatability of the x").StandardUncertainty, 1e-9)
	near.Relative(t, "s/√n of ethanol", math.Sqrt(0.0002/3)/2, term(b, "bias of the x with ethanol at 1 mL, by its readings").StandardUncertainty, 1e-9)
	assert.Empty(t, u.Notes.NotCounted, "what another liquid would be is not said of either")
	sets := map[uncertainty.Set]bool{}
	for _, line := range propagate(t, u, u.Model.Add(water, ethanol)).Budget {
		if line.DegreesOfFreedom > 0 {
			sets[line.Set] = true
		}
	}
	assert.Len(t, sets, 2)
}

// At another mark than that of the readings: of glass r of the error is carried, with the meniscus
// that is in it, of which the rest counts as computed; what is left of the limit comes to it. Of a
// piston the error goes with the volume, and of the cushion 1 - r² of the variance is left
// (constructed).
func TestOwnMeanOfAnotherLiquidAtOtherMarks(t *testing.T) {
	const cylinder = "[[cylinder]]\nname = \"x\"\ncapacity = \"10 mL\"\ndivision = \"0.1 mL\"\nbore = \"14 mm\"\ntolerance = \"0.2 mL\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\n"
	k := one(t, cylinder+withEthanol(Contained, "10 mL", "\"9.91 mL\", \"9.90 mL\", \"9.92 mL\", \"9.91 mL\""))
	without := one(t, cylinder+"repeatability = \"0 mL\"\n")
	u := of(alone(), "ethanol")
	meniscus := term(contained(t, without, of(alone(), "ethanol"), 5).Analytic, "meniscus of ethanol")
	got := contained(t, k, u, 5)
	near.Relative(t, "at 5 mL", 5-0.09/2+contained(t, without, of(alone(), "ethanol"), 5).Value/2-2.5, got.Value, 1e-9)
	near.Relative(t, "half of the meniscus", meniscus.Contribution/2, term(got.Analytic, "meniscus of ethanol").Contribution, 1e-9)

	piston := one(t, "[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"1 mL\"\ntolerance = \"0.001 mL\"\n"+withEthanol(Delivered, "1 mL", "\"0.98 mL\", \"0.97 mL\", \"0.98 mL\", \"0.99 mL\""))
	half := delivered(t, piston, of(alone(), "ethanol"), 0.5)
	near.Relative(t, "half of what is off, of half the volume", 0.5*(1-0.01), half.Value, 1e-9)
	cushion := 0.0
	for _, name := range []string{"bias of the x with ethanol, common to its marks, relative to its limit", "bias of the x with ethanol at 0.5 mL, own, relative to its limit"} {
		cushion = math.Hypot(cushion, term(half.Analytic, name).Contribution)
	}
	near.Relative(t, "3/4 of the variance", 0.5*0.05/math.Sqrt(3)*math.Sqrt(0.75), cushion, 0.02)
}

// Three readings leave what is assumed of the liquid, and the scatter counts.
func TestFewOwnReadingsOfAnotherLiquid(t *testing.T) {
	k := one(t, "[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"1 mL\"\n"+withEthanol(Delivered, "1 mL", "\"0.98 mL\", \"0.97 mL\", \"0.99 mL\""))
	u := of(alone(), "ethanol")
	got := delivered(t, k, u, 1)
	near.Relative(t, "value", 1, got.Value, 1e-12)
	assert.Contains(t, names(got.Analytic), "bias of the x with ethanol at 1 mL, relative to its limit")
	near.Relative(t, "s", 0.01, term(got.Analytic, "repeatability of the x").StandardUncertainty, 1e-9)
	assert.Contains(t, strings.Join(worded(u.Notes).NotCounted, "\n"), "the mean 0.98 mL of the 3 readings of the x at 1 mL with Ethanol: it counts from four readings on, and what is known or assumed of it stands")
}

// Grams of ethanol at 25 °C: 0.7893 g/mL less 5 times 0.109 %, in air of 0.00118 g/mL, is 0.78500
// g/mL, so that 1 g, shown in air, has 1.27560 mL (worked out by hand). Its density is told.
func TestOwnReadingsOfWeighedLiquid(t *testing.T) {
	const text = "[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"1 mL\"\nreadings = { liquid = \"ethanol\", temperature = \"25 °C\", within = \"0 °C\", weighed = [\"0.785 g\", \"0.786 g\", \"0.784 g\", \"0.785 g\"]"
	k := one(t, text+" }\n")
	j := &k.Judged[0]
	near.Relative(t, "volume", 0.785*1.27560, j.Mean, 2e-5)
	near.Relative(t, "the density within 0.1 %", math.Hypot(0.001, 6e-5)/math.Sqrt(3), j.Common/j.Mean, 1e-3)
	u := of(alone(), "ethanol")
	delivered(t, k, u, 1)
	assert.Contains(t, strings.Join(worded(u.Notes).Assumed, "\n"), "the ethanol weighed for the x had 25 °C within 0 °C and 0.785 g/mL, and the air about 1013 hPa")
	k = one(t, text+", density = { value = \"0.790 g/mL\", expanded = \"0.004 g/mL\", k = 2 } }\n")
	near.Relative(t, "as stated", j.Mean*(0.78500-0.00118)/(0.790-0.00118), k.Judged[0].Mean, 2e-5)
	near.Relative(t, "as stated", 0.002/0.790, k.Judged[0].Common/k.Judged[0].Mean, 1e-3)
	dropper := one(t, "[[dropper]]\nname = \"x\"\ndrop = \"0.02 mL\"\ndrop-of = \"ethanol\"\nreadings = { temperature = \"20 °C\", weighed = [\"0.0158 g\", \"0.0157 g\", \"0.0159 g\", \"0.0158 g\"] }\n")
	near.Relative(t, "a drop", 0.0158/0.7893*(1-0.0012/8)/(1-0.0012/0.7893), dropper.Judged[0].Mean, 1e-4)
}
