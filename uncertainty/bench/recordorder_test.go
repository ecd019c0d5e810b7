package bench

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty/near"
	"minim/uncertainty/record"
)

// letters of the origins of steps.
var letters = map[record.Origin]string{record.Recorded: "R", record.AsPlanned: "P", record.Missing: "M", record.ToCome: "T"}

func origins(r *record.Record) string {
	var b strings.Builder
	for _, o := range r.Steps {
		b.WriteString(letters[o])
	}
	return b.String()
}

func amounts(r *record.Record) (list []float64) {
	for i := range r.Made.Steps {
		list = append(list, r.Made.Steps[i].Amount)
	}
	return list
}

// What the entries of two dilutions come to: where each step is from, and what was read;
// begun are the steps after the plan that have led to no solution yet.
func TestOrderOfEntries(t *testing.T) {
	p := stocked(t)
	for _, c := range []struct {
		name, entries, origins string
		amounts                []float64
		begun                  int
	}{
		{"nothing", ``, "TTTTTT", []float64{1.5, 25, 2, 25, 2.5, 20}, 0},
		{"blank lines of a form", `1 = { temperature = "", by = "" } | 2 = { step = 1, weigh = "" } | 3 = { step = 2, BY }`, "MPTTTT", []float64{1.5, 25, 2, 25, 2.5, 20}, 0},
		{"a step beside a blank temperature", `1 = { temperature = "", BY } | 2 = { temperature = "", step = 3, take = "1.9 mL", BY }`, "MMRTTT", []float64{1.5, 25, 1.9, 25, 2.5, 20}, 0},
		{"a blank line below one that is filled in", `3 = { step = 2, BY } | 4 = { step = 1, weigh = "", by = "", at = " " }`, "MPTTTT", []float64{1.5, 25, 2, 25, 2.5, 20}, 0},
		{"readings", `1 = { step = 1, weigh = "1.52 g" } | 2 = { step = 3, BY } | 3 = { step = 4, make-up-to = "24.9 mL" }`, "RMPRTT", []float64{1.52, 25, 2, 24.9, 2.5, 20}, 0},
		{"an instrument alone is no reading", `1 = { step = 3, with = "5 mL pipette" }`, "MMPTTT", []float64{1.5, 25, 2, 25, 2.5, 20}, 0},
		{"late", `1 = { step = 3, take = "1.9 mL" } | 2 = { step = 1, weigh = "1.52 g", late = true }`, "RMRTTT", []float64{1.52, 25, 1.9, 25, 2.5, 20}, 0},
		{"late, but in order", `1 = { step = 1, weigh = "1.52 g" } | 2 = { step = 3, take = "1.9 mL", late = true }`, "RMRTTT", []float64{1.52, 25, 1.9, 25, 2.5, 20}, 0},

		{"corrected", `1 = { step = 3, take = "1.9 mL", BY } | 2 = { step = 4, BY } | 3 = { corrects = 1, take = "1.8 mL", BY }`, "MMRPTT", []float64{1.5, 25, 1.8, 25, 2.5, 20}, 0},
		{"a correction gives the first reading", `1 = { step = 3, BY } | 2 = { corrects = 1, take = "1.8 mL", BY }`, "MMRTTT", []float64{1.5, 25, 1.8, 25, 2.5, 20}, 0},
		{"the correction is corrected", `1 = { step = 3, take = "1.9 mL", BY } | 2 = { corrects = 1, take = "1.8 mL", BY } | 3 = { corrects = 2, with = "5 mL pipette", BY }`, "MMRTTT", []float64{1.5, 25, 1.8, 25, 2.5, 20}, 0},
		{"withdrawn", `1 = { step = 3, take = "1.9 mL", BY } | 2 = { step = 4, BY } | 3 = { corrects = 1, withdrawn = true, BY }`, "MMMPTT", []float64{1.5, 25, 2, 25, 2.5, 20}, 0},
		{"withdrawn and written anew", `1 = { step = 3, take = "1.9 mL", BY } | 2 = { corrects = 1, withdrawn = true, BY } | 3 = { step = 3, take = "1.8 mL" }`, "MMRTTT", []float64{1.5, 25, 1.8, 25, 2.5, 20}, 0},
		{"a corrected entry is withdrawn as a whole", `1 = { step = 3, take = "1.9 mL", BY } | 2 = { corrects = 1, take = "1.8 mL", BY } | 3 = { corrects = 2, withdrawn = true, BY }`, "TTTTTT", []float64{1.5, 25, 2, 25, 2.5, 20}, 0},

		{"spoilt", `1 = { step = 2, BY } | 2 = { step = 3, take = "1.9 mL", spoilt = "spill", BY }`, "MPTTTT", []float64{1.5, 25, 2, 25, 2.5, 20}, 0},
		{"spoilt and done again", `1 = { step = 2, BY } | 2 = { step = 3, take = "1.9 mL", spoilt = "spill", BY } | 3 = { step = 3, take = "1.8 mL", BY }`, "MPRTTT", []float64{1.5, 25, 1.8, 25, 2.5, 20}, 0},
		{"spoilt twice", `1 = { step = 3, spoilt = "spill", BY } | 2 = { step = 3, spoilt = "spill", BY } | 3 = { step = 3, take = "1.8 mL", BY }`, "MMRTTT", []float64{1.5, 25, 1.8, 25, 2.5, 20}, 0},
		{"what was spoilt is corrected", `1 = { step = 3, spoilt = "spill", BY } | 2 = { step = 3, take = "1.8 mL", BY } | 3 = { corrects = 1, take = "1.7 mL", BY }`, "MMRTTT", []float64{1.5, 25, 1.8, 25, 2.5, 20}, 0},
		{"that it was spoilt is withdrawn", `1 = { step = 3, spoilt = "spill", BY } | 2 = { step = 3, take = "1.8 mL", BY } | 3 = { corrects = 1, withdrawn = true, BY }`, "MMRTTT", []float64{1.5, 25, 1.8, 25, 2.5, 20}, 0},
		{"a solution that was spoilt is begun with its part", `1 = { step = 3, take = "1.9 mL", BY } | 2 = { step = 4, spoilt = "over", BY }`, "MMTTTT", []float64{1.5, 25, 2, 25, 2.5, 20}, 0},
		{"and done again", `1 = { step = 3, take = "1.9 mL", BY } | 2 = { step = 4, spoilt = "over", BY } | 3 = { step = 3, BY } | 4 = { step = 4, BY }`, "MMPPTT", []float64{1.5, 25, 2, 25, 2.5, 20}, 0},
		{"or with the weighing", `1 = { step = 1, weigh = "1.52 g", BY } | 2 = { step = 4, make-up-to = "24 mL", spoilt = "over", BY } | 3 = { step = 1, weigh = "1.51 g", BY }`, "RTTTTT", []float64{1.51, 25, 2, 25, 2.5, 20}, 0},
		{"noticed later", `1 = { step = 3, take = "1.9 mL", BY } | 2 = { step = 4, BY } | 3 = { step = 5, take = "2.1 mL", BY } | 4 = { corrects = 1, spoilt = "spill", BY }`, "MMTTTT", []float64{1.5, 25, 2, 25, 2.5, 20}, 0},
		{"noticed later, and done again", `1 = { step = 3, take = "1.9 mL", BY } | 2 = { step = 5, take = "2.1 mL", BY } | 3 = { corrects = 1, spoilt = "spill", BY } | 4 = { step = 3, BY }`, "MMPTTT", []float64{1.5, 25, 2, 25, 2.5, 20}, 0},
		{"noticed later in a correction of a correction", `1 = { step = 3, BY } | 2 = { corrects = 1, take = "1.9 mL", BY } | 3 = { step = 4, BY } | 4 = { corrects = 2, spoilt = "spill", BY } | 5 = { step = 3, take = "1.8 mL", BY }`, "MMRTTT", []float64{1.5, 25, 1.8, 25, 2.5, 20}, 0},
		{"of what had been thrown away already", `1 = { step = 3, BY } | 2 = { step = 4, spoilt = "over", BY } | 3 = { step = 3, take = "1.8 mL", BY } | 4 = { corrects = 1, spoilt = "spill", BY } | 5 = { step = 4, BY }`, "MMRPTT", []float64{1.5, 25, 1.8, 25, 2.5, 20}, 0},
		{"a step that is forgotten while another is spoilt", `1 = { step = 6, spoilt = "over", BY } | 2 = { step = 3, take = "1.9 mL", late = true, BY }`, "MMRMTT", []float64{1.5, 25, 1.9, 25, 2.5, 20}, 0},

		{"further steps", `1 = { step = 6, BY } | 2 = { step = 7, take = "all" } | 3 = { step = 8, add = "2 mL", with = "5 mL pipette" }`, "MMMMMPRR", []float64{1.5, 25, 2, 25, 2.5, 20, 0, 2}, 0},
		{"further steps below nothing", `1 = { step = 7, take = "all" } | 2 = { step = 8, add = "2 mL", with = "5 mL pipette" }`, "MMMMMMRR", []float64{1.5, 25, 2, 25, 2.5, 20, 0, 2}, 0},
		{"one that is begun", `1 = { step = 6, BY } | 2 = { step = 7, take = "all" }`, "MMMMMP", []float64{1.5, 25, 2, 25, 2.5, 20}, 1},
		{"two that are begun, rinsed", `1 = { step = 6, BY } | 2 = { step = 7, take = "3 mL", with = "5 mL pipette" } | 3 = { step = 8, take = "2 mL", with = "5 mL pipette", rinsed = true }`, "MMMMMP", []float64{1.5, 25, 2, 25, 2.5, 20}, 2},
		{"one that is corrected", `1 = { step = 7, take = "all" } | 2 = { step = 8, strengthen = "1 mL", of = "step 2", with = "2 mL pipette" } | 3 = { corrects = 2, strengthen = "0.5 mL", BY }`, "MMMMMMRR", []float64{1.5, 25, 2, 25, 2.5, 20, 0, 0.5}, 0},
		{"one that is withdrawn", `1 = { step = 7, take = "all" } | 2 = { step = 8, add = "1 mL", with = "2 mL pipette" } | 3 = { corrects = 2, withdrawn = true, BY }`, "MMMMMM", []float64{1.5, 25, 2, 25, 2.5, 20}, 1},
		{"one that is spoilt", `1 = { step = 7, take = "all" } | 2 = { step = 8, add = "1 mL", with = "2 mL pipette", spoilt = "dripped", BY } | 3 = { step = 8, add = "2 mL", with = "5 mL pipette", BY }`, "MMMMMMRR", []float64{1.5, 25, 2, 25, 2.5, 20, 0, 2}, 0},
		{"one that spoils the batch", `1 = { step = 6, BY } | 2 = { step = 7, take = "all" } | 3 = { step = 8, make-up-to = "25 mL", in = "25 mL cylinder", spoilt = "over", BY } | 4 = { step = 5, take = "2.4 mL", BY }`, "MMMMRT", []float64{1.5, 25, 2, 25, 2.4, 20}, 0},
	} {
		r := parseRecord(t, p, twoDilutions(c.entries))
		assert.Equal(t, c.origins, origins(r), c.name)
		assert.Equal(t, c.amounts, amounts(r), c.name)
		assert.Equal(t, c.begun, r.Begun, c.name)
		assert.Equal(t, !strings.Contains(c.origins, "T"), r.Finished(), c.name)
	}
}

