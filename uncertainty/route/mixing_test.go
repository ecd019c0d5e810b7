package route

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty/near"
)

const (
	inEthanol = `solvent = "ethanol"`
	fifty     = `{ take = "50 mL", with = "cylinder" }, `
)

func add(volume, more string) string {
	return `{ add = "` + volume + `", with = "cylinder"` + more + ` }, `
}

// 50 mL of ethanol and 50 mL of water are 96.462696 mL (OIML R 22, recomputed at
// 20 °C), so that 50 mL of 10 g/L in ethanol become 500 mg in as much.
func TestEthanolAndWaterContract(t *testing.T) {
	x := recipe{head: closed, target: "5 g/L", more: stockOf("10 g/L", inEthanol), steps: fromStock + fifty + add("50 mL", "")}
	r := x.run(t)
	near.Relative(t, "strength", 500/96.462696, r.Analytic.Value, 1e-8)
	near.Absolute(t, "made / mL", 96.462696, r.MadeML, 1e-6)
	assert.Contains(t, note.Texts(r.Notes.Assumed), "ethanol and water mix with a contraction of 3.54 % (OIML R 22, solute left out)")

	x.more = stockOf("10 g/L", `solvent = "absolute ethanol"`)
	near.Relative(t, "by another name", 500/96.462696, x.run(t).Analytic.Value, 1e-8)

	x.more, x.solvent = stockOf("10 g/L", `solvent = "water"`), `name = "ethanol"`
	near.Relative(t, "the other way round", 500/96.462696, x.run(t).Analytic.Value, 1e-8)
}

// 50 mL of 96 % vol and 50 mL of water: the masses add (OIML R 22). Density and
// mass fraction of 96 % vol 807.41963 kg/m³ and 93.838387 %, of water
// 998.20123 kg/m³ (recomputed table): m = 40.3709815 + 49.9100615 = 90.281043 g
// of p = 0.9383839·40.3709815/90.281043 = 0.4196130. On a straight line between
// the tabled 40 and 50 % vol, ρ is 931.05 kg/m³, so the volume is near 96.97 mL.
// The worked examples have 97.059 mL for 95 % vol.
func TestSpiritAndWaterContract(t *testing.T) {
	r := recipe{head: closed, target: "5 g/L", more: stockOf("10 g/L", `solvent = "ethanol 96 %"`), steps: fromStock + fifty + add("50 mL", "")}.run(t)
	near.Absolute(t, "made / mL", 96.97, r.MadeML, 0.02)
	near.Relative(t, "strength", 500/r.MadeML, r.Analytic.Value, 1e-12)
}

// What has been mixed contracts again on the next addition: in two portions as
// much as in one (the masses add in any order).
func TestContractionOfSeveralAdditions(t *testing.T) {
	once := recipe{head: closed, target: "3 g/L", more: stockOf("10 g/L", inEthanol), steps: fromStock + `{ take = "20 mL", with = "cylinder" }, ` + add("60 mL", "")}.run(t)
	twice := recipe{head: closed, target: "3 g/L", more: stockOf("10 g/L", inEthanol), steps: fromStock + `{ take = "20 mL", with = "cylinder" }, ` + add("20 mL", "") + add("40 mL", "")}.run(t)
	near.Relative(t, "in two portions", once.Analytic.Value, twice.Analytic.Value, 1e-9)
	volume, _ := equipment.MixAlcohol(20, 1, 60, 0)
	near.Relative(t, "strength", 200/volume, once.Analytic.Value, 1e-9)

	// 10 mL of the stock made up to 20 mL are 50 % vol, since the volume of
	// ethanol in it is kept; 20 mL of that and 20 mL of water.
	r := recipe{head: closed, target: "2.5 g/L", more: stockOf("10 g/L", inEthanol), steps: fromStock + takeTen + `{ make-up-to = "20 mL", in = "cylinder" }, ` +
		`{ take = "20 mL", with = "cylinder" }, ` + add("20 mL", "")}.run(t)
	volume, _ = equipment.MixAlcohol(20, 0.5, 20, 0)
	near.Relative(t, "made up, then added to", 100/volume, r.Analytic.Value, 1e-9)
	assert.Less(t, volume, 39.9)
}

