package bench

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/uncertainty/record"
)

// assertMistake checks where a mistake stands, what is marked there, what it says and
// what would be right.
func assertMistake(t *testing.T, m *benchfile.Mistake, place, mark, message, hint string) {
	t.Helper()
	assert.Equal(t, "record.toml:"+place, m.String(), m.Message)
	assert.Equal(t, mark, markedText(m), m.Message)
	assert.Equal(t, message, m.Message)
	assert.Equal(t, hint, m.Hint, m.Message)
}

// Entries that are wrong, alone or below others; BY and | are short.
func TestBadEntries(t *testing.T) {
	p := stocked(t)
	for _, c := range []struct{ entries, place, marked, message, hint string }{
		// the step
		{"1 = { step = 0, BY }", "3:14", "0", "step: must be a whole number of at least 1, found 0", ""},
		{"1 = { step = -1, BY }", "3:14", "-1", "step: must be a whole number of at least 1, found -1", ""},
		{"1 = { step = 1.5, BY }", "3:14", "1.5", "step: found the number 1.5, expected a whole number", ""},
		{`1 = { step = "3", BY }`, "3:14", `"3"`, `step: found the text "3", expected a whole number`, "write it without quotes, as in 3"},
		{"1 = { step = 99, BY }", "3:14", "99", "step: there is no step 99: two dilutions has 6, and the next after what is recorded is 7", "write the number of the step that is meant"},
		{`1 = { step = 8, take = "all" }`, "3:14", "8", "step: there is no step 8: two dilutions has 6, and the next after what is recorded is 7", "write the number of the step that is meant"},
		{"1 = { step = 7, BY }", "3:14", "7", "step: two dilutions has 6 steps, and nothing says what was done in a further one", `write the number of the step that is meant, or what was done in it, as in add = "2 mL", with = "5 mL pipette"`},
		{`1 = { weigh = "1.00 g" }`, "3:5", `{ weigh = "1.00 g" }`, "entry 1 needs `step`", ""},
		{`1 = { step = 3, weigh = "1.00 g" }`, "3:17", "weigh", `weigh: the step is take = "2 mL"`, `write it as in take = "2 mL", or the number of what is meant`},
		{`1 = { step = 3, take = "all" }`, "3:17", "take", `take: the step is take = "2 mL"`, `write it as in take = "2 mL", or the number of what is meant`},
		{`1 = { step = 3, take = "2 mL", make-up-to = "25 mL" }`, "3:32", "make-up-to", "make-up-to: a step has one verb; this one has take and make-up-to", "make two steps of it"},

		// the reading
		{`1 = { step = 3, take = "1 g" }`, "3:24", `"1 g"`, `take: "1 g" is a mass, not a volume`, "a volume is written in mL, µL, L or cm3"},
		{`1 = { step = 1, weigh = "1.005 g" }`, "3:25", `"1.005 g"`, "weigh: 1.005 g shows as 1.00 g on the 0.01 g scale", "write what was really read, and on which instrument"},
		{`1 = { step = 1, weigh = "0.00 g" }`, "3:25", `"0.00 g"`, `weigh: must be above 0, found "0.00 g"`, ""},
		{`1 = { step = 1, weigh = "250.00 g" }`, "3:25", `"250.00 g"`, "weigh: 250 g is more than the 0.01 g scale carries: 200 g", "write what was really read, and on which instrument"},
		{`1 = { step = 3, take = "2.05 mL" }`, "3:24", `"2.05 mL"`, "take: 2.05 mL is more than the 2 mL pipette holds: 2 mL", "write what was really read, and on which instrument"},
		{`1 = { step = 2, make-up-to = "20 mL" }`, "3:30", `"20 mL"`, "make-up-to: the 25 mL flask has one mark, at 25 mL, and cannot measure 20 mL", "write what was really read, and on which instrument"},
		{"1 = { step = 1, weigh = 1.02 }", "3:25", "1.02", "weigh: found the number 1.02, expected a mass in quotes", `write it in quotes with its unit, as in "1.02 g"`},
		{"1 = { step = 1, weigh = 1.02 g }", "3:25", "1.02 g", "found 1.02 g without quotes", `put quotes round it: "1.02 g"`},
		{`1 = { step = 1, weigh = "1,02 g" }`, "3:25", `"1,02 g"`, `weigh: "1,02 g" has a comma in its number`, "write 1.02 g: a decimal point, not a comma"},
		{"1 = { step = 1, weigh = 1,02 }", "3:25", "1,02", "found 1,02, a number with a decimal comma", "write 1.02, and a quantity in quotes with its unit"},
		{`1 = { step = 1, weigh = "1.02" }`, "3:25", `"1.02"`, `weigh: "1.02" has no unit`, "add the unit: g, mg, µg or kg"},

		// the instrument
		{`1 = { step = 3, with = "3 mL pipette" }`, "3:24", `"3 mL pipette"`, `with: there is no vessel or pipette in the kit called "3 mL pipette"`, `perhaps "2 mL pipette" is meant`},
		{`1 = { step = 3, with = "0.01 g scale" }`, "3:24", `"0.01 g scale"`, "with: the 0.01 g scale is not a vessel or pipette", "choose from 10 mL cylinder, 25 mL cylinder, 100 mL cylinder, 2 mL pipette, 5 mL pipette, wide pipette, dropper"},
		{`1 = { step = 1, on = "25 mL flask" }`, "3:22", `"25 mL flask"`, "on: the 25 mL flask is not a balance", "choose from 0.1 g scale, 0.01 g scale, 0.001 g scale"},
		{`1 = { step = 3, with = "25 mL flask" }`, "3:5", `{ step = 3, with = "25 mL flask" }`, "take: the 25 mL flask has one mark, at 25 mL, and cannot measure 2 mL", "write what was really read, and on which instrument"},
		{`1 = { step = 1, on = "0.1 mg balance" }`, "3:22", `"0.1 mg balance"`, "on: the 0.1 mg balance is a candidate and not on the bench", "choose from 0.1 g scale, 0.01 g scale, 0.001 g scale"},
		{`1 = { step = 4, with = "10 mL cylinder" }`, "3:17", "with", "unknown key `with` in entry 1", "the keys of entry 1 are by, note, spoilt, at, late, withdrawn, as-planned, corrects, temperature, within, step, make-up-to, piece, in, reading, open, mouth, state"},
		{"1 = { step = 3, piece = 2 }", "3:25", "2", "piece: there is no piece 2 of it on the bench", "the kit says count = 1, or nothing for one"},

		// the keys of an entry
		{`1 = { step = 1, wieght = "1.00 g" }`, "3:17", "wieght", "unknown key `wieght` in entry 1", "write `weigh`; the keys of entry 1 are by, note, spoilt, at, late, withdrawn, as-planned, corrects, temperature, within, step, weigh, piece, on, vessel, weighed-back, left-behind, tare"},
		{`1 = { step = 1, Weigh = "1.00 g" }`, "3:17", "Weigh", "`Weigh`: keys are in lower case", "write `weigh`"},
		{`1 = { step = 2, colour = "red" }`, "3:17", "colour", "unknown key `colour` in entry 1", "the keys of entry 1 are by, note, spoilt, at, late, withdrawn, as-planned, corrects, temperature, within, step, make-up-to, piece, in, reading, open, mouth, state"},
		{`1 = { step = 1, by = "AK", by = "LR" }`, "3:28", "by", "`by` stands twice: line 3 has it already", "keep one of the two"},
		{`1 = { step = 1, by = "Anna Katharina of the second bench by the door" }`, "3:22", `"Anna Katharina of the second bench by the door"`, "by: is longer than 40 characters", "initials or a name will do"},

		// the number of an entry
		{"1 = { step = 1, BY } | 1 = { step = 2, BY }", "4:1", "1", "`1` stands twice: line 3 has it already", "keep one of the two"},
		{"2 = { step = 1, BY } | 1 = { step = 2, BY }", "4:1", "1", "1: stands below entry 2", "number the entries in the order in which they were written"},
		{"first = { step = 1, BY }", "3:1", "first", "first: entries are numbered", "write 1, 2, 3 and so on before the ="},
		{"0 = { step = 1, BY }", "3:1", "0", "0: entries are numbered", "write 1, 2, 3 and so on before the ="},
		{`1 = "step 1"`, "3:5", `"step 1"`, `1: found the text "step 1", expected a table`, "write 1 = { … }"},

		// the time
		{`1 = { step = 1, at = "10:05" }`, "3:22", `"10:05"`, `at: "10:05" is not a time`, howToTime},
		{`1 = { step = 1, at = "2026-11-31 10:05" }`, "3:22", `"2026-11-31 10:05"`, `at: "2026-11-31 10:05" is not a time`, howToTime},
		{"1 = { step = 1, at = 2026-11-28 }", "3:22", "2026-11-28", "at: found the date or time 2026-11-28, expected a text in quotes", `put quotes round it: "2026-11-28"`},

		// the order
		{"1 = { step = 2, BY } | 2 = { step = 1, BY }", "4:14", "1", "step: step 1 stands below step 2", "entries follow the steps; for one that was forgotten write late = true"},
		{`1 = { step = 1, BY } | 2 = { step = 1, weigh = "1.01 g", BY }`, "4:14", "1", "step: step 1 is in entry 1 already", "to change what that says write corrects = 1 in place of step; when it was spoilt and done again, first an entry with corrects = 1 and spoilt = the reason"},
		{"1 = { step = 2, BY } | 2 = { step = 1, late = true, BY } | 3 = { step = 1, late = true, BY }", "5:14", "1", "step: step 1 is in entry 2 already", "to change what that says write corrects = 2 in place of step; when it was spoilt and done again, first an entry with corrects = 2 and spoilt = the reason"},

		// what was spoilt
		{`1 = { step = 3, spoilt = "spill" }`, "3:5", `{ step = 3, spoilt = "spill" }`, "entry 1 needs `by`", ""},
		{`1 = { step = 3, spoilt = "spill", by = "AK" }`, "3:5", `{ step = 3, spoilt = "spill", by = "AK" }`, "entry 1 needs `at`", ""},
		{`1 = { step = 3, spoilt = "spill", BY } | 2 = { step = 3, take = "1 mL" }`, "4:5", `{ step = 3, take = "1 mL" }`, "entry 2 needs `by`", ""},
		{`1 = { step = 3, spoilt = "spill", BY } | 2 = { step = 4, BY }`, "4:14", "4", "step: step 3 was spoilt and has not been done again", "the work can be taken up again from step 3 or 1"},
		{`1 = { step = 4, spoilt = "over the mark", BY } | 2 = { step = 4, BY }`, "4:14", "4", "step: step 4 was spoilt and has not been done again", "the work can be taken up again from step 3 or 1"},
		{`1 = { step = 5, take = "1 mL", BY } | 2 = { step = 6, BY } | 3 = { corrects = 1, spoilt = "spill", BY } | 4 = { step = 6, BY }`, "6:14", "6", "step: step 5 was spoilt and has not been done again", "the work can be taken up again from step 5 or 3 or 1"},
		{`1 = { step = 4, make-up-to = "11 mL", BY } | 2 = { step = 5, spoilt = "spill", BY } | 3 = { step = 5, take = "5 mL", spoilt = "spill", BY } | 4 = { step = 5, take = "4 mL", BY }`, "6:24", `"4 mL"`, "take: 11.5 mL cannot be taken from the 11 mL that are left", "look at what is recorded of this step, with what of it was spoilt, and of those before"},
		{`1 = { step = 4, make-up-to = "2 mL", spoilt = "too little", BY } | 2 = { step = 3, BY }`, "3:30", `"2 mL"`, "make-up-to: 2 mL are already more than up to the mark at 2 mL", "look at what is recorded of this step and those before"},
		{`1 = { step = 3, BY } | 2 = { step = 5, BY } | 3 = { corrects = 1, spoilt = "spill", BY } | 4 = { corrects = 2, spoilt = "spill", BY } | 5 = { step = 5, BY }`, "7:14", "5", "step: step 3 was spoilt and has not been done again", "the work can be taken up again from step 3 or 1"},

		// what is corrected
		{`1 = { step = 3, take = "1 mL" } | 2 = { corrects = 1, take = "0.9 mL" }`, "4:5", `{ corrects = 1, take = "0.9 mL" }`, "entry 2 needs `by`", ""},
		{`1 = { corrects = 7, take = "0.9 mL", BY }`, "3:18", "7", "corrects: there is no entry 7 above", "write the number of the entry that is wrong"},
		{`1 = { corrects = 2, take = "0.9 mL", BY } | 2 = { step = 3, BY }`, "3:18", "2", "corrects: there is no entry 2 above", "write the number of the entry that is wrong"},
		{`1 = { corrects = 1, take = "0.9 mL", BY }`, "3:18", "1", "corrects: there is no entry 1 above", "write the number of the entry that is wrong"},
		{`1 = { corrects = 0, take = "0.9 mL", BY }`, "3:18", "0", "corrects: must be a whole number of at least 1, found 0", ""},
		{`1 = { step = 3, take = "" } | 2 = { corrects = 1, take = "0.9 mL", BY }`, "4:18", "1", "corrects: entry 1 is blank", "write an entry with step = in place of corrects ="},
		{`1 = { step = 3, BY } | 2 = { corrects = 1, take = "0.9 mL", BY } | 3 = { corrects = 1, take = "0.8 mL", BY }`, "5:18", "1", "corrects: entry 1 is struck by entry 2 already", "write corrects = 2"},
		{`1 = { step = 3, BY } | 2 = { corrects = 1, withdrawn = true, BY } | 3 = { corrects = 2, take = "0.8 mL", BY }`, "5:18", "2", "corrects: entry 2 withdraws another and says nothing of its own", "write the step anew, as an entry of its own"},
		{"1 = { step = 3, BY } | 2 = { corrects = 1, step = 5, BY }", "4:21", "step", "step: a correction is about the step of the entry that it corrects", "withdraw that one with withdrawn = true, and write a new entry"},
		{`1 = { step = 3, BY } | 2 = { corrects = 1, make-up-to = "24 mL", BY }`, "4:21", "make-up-to", `make-up-to: the step is take = "2 mL"`, `write it as in take = "2 mL", or the number of what is meant`},
		{`1 = { step = 3, BY } | 2 = { corrects = 1, take = "2.5 mL", BY }`, "4:28", `"2.5 mL"`, "take: 2.5 mL is more than the 2 mL pipette holds: 2 mL", "write what was really read, and on which instrument"},
		{`1 = { step = 9, take = "1 mL", with = "2 mL pipette" } | 2 = { corrects = 1, take = "0.9 mL", BY }`, "3:14", "9", "step: there is no step 9: two dilutions has 6, and the next after what is recorded is 7", "write the number of the step that is meant"},
		{`1 = { step = 3, with = "3 mL pipette" } | 2 = { corrects = 1, weigh = "1.00 g", BY }`, "3:24", `"3 mL pipette"`, `with: there is no vessel or pipette in the kit called "3 mL pipette"`, `perhaps "2 mL pipette" is meant`},

		// what is withdrawn
		{"1 = { step = 3, withdrawn = true }", "3:17", "withdrawn", "withdrawn: does not say which entry", "write corrects = and its number"},
		{`1 = { temperature = "20 °C", withdrawn = true }`, "3:30", "withdrawn", "withdrawn: does not say which entry", "write corrects = and its number"},
		{`1 = { step = 3, BY } | 2 = { corrects = 1, withdrawn = true, take = "1 mL", BY }`, "4:39", "take", "unknown key `take` in entry 2", "the keys of entry 2 are by, note, spoilt, at, late, withdrawn, as-planned, corrects, step"},
		{`1 = { step = 3, BY } | 2 = { corrects = 1, withdrawn = true, spoilt = "spill", BY }`, "4:39", "spoilt", "spoilt: what is withdrawn was never so, and cannot be spoilt", "leave one of the two out"},
		{`1 = { step = 3, BY } | 2 = { corrects = 1, withdrawn = "true", BY }`, "4:33", `"true"`, `withdrawn: found the text "true", expected true or false without quotes`, "write it without quotes, as in true"},
		{`1 = { step = 7, take = "all" } | 2 = { corrects = 1, withdrawn = true, BY } | 3 = { step = 8, add = "1 mL", with = "2 mL pipette" }`, "5:14", "8", "step: there is no step 8: two dilutions has 6, and the next after what is recorded is 7", "write the number of the step that is meant"},

		// the temperature
		{`1 = { temperature = "80 °C" }`, "3:21", `"80 °C"`, "temperature: a bench at 80 °C is not likely", "state it in °C, between 0 and 50"},
		{`1 = { temperature = "20 mL" }`, "3:21", `"20 mL"`, `temperature: "20 mL" is a volume, not a temperature`, "a temperature is written in °C"},
		{"1 = { temperature = 20 }", "3:21", "20", "temperature: found the number 20, expected a temperature in quotes", `write it in quotes with its unit, as in "20 °C"`},
		{`1 = { temperature = "20" }`, "3:21", `"20"`, `temperature: "20" has no unit`, "add the unit: °C"},
		{`1 = { within = "1 °C" }`, "3:5", `{ within = "1 °C" }`, "entry 1 needs `temperature`", ""},
		{`1 = { temperature = "20 °C", within = "-1 °C" }`, "3:39", `"-1 °C"`, `within: must not be below 0, found "-1 °C"`, ""},
		{`1 = { temperature = "20 °C", step = 1 }`, "3:30", "step", "step: the temperature is of the bench, not of a step", "write an entry for each"},
		{`1 = { temperature = "20 °C", spoilt = "sun", BY }`, "3:30", "spoilt", "spoilt: a temperature cannot be spoilt", "to change it write an entry with corrects = and its number"},
		{`1 = { temperature = "20 °C" } | 2 = { corrects = 1, weigh = "1.00 g", BY }`, "4:21", "weigh", "unknown key `weigh` in entry 2", "the keys of entry 2 are by, note, spoilt, at, late, withdrawn, as-planned, corrects, step, temperature, within"},

		// what is left
		{`1 = { step = 5, take = "30 mL", with = "100 mL cylinder" }`, "3:24", `"30 mL"`, "take: 30 mL cannot be taken from the 25 mL that are left", "look at what is recorded of this step and those before"},
		{`1 = { step = 4, make-up-to = "2.4 mL" }`, "3:5", `{ step = 4, make-up-to = "2.4 mL" }`, "step 5 as planned: 2.5 mL cannot be taken from the 2.4 mL that are left", "record what was done in its place, or look at what is recorded of those before"},
		{`1 = { step = 5, take = "5 mL" } | 2 = { step = 6, make-up-to = "4 mL" }`, "4:30", `"4 mL"`, "make-up-to: 5 mL are already more than up to the mark at 4 mL", "look at what is recorded of this step and those before"},

		// after the plan
		{`1 = { step = 7, make-up-to = "25 mL", in = "25 mL cylinder" }`, "3:17", "make-up-to", "make-up-to: cannot come here, where there is a finished solution", "it can follow measured solute or an aliquot"},
		{`1 = { step = 7, make-up-to = "25 mL", in = "25 mL cylinder", spoilt = "cracked", BY } | 2 = { step = 5, BY }`, "3:17", "make-up-to", "make-up-to: cannot come here, where there is a finished solution", "it can follow measured solute or an aliquot"},
		{`1 = { step = 7, take = "1 mL" }`, "3:5", `{ step = 7, take = "1 mL" }`, "entry 1 needs `with`", ""},
		{`1 = { step = 7, taek = "all" }`, "3:17", "taek", "taek: there is no such step", "write take"},
		{`1 = { step = 7, take = "all" } | 2 = { step = 8, make-up-to = "15 mL", in = "25 mL cylinder" }`, "4:30", `"15 mL"`, "make-up-to: 20 mL are already more than up to the mark at 15 mL", "look at what is recorded of this step and those before"},
		{`1 = { step = 7, take = "all" } | 2 = { step = 8, strengthen = "1 mL", of = "tonic", with = "2 mL pipette" }`, "4:43", `"tonic"`, `of: there is no [[stock]] called "tonic"`, `choose from strong, weak; or name a solution made before as "step 2"`},
		{`1 = { step = 7, take = "all" } | 2 = { step = 8, strengthen = "1 mL", of = "step 3", with = "2 mL pipette" }`, "4:43", `"step 3"`, "of: step 3 has not made a solution", `name a stock, or a step above that made a solution, as in "step 2"`},
		{`1 = { step = 7, take = "all" } | 2 = { step = 8, strengthen = "1 mL", of = "step 9", with = "2 mL pipette" }`, "4:43", `"step 9"`, "of: step 9 has not made a solution", `name a stock, or a step above that made a solution, as in "step 2"`},
		{`1 = { step = 7, take = "all" } | 2 = { step = 8, strengthen = "1 mL", with = "2 mL pipette" }`, "4:5", `{ step = 8, strengthen = "1 mL", with = "2 mL pipette" }`, "entry 2 needs `of`", ""},
		{`1 = { step = 7, take = "all" } | 2 = { step = 8, add = "1 mL", with = "2 mL pipette", spoilt = "x", BY } | 3 = { step = 5, BY } | 4 = { step = 6 } | 5 = { step = 8, take = "all" }`, "7:14", "8", "step: there is no step 8: two dilutions has 6, and the next after what is recorded is 7", "write the number of the step that is meant"},
	} {
		assertMistake(t, mistakeIn(t, p, twoDilutions(c.entries)), c.place, c.marked, c.message, c.hint)
	}
}