// What an entry does not say is as planned, or as in the entry that it corrects; what it
// says is not.
func TestWhatIsSaid(t *testing.T) {
	p := stocked(t)
	step := func(route, entries string, number int) string {
		s := &parseRecord(t, p, recordOf(route, entries)).Made.Steps[number-1]
		return strings.Join(Written(s), ", ")
	}
	for _, c := range []struct {
		route, entries string
		step           int
		made           string
	}{
		{"strengthened", `1 = { step = 1, start = "weak" }`, 1, `start = "weak"`},
		{"strengthened", `1 = { step = 1, BY }`, 1, `start = "strong"`},
		{"strengthened", `1 = { step = 4, BY }`, 4, `strengthen = "1 mL", of = "strong", with = "2 mL pipette"`},
		{"strengthened", `1 = { step = 4, strengthen = "1.2 mL", with = "5 mL pipette" }`, 4, `strengthen = "1.2 mL", of = "strong", with = "5 mL pipette"`},
		{"strengthened", `1 = { step = 4, of = "weak" }`, 4, `strengthen = "1 mL", of = "weak", with = "2 mL pipette"`},
		{"strengthened", `1 = { step = 4, of = "weak" } | 2 = { corrects = 1, strengthen = "0.9 mL", BY }`, 4, `strengthen = "0.9 mL", of = "weak", with = "2 mL pipette"`},
		{"strengthened", `1 = { step = 5, take = "all" }`, 5, `take = "all"`},
		{"drops", `1 = { step = 1, packet = "big sachet" }`, 1, `packet = "big sachet"`},
		{"drops", `1 = { step = 2, dissolve-in = "22 mL", with = "25 mL cylinder" }`, 2, `dissolve-in = "22 mL", with = "25 mL cylinder"`},
		{"drops", `1 = { step = 2, dissolve-in = "20.4 g", on = "0.1 g scale" }`, 2, `dissolve-in = "20.4 g", on = "0.1 g scale"`},
		{"drops", `1 = { step = 3, take = "0.2 mL", with = "2 mL pipette" }`, 3, `take = "0.2 mL", with = "2 mL pipette"`},
		{"two dilutions", `1 = { step = 1, tare = "separate" } | 2 = { corrects = 1, weigh = "1.02 g", BY }`, 1, `weigh = "1.02 g", on = "0.01 g scale", tare = "separate"`},
		{"two dilutions", `1 = { step = 3, rinsed = true } | 2 = { corrects = 1, take = "1.9 mL", BY }`, 3, `take = "1.9 mL", with = "2 mL pipette", rinsed = true`},
		{"two dilutions", `1 = { step = 3, rinsed = true } | 2 = { corrects = 1, with = "5 mL pipette", BY }`, 3, `take = "2 mL", with = "5 mL pipette"`}, // how another was used is not known
	} {
		assert.Equal(t, c.made, step(c.route, c.entries, c.step), c.entries)
	}
}