// A contraction that is stated beats the computed one. Made up to a mark, what
// contracts does not matter: 500 mg in 100 mL.
func TestContractionStatedAndAtAMark(t *testing.T) {
	x := recipe{head: closed, target: "5 g/L", more: stockOf("10 g/L", inEthanol), steps: fromStock + fifty + add("50 mL", `, contraction = "2 % of volume"`)}
	r := x.run(t)
	near.Relative(t, "stated", 500/98.0, r.Analytic.Value, 1e-12)
	assert.Empty(t, withWord(note.Texts(r.Notes.Assumed), "contraction"))

	x.more = stockOf("10 g/L", `solvent = "acetone"`)
	near.Relative(t, "acetone, stated", 500/98.0, x.run(t).Analytic.Value, 1e-12)

	x.steps = fromStock + fifty + toMark
	r = x.run(t)
	near.Relative(t, "to the mark", 5, r.Analytic.Value, 1e-12)
	assert.Empty(t, withWord(note.Texts(r.Notes.NotCounted), "contraction"))

	// In what was made up, the acetone is still there: its contraction with
	// more water is not known, and said not to be counted.
	x.target, x.steps = "2.5 g/L", fromStock+fifty+toMark+fifty+add("50 mL", "")
	assert.Contains(t, note.Texts(x.run(t).Notes.NotCounted), "contraction on mixing acetone and water and water (not stated)")
}

// The same solvent does not contract, and nothing is said of it.
func TestSameSolventDoesNotContract(t *testing.T) {
	r := recipe{target: "5 g/L", more: stockOf("10 g/L"), steps: fromStock + fifty + add("50 mL", "")}.run(t)
	near.Relative(t, "strength", 5, r.Analytic.Value, 1e-12)
	assert.Empty(t, withWord(append(note.Texts(r.Notes.Assumed), note.Texts(r.Notes.NotCounted)...), "contraction"))
}

// Ethanol as the solute itself: 50 mL of it in 50 mL of water are 51.833509 % vol
// (OIML R 22, recomputed).
func TestEthanolAsSolute(t *testing.T) {
	x := recipe{target: "50 % v/v", solute: "name = \"ethanol\"\ndensity = \"0.7893 g/mL\"",
		steps: `{ measure = "50 mL", with = "cylinder" }, { dissolve-in = "50 mL", with = "cylinder" }, `}
	near.Relative(t, "% vol", 51.833509, x.run(t).Analytic.Value, 1e-7)
	// and again on dilution: 20 mL of it and 20 mL of water
	volume, q := equipment.MixAlcohol(20, 0.51833509, 20, 0)
	x.target, x.steps = "25 % v/v", x.steps+`{ take = "20 mL", with = "cylinder" }, `+add("20 mL", "")
	near.Relative(t, "diluted", 0.51833509*20/volume, x.run(t).Analytic.Value/100, 1e-7)
	near.Relative(t, "as by R 22", q, x.run(t).Analytic.Value/100, 1e-7)
	// To the mark, 40 mL in 100 mL are 40 % vol, which is 948.05 kg/m³ of
	// 33.299643 % by mass: 315.69 g/L (OIML R 22).
	x.target, x.steps = "300 g/L", `{ measure = "40 mL", with = "cylinder" }, `+toMark
	near.Relative(t, "g/L", 948.04515*0.33299643, x.run(t).Analytic.Value, 2e-4)

	// By mass, 10 % vol is 8.0149362 % of 984.71043 kg/m³. The solvent is water of
	// 998.20123 kg/m³: what the ethanol does to the density is said by φ alone,
	// 1.1730443 mL/g from ρ = ρ0 + γ (1 - φ ρ0) with γ = 78.923912 g/L.
	x = recipe{target: "8 % w/w", solvent: "name = \"water\"\ndensity = \"998.20123 kg/m³\"",
		solute: "name = \"ethanol\"\ndensity = \"789.2391233 kg/m³\"\nspecific-volume = \"1.1730443 mL/g\"",
		steps:  `{ measure = "10 mL", with = "10 mL pipette" }, ` + toMark}
	near.Relative(t, "% by mass", 8.0149362, x.run(t).Intended, 1e-6)

	x.solute, x.target = "name = \"glycerol\"\ndensity = \"1.26 g/mL\"", "300 g/L"
	x.steps = `{ measure = "50 mL", with = "cylinder" }, { dissolve-in = "50 mL", with = "cylinder" }, `
	r := x.run(t)
	near.Relative(t, "unknown contraction", 630, r.Analytic.Value, 1e-12)
	assert.Contains(t, note.Texts(r.Notes.NotCounted), "contraction on mixing glycerol and water (not stated)")
}

