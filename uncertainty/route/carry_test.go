package route

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/influence"
	"minim/report/words/note"
	"minim/uncertainty/near"
)

// twoStocks starts a route in which the pipette first takes a solution that is
// ten times stronger than the one it takes next.
func tenTimesStronger(state string) recipe {
	return recipe{
		target: "0.01 g/L", more: stockOf("100 g/L"),
		steps: fromStock + `{ take = "1 mL", with = "pipette" }, { make-up-to = "100 mL", in = "flask" }, ` +
			takeTen + `{ make-up-to = "100 mL", in = "flask", piece = 2 }, ` +
			`{ take = "1 mL", with = "pipette"` + state + ` }, { make-up-to = "100 mL", in = "flask" }, `,
	}
}

// A film of 0.01 mL of a solution ten times as strong adds 0.01·(10 - 1) to an
// aliquot of 1 mL: +9 %. Design of the measurement model; the film of 0.01 mL in a
// 1 mL pipette is common practice, no source.
func TestFilmOfAStrongerSolution(t *testing.T) {
	skipIfSlow(t)
	stock := stockOf("10 g/L") + "\n[[stock]]\nname = \"strong\"\nstrength = \"100 g/L\"\n"
	// One pipette takes the strong solution, is emptied, and takes one of a tenth.
	steps := func(state string) recipe {
		return recipe{target: "0.1 g/L", more: stock, steps: `{ start = "strong" }, { take = "1 mL", with = "pipette" }, { make-up-to = "10 mL", in = "cylinder" }, ` +
			`{ take = "1 mL", with = "pipette"` + state + ` }, ` + toMark}
	}
	used := steps(`, state = "used"`).run(t)
	near.Relative(t, "intended", 0.1, used.Intended, 1e-12)
	near.Relative(t, "shift", 1.09, used.Analytic.Value/used.Intended, 1e-12)
	assert.Equal(t, []string{"route, step 4: the pipette still holds what was in it before, which changes the solute by +9.0 %; rinse it with what it is to take"},
		withWord(note.Texts(used.Notes.Warnings), "holds"))
	shifts := used.Analytic.Shifts()
	require.NotEmpty(t, shifts)
	assert.Equal(t, "pipette, not rinsed", influence.Group(shifts[0].Group), "the cause, for the output")
	near.Relative(t, "its size", 0.09, shifts[0].Sum/used.Intended, 1e-12)

	for _, state := range []string{"", `, state = "conditioned"`, `, state = "dry"`} {
		clean := steps(state).run(t)
		near.Relative(t, "gone when "+state, 1, clean.Analytic.Value/clean.Intended, 1e-12)
		assert.Empty(t, withWord(note.Texts(clean.Notes.Warnings), "holds"), state)
	}
}

func withWord(notes []string, word string) (found []string) {
	for _, note := range notes {
		if strings.Contains(note, word) {
			found = append(found, note)
		}
	}
	return found
}

// The film of step 2, not that of the last solution made, is what the pipette
// still holds when it comes back in step 6: it took 100 g/L, and now takes 0.1.
func TestFilmIsOfWhatThePieceLastHeld(t *testing.T) {
	r := tenTimesStronger(`, state = "used"`).run(t)
	near.Relative(t, "shift", 1+0.01*(100/0.1-1), r.Analytic.Value/r.Intended, 1e-12)
	noted(t, note.Texts(r.Notes.Warnings), "step 6", "+999.0 %")
}

// A film of 0.01 mL of solvent dilutes an aliquot of 1 mL by 1 %.
func TestWetPipetteDilutes(t *testing.T) {
	r := recipe{target: "0.1 g/L", more: stockOf("10 g/L"), steps: fromStock + `{ take = "1 mL", with = "pipette", state = "wet" }, ` + toMark}.run(t)
	near.Relative(t, "shift", 0.99, r.Analytic.Value/r.Intended, 1e-12)
	noted(t, note.Texts(r.Notes.Warnings), "step 2", "pipette", "-1.0 %")

	// Of several aliquots in a row only this one is short.
	r = recipe{target: "0.2 g/L", more: stockOf("10 g/L"), steps: fromStock + `{ take = "1 mL", with = "pipette", state = "wet" }, { take = "1 mL", with = "pipette" }, ` + toMark}.run(t)
	near.Relative(t, "shift of two", 0.995, r.Analytic.Value/r.Intended, 1e-12)
}

// A wet pipette takes less of a liquid solute, one that held it gives the
// solvent some of it: 0.01 mL in 1 mL each, and after 1 mL of solute one of
// solvent brings 0.01 mL of it more.
func TestFilmOfALiquidSolute(t *testing.T) {
	x := recipe{target: "10 g/L", head: closed, solute: "name = \"syrup\"\ndensity = \"1 g/mL\"\nspecific-volume = \"1 mL/g\"\nhazards = [\"none known\"]",
		steps: `{ measure = "1 mL", with = "pipette", state = "wet" }, ` + toMark}
	r := x.run(t)
	near.Relative(t, "wet", 0.99, r.Analytic.Value/r.Intended, 1e-12)

	x.target, x.steps = "500 g/L", `{ measure = "1 mL", with = "pipette" }, { dissolve-in = "1 mL", with = "pipette", state = "used", contraction = "0 % of volume" }, `
	r = x.run(t)
	near.Relative(t, "used for the solute, then for the solvent", 1.01, r.Analytic.Value/r.Intended, 1e-12)

	// After the solvent it holds a film of solvent, which dilutes.
	x.target, x.steps = "5 g/L", x.steps+`{ take = "1 mL", with = "pipette", state = "used" }, `+toMark
	r = x.run(t)
	near.Relative(t, "and then for the solution", 1.01*0.99, r.Analytic.Value/r.Intended, 1e-12)
}