// The bench on the day is the range of all that was read and stands; in the prep it is
// 20 °C within 3 °C.
func TestTemperaturesOfTheDay(t *testing.T) {
	p := demoPrep(t)
	known := func(value float64) equipment.Stated { return equipment.Stated{Value: value, Known: true} }
	for _, c := range []struct {
		entries     string
		temperature float64
		within      equipment.Stated
	}{
		{``, 20, known(3)},
		{`1 = { temperature = "" }`, 20, known(3)},
		{`1 = { temperature = "22 °C", within = "1 °C" }`, 22, known(1)},
		{`1 = { temperature = "22 °C" }`, 22, equipment.Stated{}},
		{`1 = { temperature = "22 °C" } | 2 = { temperature = "25 °C" }`, 23.5, known(1.5)},
		{`1 = { temperature = "22 °C", within = "1 °C" } | 2 = { step = 1, BY } | 3 = { temperature = "25 °C", within = "0.5 °C" }`, 23.25, known(2.25)}, // 21 to 25.5
		{`1 = { temperature = "22 °C", within = "1 °C" } | 2 = { temperature = "22 °C", within = "0.5 °C" }`, 22, known(1)},
		{`1 = { temperature = "27 °C", within = "1 °C" } | 2 = { corrects = 1, temperature = "22 °C", BY }`, 22, known(1)},
		{`1 = { temperature = "22 °C" } | 2 = { corrects = 1, within = "2 °C", BY }`, 22, known(2)},
		{`1 = { temperature = "22 °C" } | 2 = { temperature = "30 °C" } | 3 = { corrects = 2, withdrawn = true, BY }`, 22, equipment.Stated{}},
		{`1 = { temperature = "30 °C" } | 2 = { corrects = 1, withdrawn = true, BY }`, 20, known(3)},
	} {
		r := parseRecord(t, p, twoDilutions(c.entries))
		assert.Equal(t, known(c.temperature), r.Prep.Bench.Temperature, c.entries)
		assert.Equal(t, c.within, r.Prep.Bench.Within, c.entries)
		assert.Equal(t, known(20), r.Plan.Bench.Temperature, "the plan stays")
	}
}