// Entries that are wrong for their route.
func TestBadEntriesOfOtherRoutes(t *testing.T) {
	p := stocked(t)
	for _, c := range []struct{ route, entries, place, marked, message, hint string }{
		{"bottle", `1 = { step = 1, start = "tonic" }`, "3:25", `"tonic"`, `start: there is no [[stock]] called "tonic"`, "choose from strong, weak"},
		{"bottle", `1 = { step = 2, spoilt = "spill", BY } | 2 = { step = 2, spoilt = "spill", BY } | 3 = { step = 2, BY }`, "5:5", `{ step = 2, by = "AK", at = "2026-11-28 10:05" }`, "take: 30 mL cannot be taken from the 20 mL that are left", "look at what is recorded of this step, with what of it was spoilt, and of those before"},
		{"drops", `1 = { step = 1, packet = "bag" }`, "3:26", `"bag"`, `packet: there is no [[packet]] called "bag"`, "choose from sachet, big sachet"},
		{"drops", `1 = { step = 2, with = "25 mL cylinder" }`, "3:17", "with", "with: 20.00 g as planned cannot be read on the 25 mL cylinder", "write dissolve-in = and what was read"},
		{"drops", `1 = { step = 3, with = "2 mL pipette" }`, "3:17", "with", "with: 3 drops as planned cannot be read on the 2 mL pipette", "write take = and what was read"},
		{"drops", `1 = { step = 3, take = "0.2 mL" }`, "3:24", `"0.2 mL"`, `take: a dropper counts drops, found "0.2 mL"`, `write "3 drops"`},
		{"strengthened", `1 = { step = 4, of = "step 2" }`, "3:22", `"step 2"`, "of: step 2 has not made a solution", `name a stock, or a step above that made a solution, as in "step 2"`},
		{"strengthened", `1 = { step = 4, BY } | 2 = { step = 6, BY } | 3 = { corrects = 1, spoilt = "spill", BY } | 4 = { step = 4, BY }`, "6:14", "4", "step: step 4 was spoilt and has not been done again", "the work can be taken up again from step 2 or 1"},
		{"strengthened", `1 = { step = 5, take = "2 mL", with = "5 mL pipette" }`, "3:17", "take", `take: the step is take = "all"`, `write it as in take = "all", or the number of what is meant`},
		{"diluted by weighing", `1 = { step = 4, weigh-up-to = "0.90 g" }`, "3:31", `"0.90 g"`, "weigh-up-to: 0.9 g in all is not more than what is already in the vessel", "look at what is recorded of this step and those before"},
		{"diluted by weighing", `1 = { step = 4, weigh-up-to = "15.40 g", on = "0.1 g scale" }`, "3:47", `"0.1 g scale"`, "on: the vessel was zeroed on another balance", "weigh the aliquot and the total on one balance"},
		{"0.1 g scale, direct", "1 = { step = 2, BY }", "2:1", "[entries]", "step 1 as planned: 0.009 g shows as 0.0 g on the 0.1 g scale; the least it can show is 0.1 g", "record what was done in its place, or look at what is recorded of those before"},
		{"three dilution", "1 = { step = 1, BY }", "1:9", `"three dilution"`, `route: there is no route in dye.toml called "three dilution"`, `perhaps "three dilutions" is meant`},
	} {
		assertMistake(t, mistakeIn(t, p, recordOf(c.route, c.entries)), c.place, c.marked, c.message, c.hint)
	}
}

