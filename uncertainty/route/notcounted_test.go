package route

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
)

// What is not counted is named where it can matter, and nowhere else (common practice, no source).
func TestNamedAsNotCounted(t *testing.T) {
	skipIfSlow(t)
	const (
		adsorbed = "what walls take up of "
		blank    = " itself holds of "
		plastic  = ", of plastic, takes up of "
		water    = "water that "
	)
	weak := func(strength string) recipe {
		return recipe{target: strength, more: stockOf("1 g/L"), steps: fromStock + takeTen + toMark + takeTen + toMark}
	}
	for name, c := range map[string]struct {
		recipe recipe
		named  []string
	}{
		"10 mg/L":                          {weak("10 mg/L"), nil},
		"a stock of 0.5 g/L":               {recipe{target: "5 mg/L", more: stockOf("0.5 g/L"), steps: weak("").steps}, []string{adsorbed + "urea", "what water itself holds of urea"}},
		"on the way":                       {recipe{target: "1 g/L", more: stockOf("1 g/L"), steps: fromStock + takeTen + toMark}, nil},
		"tap water":                        {recipe{target: "10 mg/L", solvent: `name = "tap water"`, more: stockOf("1 g/L"), steps: weak("").steps}, []string{"what tap water itself holds of urea"}},
		"strong in tap water":              {recipe{target: "100 g/L", solvent: `name = "tap water"`, steps: weighTen + toMark}, nil},
		"weighed":                          {recipe{target: "100 g/L", steps: weighTen + toMark}, nil},
		"a hydrate":                        {recipe{target: "100 g/L", solute: "name = \"salt\"\nweighed-as = \"salt decahydrate\"\nform-factor = 0.5", steps: weighTen + toMark}, []string{water + "salt decahydrate"}},
		"hygroscopic":                      {recipe{target: "100 g/L", solute: `name = "Potassium carbonate"`, steps: weighTen + toMark}, []string{water + "Potassium carbonate"}},
		"gelatine in a packet":             {recipe{target: "100 g/L", solute: `name = "gelatine"`, more: "[[packet]]\nname = \"sachet\"\ncontent = \"10 g\"\n", steps: `{ packet = "sachet" }, ` + toMark}, []string{water + "gelatine"}},
		"of a hydrate from a stock":        {recipe{solute: "name = \"copper sulfate pentahydrate\"", more: stockOf("100 g/L"), steps: tenth}, nil},
		"a carbohydrate":                   {recipe{target: "100 g/L", solute: `name = "carbohydrate"`, steps: weighTen + toMark}, nil},
		"ethanol in a syringe":             {recipe{target: "1 g/L", solvent: `name = "ethanol"`, more: stockOf("10 g/L"), steps: fromStock + `{ take = "10 mL", with = "syringe" }, ` + toMark}, []string{"what the syringe" + plastic + "ethanol"}},
		"water in a syringe":               {recipe{target: "1 g/L", more: stockOf("10 g/L"), steps: fromStock + `{ take = "10 mL", with = "syringe" }, ` + toMark}, nil},
		"ethanol in glass":                 {recipe{target: "1 g/L", solvent: `name = "ethanol"`, more: stockOf("10 g/L"), steps: tenth}, nil},
		"a stock in acetone, in a syringe": {recipe{target: "1 g/L", more: stockOf("10 g/L", `solvent = "acetone"`), steps: fromStock + `{ take = "10 mL", with = "syringe" }, ` + toMark}, []string{"what the syringe" + plastic + "acetone"}},
	} {
		var found []string
		notes := c.recipe.run(t).Notes.NotCounted
		for _, text := range note.Texts(notes) {
			for _, of := range []string{adsorbed, blank, plastic, water} {
				if strings.Contains(text, of) {
					found = append(found, text)
				}
			}
		}
		require.Len(t, found, len(c.named), "%s: %q", name, found)
		for i, words := range c.named {
			assert.Contains(t, found[i], words, name)
		}
	}
}

