package equipment

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

const bareTen = oneCylinder + "division = \"0.2 mL\"\ntolerance = \"0 mL\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\n"

// By Young and Laplace, solved apart from this code: a 10 mL cylinder 15.2 mm wide
// (ASTM E1272) holds 0.096 mL less of ethanol than of water, a 100 mL one of 29.6 mm
// 0.376 mL, a flask neck of 13 mm 0.062 mL; none has been measured, and a third of
// it is its standard uncertainty. What was intended is the mark.
func TestMeniscusOfEthanol(t *testing.T) {
	for text, less := range map[string]float64{
		bareTen + "bore = \"15.2 mm\"\n": 0.096,
		"[[cylinder]]\nname = \"x\"\ncapacity = \"100 mL\"\ndivision = \"1 mL\"\ntolerance = \"0 mL\"\nbore = \"29.6 mm\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\n": 0.376,
		"[[flask]]\nname = \"x\"\ncapacity = \"100 mL\"\ntolerance = \"0 mL\"\nbore = \"13 mm\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\n":                           0.062,
		"[[jar]]\nname = \"x\"\nline = \"100 mL\"\ntolerance = \"0 mL\"\nbore = \"29.6 mm\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\n":                               0.376,
	} {
		k := one(t, text)
		u := of(quiet(), "ethanol")
		got := contained(t, k, u, k.Capacity)
		near.Absolute(t, text, -less, got.Value-k.Capacity, 0.001)
		assert.Equal(t, k.Capacity, got.Intended)
		near.Absolute(t, "a third", less/3, got.StandardUncertainty, 0.0004)
		c := term(got.Analytic, "meniscus of ethanol")
		assert.Equal(t, []any{uncertainty.Bench, true, uncertainty.Normal{Mu: 1, Sigma: 1.0 / 3}}, []any{c.Owner.Kind, c.Assumed, c.Distribution})
		assert.Equal(t, []string{"the meniscus of ethanol is known by computation within a third (none has been measured)"}, worded(u.Notes).Assumed)
		poured := delivered(t, k, of(quiet(), "ethanol"), k.Capacity)
		near.Absolute(t, "poured", got.Value, poured.Value, 1e-12)
		assert.Equal(t, k.Capacity, contained(t, k, quiet(), k.Capacity).Value) // water
	}
}

// The bore that ISO leaves open is that of ASTM for the same size, and said.
func TestMeniscusWithAssumedBore(t *testing.T) {
	k := one(t, oneCylinder+"class = \"B\"\nstandard = \"ISO\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\nshape = \"rectangular\"\n")
	u := of(quiet(), "ethanol")
	near.Absolute(t, "less", -0.096, contained(t, k, u, 10).Value-10, 0.001)
	assert.Equal(t, []string{
		"the x is 15.2 mm wide inside at its marks, as ASTM has it (from memory)",
		"the meniscus of ethanol is known by computation within a third (none has been measured)",
	}, worded(u.Notes).Assumed)
}

// Between two readings of one bore it cancels, and a burette is read twice however much runs out.
func TestMeniscusBetweenTwoReadings(t *testing.T) {
	k := one(t, "[[burette]]\nname = \"x\"\ncapacity = \"25 mL\"\ndivision = \"0.1 mL\"\ntolerance = \"0 mL\"\nbore = \"11 mm\"\nretained = \"0 mL\"\n")
	u := of(quiet(), "ethanol")
	assert.Equal(t, 10.0, delivered(t, k, u, 10).Value)
	assert.Equal(t, said{}, worded(u.Notes))
	assert.Equal(t, 25.0, delivered(t, k, u, 25).Value)
	assert.Equal(t, said{}, worded(u.Notes))
}

// If the computation is wrong it is wrong for all glass on the bench.
func TestMeniscusIsTheBenchs(t *testing.T) {
	k := one(t, bareTen+"bore = \"15.2 mm\"\n")
	flask := one(t, "[[flask]]\nname = \"y\"\ncapacity = \"100 mL\"\ntolerance = \"0 mL\"\nbore = \"13 mm\"\nclinging = \"0 mL\"\n")
	u := of(quiet(), "ethanol")
	whole, err := flask.Contain(u.next("b"), 100)
	require.NoError(t, err)
	part := node(t, k, u, "a", 10)
	near.Relative(t, "correlation", 1, correlation(t, u, part, whole), 1e-9)
	near.Absolute(t, "sum", (0.096+0.062)/3, propagate(t, u, u.Model.Add(part, whole)).StandardUncertainty, 0.0005)
}

// What is not counted of it, and why.
func TestMeniscusNotCounted(t *testing.T) {
	ethanol := func(u Use) Use { return of(u, "ethanol") }
	for what, test := range map[string]struct {
		text string
		use  func(Use) Use
		note string
	}{
		"switched off": {bareTen + "bore = \"15.2 mm\"\n", func(u Use) Use { u = ethanol(u); u.Day.MeniscusIgnored = true; return u },
			"height of the meniscus of ethanol in glass that is adjusted with water (ignored, as the prep says)"},
		"tension not known": {bareTen + "bore = \"15.2 mm\"\n", func(u Use) Use { return of(u, "turpentine") },
			"height of the meniscus of turpentine in glass that is adjusted with water (surface tension not known)"},
		"liquid not known": {bareTen + "bore = \"15.2 mm\"\n", func(u Use) Use { u.Day.Solvent = Solvent{Name: "tea"}; return u },
			"height of the meniscus of tea in glass that is adjusted with water (surface tension not known)"},
		"bore not known": {bareTen, ethanol, "height of the meniscus of ethanol in the x (bore not known)"},
		"beaker": {"[[beaker]]\nname = \"x\"\ncapacity = \"10 mL\"\ntolerance = \"0 mL\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\n", ethanol,
			"height of the meniscus of ethanol in the x (bore not known)"},
	} {
		u := test.use(quiet())
		assert.Equal(t, 10.0, contained(t, one(t, test.text), u, 10).Value, what)
		assert.Equal(t, said{NotCounted: []string{test.note}}, worded(u.Notes), what)
	}
	// What is not read has no meniscus.
	for _, text := range []string{onePiston, tenSyringe} {
		k, u := one(t, text), ethanol(alone())
		got := delivered(t, k, u, k.Capacity)
		assert.Equal(t, k.Capacity, got.Value)
		assert.Equal(t, "", nameOf(term(got.Analytic, "meniscus of ethanol")))
		for _, note := range worded(u.Notes).NotCounted {
			assert.Equal(t, false, strings.Contains(note, "meniscus"), note)
		}
	}
	// It is not an error of reading: the word "none" does not take it away.
	near.Absolute(t, "measured s", -0.096, contained(t, one(t, bareTen+"bore = \"15.2 mm\"\nrepeatability = \"0.02 mL\"\n"), of(quiet(), "ethanol"), 10).Value-10, 0.001)
	again := contained(t, one(t, bareTen+"bore = \"15.2 mm\"\n"), of(quiet(), "ethanol"), 10).Value - 10
	near.Relative(t, "one figure", MeniscusCorrection(15.2, 22.4, 0.7893), again, 1e-9)
}