// Texts that are no record, or are cut off where more has been written.
func TestBadRecords(t *testing.T) {
	p := demoPrep(t)
	for _, c := range []struct{ text, place, marked, message, hint string }{
		{"batch = \"7\"\n[entries]\n1 = { step = 1 }\n", "1:1", "", "the file needs `route`", ""},
		{"route = \"two dilutions\"\n", "1:1", "", "the file needs `entries`", ""},
		{"route = \"\"\n[entries]\n", "1:1", "", "the file needs `route`", ""},
		{"route = \"two dilutions\"\n[entires]\n1 = { step = 1 }\n", "2:2", "entires", "unknown key `entires` in the file", "write `entries`; the keys of the file are route, entries, batch, note, planned"},
		{"route = \"two dilutions\"\n1 = { step = 1 }\n", "1:1", "", "the file needs `entries`", ""},
		{"route = \"two dilutions\"\nentries = 3\n", "2:11", "3", "entries: found the number 3, expected a table", "write entries = { … }"},
		{"route = \"two dilutions\"\n[[entries]]\nstep = 1\n", "2:1", "[[entries]]", "entries: found a list, expected one table", "write its header once, in single brackets"},
		{"", "1:1", "", "the file is empty: it holds nothing but space and comments", ""},
		{"# nothing\n", "1:1", "", "the file is empty: it holds nothing but space and comments", ""},
		{"target = \"1 g/L\"\n", "1:1", "t", "this is a prep, not a record", ""},
		{"[[pipette]]\nname = \"2 mL pipette\"\n", "1:1", "[", "this is a kit, not a record", ""},
		{"route = \"two dilutions\"\n[entries]\n1 = { step = 3, take = \"0.9\n", "3:24", `"0.9`, "the quote that opens here is not closed", "put a quote at the end of the text"},
		{"route = \"two dilutions\"\n[entries]\n1 = { step = 3, take = \"0.9\n2 = { step = 4, by = \"AK\" }\n", "3:24", `"0.9`, "the quote that opens here is not closed", "put a quote at the end of the text"},
		{"route = \"two dilutions\"\n[entries]\n1 = { step = 3, take = \"0.9 mL\"\n", "3:1", `1 = { step = 3, take = "0.9 mL"`, "the table that starts here is not closed", "put } at its end"},
	} {
		assertMistake(t, mistakeIn(t, p, c.text), c.place, c.marked, c.message, c.hint)
	}
}