// A vessel of plastic that a mixture with ethanol is made up in is named as well.
func TestVesselOfPlastic(t *testing.T) {
	kit := exactKit + "[[flask]]\nname = \"plastic\"\ncapacity = \"100 mL\"\ntolerance = \"0 mL\"\nmaterial = \"polypropylene\"\n"
	x := recipe{target: "1 g/L", more: stockOf("10 g/L", `solvent = "ethanol"`), steps: fromStock + `{ take = "10 mL", with = "cylinder" }, { make-up-to = "100 mL", in = "plastic" }, `}
	noted(t, note.Texts(only(t, parse(t, kit, x.text())).Notes.NotCounted), "what the plastic, of plastic, takes up of ethanol and water")
}

// The solubility counts at the coldest temperature that is stated: 17 °C less 3 of a bench, in a
// straight line between 10 and 20 °C (constructed).
func TestSolubilityInTheCold(t *testing.T) {
	solute := func(solubility string) string { return "name = \"urea\"\nsolubility = " + solubility }
	bench := `bench = { temperature = "17 °C", within = "3 °C" }`
	for name, c := range map[string]struct {
		head, solubility string
		most             float64
		known            bool
	}{
		"none":                   {bench, "", 0, true},
		"warm bench":             {`bench = { temperature = "24 °C", within = "3 °C" }`, `"100 g/L"`, 0.1, true},
		"cold bench":             {bench, `"100 g/L"`, 0.1, false},
		"temperature not stated": {"", `"100 g/L"`, 0.1, true},
		"between":                {bench, `["100 g/L at 10 °C", "150 g/L at 20 °C"]`, 0.12, true},
		"in any order":           {bench, `["150 g/L at 20 °C", "100 g/L at 10 °C"]`, 0.12, true},
		"at that":                {bench, `"120 g/L at 14 °C"`, 0.12, true},
		"colder than stated":     {bench, `["150 g/L at 20 °C", "180 g/L at 30 °C"]`, 0.15, false},
		"warmer than stated":     {bench, `["100 g/L at 5 °C", "110 g/L at 10 °C"]`, 0.11, true},
		"several, no bench":      {"", `["150 g/L at 20 °C", "100 g/L at 10 °C"]`, 0.1, true},
		"less in the warm":       {bench, `["150 g/L at 10 °C", "100 g/L at 20 °C"]`, 0.10, true},
	} {
		x := recipe{head: c.head, solute: solute(c.solubility), steps: weighTen + toMark}
		if c.solubility == "" {
			x.solute = `name = "urea"`
		}
		most, known := parse(t, exactKit, x.text()).Soluble()
		assert.InDelta(t, c.most, most, 1e-12, name)
		assert.Equal(t, c.known, known, name)
	}

	x := recipe{target: "125 g/L", head: bench, solute: solute(`["100 g/L at 10 °C", "150 g/L at 20 °C"]`), steps: `{ weigh = "12.50 g", on = "balance" }, ` + toMark}
	assert.Contains(t, note.Texts(x.run(t).Notes.Warnings), "route: a solution of 125 g/L is stronger than the solubility of the urea, 120 g/L")
	x.head = `bench = { temperature = "20 °C", within = "1 °C" }`
	assert.Empty(t, note.Texts(x.run(t).Notes.Warnings))
	x.head, x.solute = bench, solute(`"150 g/L"`)
	noted(t, note.Texts(x.run(t).Notes.NotCounted), "how much less of urea dissolves at 14 °C, the coldest that is stated")

	kit, err := ParseKit("bench.toml", []byte(exactKit))
	require.NoError(t, err)
	for solubility, says := range map[string]string{
		`["1 g/L", "2 g/L at 20 °C"]`:          `solubility: "1 g/L" does not say at which temperature`,
		`["1 g/L at 20 °C", "2 g/L at 20 °C"]`: "solubility: two are stated at 20 °C",
		`"1 g/L at 90 °C"`:                     "a solubility at 90 °C is of no use on a bench",
		`"1 g/L at noon"`:                      `solubility: "noon"`,
	} {
		_, err := ParsePrep("prep.toml", []byte(recipe{solute: solute(solubility), steps: weighTen + toMark}.text()), kit)
		assert.ErrorContains(t, err, says)
	}
}
