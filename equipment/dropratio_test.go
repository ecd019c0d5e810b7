package equipment

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	words "minim/report/words/influence"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

const exactDropper = oneDropper + "tolerance = \"0 mL\"\nrepeatability = \"0 mL\"\n"

// limits of the volume of one drop, in drops of water of 0.05 mL.
func limits(t *testing.T, k *Measure, u Use) (low, high float64, got outcome) {
	t.Helper()
	got = drops(t, k, u, 1)
	for _, line := range got.Budget {
		if line.Assumed && strings.HasPrefix(string(line.Code), string(dropSizes)) {
			s := uncertainty.SummaryOf(line.Distribution)
			low, high = s.Low, s.High
		}
	}
	return low, high, got
}

// Counts to 60 minims with one dropper, water 60, of an early dental handbook
// (museum.dent.uoa.gr, one source). The handbook's alcohol, syrup, glycerol, creosote,
// turpentine and dilute alcohol lie in what is taken of an unknown liquid, and so does
// a tincture in 70 % ethanol of which twenty drops weighed 0.43 to 0.47 g (a pharmacy
// practical, helpiks.su/6-9535.html) at 0.8856 g/mL (OIML R 22). Ether and chloroform
// do not: FILES.md and the doc comment say so.
func TestDropOfAnUnknownLiquid(t *testing.T) {
	u := alone()
	u.Day.Solvent = Solvent{Name: "mycocide"}
	low, high, got := limits(t, one(t, exactDropper), u)
	near.Relative(t, "mean", 0.7*0.05, got.Value, 1e-12)
	near.Relative(t, "planned as water", 0.05, got.Intended, 1e-12)
	near.Relative(t, "u", 0.6/math.Sqrt(12)*0.05, got.StandardUncertainty, 1e-12)
	for liquid, count := range map[string]float64{"syrup": 65, "glycerol": 67, "creosote": 122, "turpentine": 136, "dilute alcohol": 137, "alcohol": 146} {
		assert.True(t, low <= 60/count && 60/count <= high, liquid)
	}
	for _, twenty := range []float64{0.43, 0.47} {
		ratio := twenty / 20 / 0.8856 / 0.05
		assert.True(t, low <= ratio && ratio <= high, ratio)
	}
	for liquid, count := range map[string]float64{"ether": 172, "chloroform": 250} {
		assert.Less(t, 60/count, low, liquid)
	}
	assert.Contains(t, worded(u.Notes).Assumed, "a drop of mycocide, of which the surface tension is not known, is 0.4 to 1 of a drop of water")
	assert.Equal(t, []string{"how large a drop of mycocide is, is hardly known: weigh twenty of them, and state drop and drop-of for the x in the kit"}, worded(u.Notes).Warnings)
	assert.Contains(t, got.shifts(), "size of the drops of mycocide")
}

// shifts are the groups that move the value away from what is planned.
func (o outcome) shifts() (groups []string) {
	for _, s := range o.Analytic.Shifts() {
		groups = append(groups, words.Group(s.Group))
	}
	return groups
}

// A solution may drop as its solvent does or, for what is dissolved in it, as little as
// an unknown liquid; in ethanol it cannot do much (constructed from Tate's law: 22.4/72.74
// of the tension and 0.99821/0.7893 of the density make 0.389, and 15 % of that).
func TestDropOfASolution(t *testing.T) {
	for _, c := range []struct {
		solvent            string
		low, high, planned float64
	}{
		{"water", 0.4, 1, 1},
		{"ethanol", 0.331, 0.448, 0.389},
		{"glycerol", 0.4, 0.801, 0.697},
		{"turpentine", 0.4, 1, 1}, // its tension is not in the tables
	} {
		u := of(alone(), c.solvent)
		u.Solution = "5 % bath"
		low, high, got := limits(t, one(t, exactDropper), u)
		near.Absolute(t, c.solvent, c.low, low, 0.001)
		near.Absolute(t, c.solvent, c.high, high, 0.001)
		near.Absolute(t, c.solvent, c.planned, got.Intended/0.05, 0.001)
	}
	pure, _, exact := limits(t, one(t, exactDropper), alone())
	assert.Zero(t, pure)
	near.Relative(t, "water", 0.05, exact.Value, 1e-12)
}