// A vessel that is wet with solvent does nothing to what is made up to its mark;
// one that still holds a film of a stronger solution adds to it: 0.5 mL of
// 5 g/L to 1 mL of 0.5 g/L. (What stays in a flask is the test's own figure.)
func TestVesselInUse(t *testing.T) {
	skipIfSlow(t)
	again := func(state string) *Result {
		return recipe{target: "0.005 g/L", more: stockOf("50 g/L"), steps: fromStock + takeTen + `{ make-up-to = "100 mL", in = "flask" }, ` +
			takeTen + `{ make-up-to = "100 mL", in = "cylinder" }, { take = "1 mL", with = "pipette" }, { make-up-to = "100 mL", in = "flask"` + state + ` }, `}.run(t)
	}
	for state, shift := range map[string]float64{"": 1, `, state = "wet"`: 1, `, state = "used"`: 6} {
		r := again(state)
		near.Relative(t, "flask"+state, shift, r.Analytic.Value/r.Intended, 1e-12)
	}
	assert.NotEmpty(t, withWord(note.Texts(again(`, state = "used"`).Notes.Warnings), "+500.0 %"))
}

// Rinsing a pipette that is adjusted to deliver into the flask adds the film that
// its calibration leaves out, about +1 % of 1 mL (0.01 mL, from memory); a rinse
// leaves 2 % of it. Blown out, all of it.
func TestRinsedAndBlownOut(t *testing.T) {
	skipIfSlow(t)
	for option, more := range map[string]float64{"": 0, ", rinsed = true": 0.0098, ", blown-out = true": 0.01} {
		r := recipe{target: "0.1 g/L", more: stockOf("10 g/L"), steps: fromStock + `{ take = "1 mL", with = "pipette"` + option + ` }, ` + toMark}.run(t)
		near.Relative(t, "intended"+option, 0.1, r.Intended, 1e-12)
		near.Relative(t, "expected"+option, 1+more, r.Analytic.Value/r.Intended, 1e-12)
	}
	// A flask adjusted to contain gives too little when it is not rinsed: it
	// keeps 0.5 mL of 100 mL.
	kit := strings.Replace(exactKit, `capacity = "100 mL"
tolerance = "0 mL"
reading = "none"
retained = "0.5 mL"`, `capacity = "50 mL"
tolerance = "0 mL"
reading = "none"
retained = "0.5 mL"`, 1)
	for option, less := range map[string]float64{"": 0.01, ", rinsed = true": 0.0002} {
		x := recipe{target: "5 g/L", more: stockOf("10 g/L"), steps: fromStock + `{ pour = "50 mL", from = "flask"` + option + ` }, { make-up-to = "100 mL", in = "cylinder" }, `}
		r := only(t, parse(t, kit, x.text()))
		near.Relative(t, "poured"+option, 1-less, r.Analytic.Value/r.Intended, 1e-12)
	}
}

// A pen line that was set with the cylinder that also measures the aliquot has
// part of its bias in common, as two marks of one piece have (closed form of the
// measurement model: correlation 1/2).
func TestLineOfAJarSharesTheBiasOfItsMeasure(t *testing.T) {
	kit := strings.Replace(exactKit, "division = \"1 mL\"\ntolerance = \"0 mL\"", "division = \"1 mL\"\ntolerance = \"1 mL\"", 1) +
		"[[jar]]\nname = \"jar\"\nline = \"50 mL\"\nset-with = \"cylinder\"\nreading = \"none\"\n"
	toTheLine := `{ make-up-to = "50 mL", in = "jar" }, `
	for name, steps := range map[string]string{
		"one mark":  fromStock + `{ take = "49 mL", with = "cylinder" }, ` + toTheLine,
		"two marks": fromStock + `{ take = "25 mL", with = "cylinder" }, { take = "24 mL", with = "cylinder" }, ` + toTheLine,
	} {
		r := only(t, parse(t, kit, recipe{target: "9.8 g/L", more: stockOf("10 g/L"), steps: steps}.text()))
		common := lineOf(t, r, "bias of the cylinder, common to its marks")
		assert.True(t, common.Uses > 1, name)
		// The common part has half the variance of ±1 mL, triangular, and
		// moves each volume taken and the line alike: n/49 - 1/50.
		n := float64(strings.Count(steps, "take"))
		near.Relative(t, name, 1/(6*2.0)*(n/49-1/50.0)*(n/49-1/50.0), common.Contribution*common.Contribution/(9.8*9.8), 1e-9)
	}
}