// What is thrown away, by hand: what is left over is all the liquid that was measured
// out less the 15 mL wanted. As planned that is 25 + 23 + 17.5 - 15 = 50.5 mL: the first
// solution, and what was added to 2 mL and to 2.5 mL.
func TestThrownAway(t *testing.T) {
	p := stocked(t)
	for _, c := range []struct {
		name, route, entries string
		lost                 []float64 // of each step, in the unit of its amount
		leftOver, solute     float64
	}{
		{"nothing", "two dilutions", ``, []float64{0, 0, 0, 0, 0, 0}, 50.5, 1.5},
		{"a weighing: solute", "two dilutions", `1 = { step = 1, weigh = "1.70 g", spoilt = "spilt", BY } | 2 = { step = 1, BY }`, []float64{1.7, 0, 0, 0, 0, 0}, 50.5, 3.2},
		{"parts, which are of the first solution", "two dilutions", `1 = { step = 3, take = "1.9 mL", spoilt = "spill", BY } | 2 = { step = 3, spoilt = "spill", BY } | 3 = { step = 3, BY }`,
			[]float64{0, 0, 3.9, 0, 0, 0}, 50.5, 1.5},
		{"as is one that is not done again yet", "two dilutions", `1 = { step = 3, take = "1.9 mL", spoilt = "spill", BY }`, []float64{0, 0, 1.9, 0, 0, 0}, 50.5, 1.5},
		{"as corrected later", "two dilutions", `1 = { step = 3, spoilt = "spill", BY } | 2 = { step = 3, BY } | 3 = { corrects = 1, take = "1.7 mL", BY }`, []float64{0, 0, 1.7, 0, 0, 0}, 50.5, 1.5},
		{"not what is withdrawn", "two dilutions", `1 = { step = 3, spoilt = "spill", BY } | 2 = { step = 3, BY } | 3 = { corrects = 1, withdrawn = true, BY }`, []float64{0, 0, 0, 0, 0, 0}, 50.5, 1.5},
		// 23 mL of solvent to each 2 mL
		{"a solution, from its part on", "two dilutions", `1 = { step = 4, spoilt = "over", BY } | 2 = { step = 3, BY }`, []float64{0, 0, 2, 23, 0, 0}, 50.5 + 23, 1.5},
		// all of the first solution, and the 23 mL
		{"from the weighing on", "two dilutions", `1 = { step = 1, weigh = "1.70 g", BY } | 2 = { step = 4, spoilt = "over", BY } | 3 = { step = 1, BY }`, []float64{1.7, 25, 0, 23, 0, 0}, 50.5 + 25 + 23, 3.2},
		// 23 mL, and 15 mL to 5 mL, twice; the 5 mL are of the solution that is thrown away
		// with them, and do not come out of the one that is made in its place
		{"whole batches, noticed later and at once", "two dilutions", `1 = { step = 3, BY } | 2 = { step = 5, take = "5 mL", BY } | 3 = { step = 6, BY } | 4 = { corrects = 1, spoilt = "spill", BY }
			5 = { step = 3, BY } | 6 = { step = 5, take = "5 mL", BY } | 7 = { step = 6, spoilt = "over", BY } | 8 = { step = 3, BY } | 9 = { step = 5, take = "5 mL" }`,
			[]float64{0, 0, 4, 46, 0, 30}, 25 + 3*(23+15) - 15, 1.5},
		{"a part, and then the solution that it is of", "two dilutions", `1 = { step = 5, take = "5 mL", spoilt = "spill", BY } | 2 = { step = 5, take = "5 mL", BY } | 3 = { corrects = 2, spoilt = "spill", BY }
			4 = { step = 3, BY } | 5 = { step = 5, take = "4 mL", BY }`, []float64{0, 0, 2, 23, 0, 0}, 25 + 2*23 + 16 - 15, 1.5},
		{"steps of which no entry says anything", "two dilutions", `1 = { step = 6, spoilt = "over", BY } | 2 = { step = 5, BY }`, []float64{0, 0, 0, 0, 2.5, 17.5}, 50.5 + 17.5, 1.5},
		// the batch filled up by 5 mL, and again by 3 mL
		{"what was added to all of a batch", "two dilutions", `1 = { step = 7, take = "all" } | 2 = { step = 8, make-up-to = "25 mL", in = "25 mL cylinder", spoilt = "over", BY } | 3 = { step = 5, BY } | 4 = { step = 6, BY }
			5 = { step = 7, take = "all" } | 6 = { step = 8, make-up-to = "23 mL", in = "25 mL cylinder" }`, []float64{0, 0, 0, 0, 2.5, 17.5, 0, 5}, 50.5 + 17.5 + 5 + 3, 1.5},
		{"solvent of a further step", "two dilutions", `1 = { step = 7, take = "all" } | 2 = { step = 8, add = "2 mL", with = "5 mL pipette", spoilt = "dripped", BY } | 3 = { step = 8, add = "1 mL", with = "2 mL pipette", BY }`,
			[]float64{0, 0, 0, 0, 0, 0, 0, 2}, 50.5 + 3, 1.5},
		// what was lost in another unit, or of another solution, is left out of the figures
		{"not grams where there were millilitres", "two dilutions", `1 = { step = 7, take = "all" } | 2 = { step = 8, add = "2 mL", with = "5 mL pipette", spoilt = "dripped", BY } | 3 = { step = 8, add-solute = "0.01 g", on = "0.01 g scale", BY }`,
			[]float64{0, 0, 0, 0, 0, 0, 0, 0}, 50.5 + 0.01*0.375, 1.51}, // 1 g of solute takes up 0.375 mL, between -0.15 and 0.9
		{"nor what came from elsewhere", "two dilutions", `1 = { step = 7, take = "all" } | 2 = { step = 8, strengthen = "1 mL", of = "weak", with = "2 mL pipette", spoilt = "dripped", BY }
			3 = { step = 8, strengthen = "1 mL", of = "step 2", with = "2 mL pipette", BY }`, []float64{0, 0, 0, 0, 0, 0, 0, 0}, 50.5, 1.5},
		// 1 + 20 + 1 mL of the stock and the solvent are made up to 25 mL; 10 mg are in 1 mL
		{"of a stock", "strengthened", `1 = { step = 3, add = "19 mL", spoilt = "spilt", BY } | 2 = { step = 3, BY } | 3 = { step = 4, spoilt = "spill", BY } | 4 = { step = 4, BY }`,
			[]float64{0, 0, 19, 1, 0, 0}, 25 + 19 + 1 - 15, 0.03},
		{"all from a stock on", "strengthened", `1 = { step = 6, spoilt = "over", BY } | 2 = { step = 2, BY }`, []float64{0, 1, 20, 1, 0, 3}, 2*25 - 15, 0.04},
		{"of a bottle, of which 20 mL are left", "bottle", `1 = { step = 2, take = "9 mL", spoilt = "spill", BY } | 2 = { step = 2, BY }`, []float64{0, 9, 0}, 25 + 9 - 15, 0.019},
		{"a packet", "drops", `1 = { step = 2, dissolve-in = "22 mL", with = "25 mL cylinder", spoilt = "spilt", BY } | 2 = { step = 1, BY } | 3 = { step = 2, dissolve-in = "21 mL", with = "25 mL cylinder" }`,
			[]float64{0.5, 22, 0, 0}, 22 + 21 + 0.5*0.375, 1}, // and 15 mL for the batch
		// what was poured and dropped in is of the solution that is thrown away; a liquid
		// solute, 1 mL of 1.1 g, is lost as solute, and counts as liquid where it was not
		{"all of a liquid solute", "liquid", `1 = { step = 6, spoilt = "over", BY } | 2 = { step = 1, BY }`, []float64{1, 20, 0, 0, 0.1, 10}, (20 + 10) + (1 + 20 + 0.1*0.375 + 10) - 15, 2 * 1.2},
	} {
		r := parseRecord(t, p, recordOf(c.route, c.entries))
		lost := make([]float64, len(r.Made.Steps))
		for i := range lost {
			lost[i] = r.Made.Steps[i].Lost
		}
		assert.InDeltaSlice(t, c.lost, lost, 1e-12, c.name)
		result, err := r.Prep.Assess(r.Made, 0.95)
		require.NoError(t, err)
		require.True(t, result.Possible, result.Reason)
		near.Relative(t, c.name+", left over", c.leftOver, result.LeftOverML, 1e-9)
		near.Relative(t, c.name+", solute", c.solute, result.SoluteGrams, 1e-9)
	}
}