// The prep and the kit given in place of the record.
func TestOtherFiles(t *testing.T) {
	p := demoPrep(t)
	for name, message := range map[string]string{"dye.toml": "this is a prep, not a record", "bench.toml": "this is a kit, not a record"} {
		m := mistakeIn(t, p, demoText(t, name))
		assert.Equal(t, message, m.Message)
		assert.Equal(t, benchfile.BeginRecord, m.Help)
	}
}

// A last line that was not written to its end is left out, and said to be.
func TestCutOff(t *testing.T) {
	p := demoPrep(t)
	for cut, reads := range map[string]int{
		`4 = { step = 5, take = "2.`:        3,
		`4 = { step = 5, take = "2.1 mL"`:   3,
		`4`:                                 3,
		`4 = { step = 5, take = "2.1 mL" }`: 4, // only its end is missing
		`# forgot`:                          3,
	} {
		r := parseRecord(t, p, twoDilutions("1 = { step = 1, BY } | 2 = { step = 3, BY } | 3 = { step = 4, BY }")+cut)
		assert.Len(t, r.Entries, reads, cut)
		if reads == 3 && cut[0] == '4' {
			assert.Equal(t, []record.Cut{{Line: 6, Text: cut}}, r.Cut)
		} else {
			assert.Empty(t, r.Cut, cut)
		}
	}
	r := parseRecord(t, p, twoDilutions("1 = { step = 3, take = \"0.9 # cut off, left out | 1 = { step = 4, make-up-to = \"9 mL\" }"))
	assert.Equal(t, []record.Cut{{Line: 3, Text: `1 = { step = 3, take = "0.9 # cut off, left out`}}, r.Cut)
	require.Len(t, r.Entries, 1)
	assert.Equal(t, 9.0, r.Made.Steps[3].Amount)
}
