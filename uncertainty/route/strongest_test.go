package route

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/words/note"
)

// A solution on the way that holds more than the solute itself could is to be minded: by the
// density of the solute, by its specific volume, or by the strongest of any (constructed).
func TestStrongerThanCanBe(t *testing.T) {
	dissolved := func(grams string) string {
		return `{ weigh = "` + grams + `", on = "balance" }, { make-up-to = "10 mL", in = "cylinder" }, { take = "1 mL", with = "pipette" }, ` + toMark
	}
	for _, c := range []struct{ solute, grams, want string }{
		{"", "80.00 g", "route: a solution of 8000 g/L cannot be: of urea it holds at most 3000 g/L (the strongest of any solute); look at the amounts"},
		{"density = \"2.17 g/mL\"", "21.80 g", "route: a solution of 2180 g/L cannot be: of urea it holds at most 2170 g/L (its density); look at the amounts"},
		{"specific-volume = \"0.5 mL/g\"", "20.10 g", "route: a solution of 2010 g/L cannot be: of urea it holds at most 2000 g/L (100 % w/w); look at the amounts"},
		{"density = \"2.17 g/mL\"\nsolubility = \"360 g/L\"", "21.80 g", "route: a solution of 2180 g/L cannot be: of urea it holds at most 2170 g/L (its density); look at the amounts"},
		{"density = \"2.17 g/mL\"", "21.60 g", ""},
		{"specific-volume = \"0.5 mL/g\"", "19.90 g", ""},
		{"specific-volume = \"-0.05 mL/g\"", "5.00 g", ""},
	} {
		r := recipe{target: "100 g/L", solute: "name = \"urea\"\nhazards = [\"none known\"]\n" + c.solute, steps: dissolved(c.grams)}.run(t)
		if c.want == "" {
			assert.Empty(t, withWord(note.Texts(r.Notes.Warnings), "cannot be"), c.grams)
		} else {
			assert.Contains(t, note.Texts(r.Notes.Warnings), c.want, c.grams)
		}
	}
	ethanol := recipe{target: "50 % v/v", solute: "name = \"ethanol\"\ndensity = \"0.7893 g/mL\"", steps: `{ measure = "50 mL", with = "cylinder" }, { dissolve-in = "50 mL", with = "cylinder" }, `}
	assert.Empty(t, withWord(note.Texts(ethanol.run(t).Notes.Warnings), "cannot be"))
}