// What was weighed and counted is lost in its own unit (constructed).
func TestThrownAwayByMassAndByDrops(t *testing.T) {
	p := stocked(t)
	for _, c := range []struct {
		route, entries string
		lost           []float64
	}{
		{"diluted by weighing", `1 = { step = 4, spoilt = "over", BY } | 2 = { step = 3, BY }`, []float64{0, 0, 1, 15.6 - 1}},
		{"diluted by weighing", `1 = { step = 4, weigh-up-to = "15.70 g", spoilt = "over", BY } | 2 = { step = 1, BY }`, []float64{0.6, 50, 0, 15.7 - 1}},
		{"drops", `1 = { step = 3, take = "4 drops", spoilt = "shaken", BY } | 2 = { step = 3, BY }`, []float64{0, 0, 4, 0}},
		{"drops", `1 = { step = 3, take = "4 drops", spoilt = "shaken", BY } | 2 = { step = 3, take = "0.2 mL", with = "2 mL pipette", BY }`, []float64{0, 0, 0, 0}},
		{"drops", `1 = { step = 5, take = "4 drops", with = "dropper" } | 2 = { step = 6, make-up-to = "20 mL", in = "25 mL cylinder", spoilt = "over", BY }
			3 = { step = 5, take = "2 drops", with = "dropper", BY } | 4 = { step = 6, make-up-to = "20 mL", in = "25 mL cylinder" }`, []float64{0, 0, 0, 0, 4, 20}},
	} {
		r := parseRecord(t, p, recordOf(c.route, c.entries))
		lost := make([]float64, len(r.Made.Steps))
		for i := range lost {
			lost[i] = r.Made.Steps[i].Lost
		}
		assert.InDeltaSlice(t, c.lost, lost, 1e-12, c.entries)
	}
}