// Weighed aliquots have the density of what they are dissolved in: 1 g of a stock
// of 10 g/L in ethanol of 0.7893 g/mL is 1/0.7893 mL but for the solute.
func TestWeighedAliquotOfAnotherSolvent(t *testing.T) {
	weighed := `{ weigh-aliquot = "1.00 g", on = "balance" }, { weigh-up-to = "100.00 g", on = "balance", vessel = "50 g" }, `
	x := recipe{target: "0.1 g/L", solute: "name = \"dye\"\nspecific-volume = \"0.5 mL/g\"", more: stockOf("10 g/L", inEthanol), steps: fromStock + weighed}
	// ρ = 0.7893 + 0.01·(1 - 0.5·0.7893), w = 0.01/ρ, diluted to a hundredth;
	// the mixture of 0.8 % by mass has 996.6 kg/m³ by OIML R 22, within 0.1 %.
	w := 0.01 / (0.7893 + 0.01*(1-0.5*0.7893)) / 100
	near.Relative(t, "g/L", 1000*w*0.9966, x.run(t).Intended, 1e-3)

	x.more = stockOf("10 g/L", `solvent = "oil"`)
	assert.Equal(t, "weighing a solution needs the density of oil, which is not known; measure it by volume", x.refused(t))

	// Of acetone in water the density is not known, but a strength by mass can
	// do without; one by volume is refused.
	x.more = stockOf("1 % w/w", `solvent = "acetone"`)
	assert.Equal(t, "weighing a solution needs the density of acetone and water, which is not known; measure it by volume", x.refused(t))
	x.target = "0.01 % w/w"
	r := x.run(t)
	near.Relative(t, "% w/w", 0.01, r.Intended, 1e-12)
	noted(t, note.Texts(r.Notes.NotCounted), "density of acetone and water")
}

// A drop of ethanol is 0.39 of a drop of water by Tate's law (22.4/0.7893 over
// 72.74/0.99821); an early dental handbook
// (http://www.museum.dent.uoa.gr/documents/flip-books/dentalmedicinema00gorgiala/files/basic-html/page27.html)
// counts 60 and 146 drops to 60 minims, 0.41. It goes by what is dropped, not by what it is dropped into.
func TestDropsOfAnotherLiquid(t *testing.T) {
	drops := func(stock string) *Result {
		return recipe{target: "0.1 g/L", more: stock, steps: fromStock + `{ take = "20 drops", with = "dropper" }, ` + toMark}.run(t)
	}
	water := drops(stockOf("10 g/L"))
	near.Relative(t, "20 drops of water of 0.05 mL", 0.1, water.Intended, 1e-12)
	near.Absolute(t, "of ethanol", 0.41, drops(stockOf("10 g/L", inEthanol)).Intended/water.Intended, 0.03)

	oil := drops(stockOf("10 g/L", `solvent = "oil"`))
	near.Relative(t, "of something unknown", 1, oil.Intended/water.Intended, 1e-12)
	noted(t, note.Texts(oil.Notes.Warnings), "how large a drop of stock is", "drop-of")
}