// Drops that were weighed with their own liquid need no ratio, and keep the 15 % of USP
// <1101> for a calibrated dropper; of another liquid they say what Tate's law says, or
// nothing.
func TestDropperKnownByItsOwnLiquid(t *testing.T) {
	k := one(t, oneDropper+"drop = \"0.03 mL\"\ndrop-of = \"Mycocide\"\nrepeatability = \"0 mL\"\n")
	u := alone()
	u.Day.Solvent = Solvent{Name: "mycocide"}
	got := drops(t, k, u, 4)
	near.Relative(t, "volume", 0.12, got.Value, 1e-12)
	near.Relative(t, "u", 0.15*0.12/math.Sqrt(3), got.StandardUncertainty, 1e-12)
	assert.Empty(t, worded(u.Notes).Warnings)
	near.Relative(t, "for the kit", 0.15*0.03/math.Sqrt(3), k.Uncertainty(k.Capacity), 1e-12)

	_, err := k.Drops(alone(), 1)
	impossible(t, "the drops of the x are known of Mycocide and not of water", err)

	bath := one(t, exactDropper+"drop = \"0.04 mL\"\ndrop-of = \"mycocide in ethanol\"\n")
	u = of(alone(), "ethanol")
	u.Solution = "mycocide in ethanol"
	near.Relative(t, "of a solution", 0.04, drops(t, bath, u, 1).Value, 1e-12)

	alcohol := one(t, exactDropper+"drop = \"0.02 mL\"\ndrop-of = \"absolute ethanol\"\n")
	near.Relative(t, "by an alias", 0.02, drops(t, alcohol, of(alone(), "ethanol"), 1).Value, 1e-12)
	near.Relative(t, "water beside it", 0.02/0.389, drops(t, alcohol, of(alone(), "water"), 1).Value, 0.002)
	low, high, _ := limits(t, alcohol, of(alone(), "acetone"))
	acetone := 23.7 / 0.7905 / (22.4 / 0.7893)
	near.Relative(t, "acetone", 0.85*acetone, low, 1e-9)
	near.Relative(t, "acetone", 1.15*acetone, high, 1e-9)
	u = of(alone(), "ethanol")
	u.Solution = "5 % bath"
	low, _, _ = limits(t, alcohol, u)
	assert.Less(t, low, 0.86, "a solution is not its solvent")
}

// Two droppers, one liquid: what is wrong with the size of its drops is wrong in both.
func TestUnknownLiquidIsOneForAllDroppers(t *testing.T) {
	kit := parseKit(t, exactDropper+"[[dropper]]\nname = \"y\"\ntolerance = \"0 mL\"\nrepeatability = \"0 mL\"\n")
	u := alone()
	u.Day.Solvent = Solvent{Name: "mycocide"}
	a, err := kit.Measure("x").Drops(u.next("a"), 2)
	assert.NoError(t, err)
	b, err := kit.Measure("y").Drops(u.next("b"), 3)
	assert.NoError(t, err)
	near.Relative(t, "correlation", 1, correlation(t, u, a, b), 1e-9)
	_, rectangular := term(outcomeOf(t, u, a, nil).Analytic, "size of a drop of mycocide beside one of water").Distribution.(uncertainty.Rectangular)
	assert.True(t, rectangular)
}

func TestDropOfMistakes(t *testing.T) {
	mistake := func(keys string) string {
		_, err := ParseKit("b.toml", []byte(oneDropper+keys))
		if err == nil {
			return ""
		}
		return err.Error()
	}
	assert.Contains(t, mistake(`drop-of = "mycocide"`), "b.toml:3:11: drop-of: the size of a drop of mycocide is not stated")
	assert.Contains(t, mistake("drop = \"0.04 mL\"\ndrop-of = 3"), "b.toml:4:11: drop-of")
	assert.Empty(t, mistake("drop = \"0.04 mL\"\ndrop-of = \"tap water\""))
	assert.Empty(t, one(t, oneDropper+"drop = \"0.04 mL\"\ndrop-of = \"tap water\"").DropOf)
}