// What is known of each entry (constructed).
func TestEntries(t *testing.T) {
	r := parseRecord(t, demoPrep(t), twoDilutions(`2 = { step = 3, spoilt = "spill", note = "the first", BY } | 3 = { step = 3, by = "LR", at = "2026-11-29" }
		# a comment
		7 = { step = 2, late = true } | 8 = { corrects = 7, note = "anew", by = "LR", at = "2026-11-30" } | 9 = { corrects = 2, take = "1.9 mL", by = "LR", at = "2026-11-30" }`))
	said := make([]string, len(r.Entries))
	for i := range said {
		e := &r.Entries[i]
		said[i] = strings.TrimSpace(fmt.Sprintln(e.Number, e.Line, e.Step, e.Corrects, e.StruckBy, e.Late, e.Read, e.Spoilt, "/", e.Note, "/", e.By, e.At))
	}
	assert.Equal(t, []string{
		"2 3 3 0 9 false false spill / the first / AK 2026-11-28 10:05",
		"3 4 3 0 0 false false  /  / LR 2026-11-29",
		"7 6 2 0 8 true false  /  /",
		"8 7 2 7 0 true false  / anew / LR 2026-11-30",
		"9 8 3 2 0 false true spill /  / LR 2026-11-30",
	}, said)
}