// The meniscus of ethanol stands higher: with it a 10 mL cylinder holds 0.041 to
// 0.077 mL less (Young-Laplace, computed from the bores that ISO 4788 leaves open; none has been measured). Each
// route of the demo moves by what its vessels hold less and its pipettes that
// run to the tip give less; a difference of two readings does not move.
func TestHowFarTheMeniscusMovesTheDemo(t *testing.T) {
	skipIfSlow(t)
	counted := load(t, demoPrep)
	ignored := load(t, demoPrep)
	ignored.Bench.MeniscusIgnored = true
	counted.Bench.MeniscusIgnored = false
	with, without := compareAll(t, counted), compareAll(t, ignored)
	less := func(name string, mark float64) float64 {
		m := counted.Kit.Measure(name)
		if m.Bore == 0 { // noted as not counted
			return 1
		}
		return 1 + equipment.MeniscusCorrection(m.Bore, counted.Solvent.Tension, counted.Solvent.Density.Value)/mark
	}
	near.Absolute(t, "10 mL cylinder / mL", -(0.041+0.077)/2, 10*(less("10 mL cylinder", 10)-1), 0.002)
	for route, want := range map[string]float64{
		"0.001 g scale, direct": 1 / less("25 mL cylinder", 15),
		"0.25 g, one dilution":  less("2 mL pipette", 1.5) / less("25 mL flask", 25) / less("25 mL flask", 25),
		"two dilutions":         less("2 mL pipette", 2) / less("25 mL flask", 25) / less("25 mL cylinder", 25) / less("25 mL cylinder", 20),
		"diluted by weighing":   1,
	} {
		a, b := named(t, with, route), named(t, without, route)
		t.Logf("%s: %+.2f %%", route, 100*(a.Analytic.Value/b.Analytic.Value-1))
		near.Relative(t, route+", intended", a.Intended, b.Intended, 1e-12)
		near.Relative(t, route, want, a.Analytic.Value/b.Analytic.Value, 2e-4) // drops clinging stand beside it
	}
	assert.NotEmpty(t, withWord(note.Texts(without.Notes.NotCounted), "height of the meniscus of ethanol"))
	assert.NotEmpty(t, withWord(note.Texts(with.Notes.Assumed), "meniscus of ethanol"))

	text := `bench = { meniscus = "ignored" }`
	assert.True(t, parse(t, exactKit, strings.Replace(recipe{steps: weighTen + toMark}.text(), "[solute]", text+"\n[solute]", 1)).Bench.MeniscusIgnored)
}

// Lye shrinks as it is diluted, and as a stronger one is added to it, by the densities of a handbook (CRC):
// 10 mL of 50 % w/w (1.5253 g/mL) and 90 mL of water (0.9982 g/mL) are 105.09 g of 7.257 % w/w, at 1.0787
// g/mL (between 1.0538 at 5 % and 1.1089 at 10 %) 97.43 mL; 20 mL of 10 % w/w (1.1089 g/mL) and 5 mL of 50 % are
// 29.80 g of 20.24 %, at 1.2218 g/mL 24.39 mL. It is a shift with an uncertainty of its own, and not intended.
func TestLyeShrinks(t *testing.T) {
	x := recipe{head: closed, target: "8 % w/v", solute: "name = \"sodium hydroxide\"", steps: `{ start = "strong" }, { take = "10 mL", with = "cylinder" }, ` + add("90 mL", ""),
		more: "[[stock]]\nname = \"strong\"\nstrength = \"50 % w/w\"\ndensity = \"1.5253 g/mL\"\n[[stock]]\nname = \"weak\"\nstrength = \"10 % w/w\"\ndensity = \"1.1089 g/mL\"\n"}
	r := x.run(t)
	near.Relative(t, "diluted", 100*7.6265/97.43, r.Analytic.Value, 1.5e-3)
	near.Relative(t, "intended", 7.6265, r.Intended, 1e-9)
	assert.Greater(t, r.Analytic.StandardUncertainty, 0.0, "within what the table leaves")
	assert.Less(t, r.Analytic.StandardUncertainty, 0.003*r.Analytic.Value)
	x.target, x.steps = "25 % w/v", `{ start = "weak" }, { take = "20 mL", with = "cylinder" }, { strengthen = "5 mL", of = "strong", with = "cylinder" }, `
	near.Relative(t, "strengthened", 100*(2.2178+3.8133)/24.39, x.run(t).Analytic.Value, 1.5e-3)
	x.target, x.steps = "8 % w/v", `{ start = "strong" }, { take = "10 mL", with = "cylinder" }, `+add("90 mL", `, contraction = "2 % of volume"`)
	near.Relative(t, "as stated", 7.6265/0.98, x.run(t).Analytic.Value, 1e-9)
}
