package bench

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/quantity"
	"minim/report/words/verb"
	"minim/uncertainty/route"
)

// The words of an addition to the record of the demo, and the keys that they give.
func TestParseAddition(t *testing.T) {
	r := readerOf(t, demoPrep(t), demoText(t, "batch.toml"))
	planned := func(step int) string {
		return strings.Join(mainKeys(&r.Planned.Steps[step-1]), ", ") + ", as-planned = true"
	}
	for line, want := range map[string]string{
		`step 3: took 1.05 mL`:                                `step = 3, take = "1.05 mL"`,
		`  step 3 : took 1.05mL  `:                            `step = 3, take = "1.05mL"`,
		`step 3: 1.05 mL`:                                     `step = 3, take = "1.05 mL"`,
		`step 3: took 50 µL`:                                  `step = 3, take = "50 µL"`,
		`step 3: took 1 cm3`:                                  `step = 3, take = "1 cm3"`,
		`step 3: took 1,05 mL`:                                `step = 3, take = "1,05 mL"`, // refused where it is read
		`step 3: took 1 mL with the 3 mL pipette`:             `step = 3, take = "1 mL", with = "3 mL pipette"`,
		`step 3: took 1 mL with 3 mL pipette`:                 `step = 3, take = "1 mL", with = "3 mL pipette"`,
		`step 3: 1 mL with the 3 mL pipette`:                  `step = 3, take = "1 mL", with = "3 mL pipette"`,
		`step 1: weighed 1.02 g`:                              `step = 1, weigh = "1.02 g"`,
		`step 1: 1.02 g on the 0.01 g scale`:                  `step = 1, weigh = "1.02 g", on = "0.01 g scale"`,
		`step 4: made up to 25 mL in the 25 mL cylinder`:      `step = 4, make-up-to = "25 mL", in = "25 mL cylinder"`,
		`step 3: poured 1 mL from the 10 mL cylinder`:         `step = 3, pour = "1 mL", from = "10 mL cylinder"`, // and so is this
		`step 2: done`:                                        `step = 2, ` + planned(2),
		`step 2: done as planned`:                             `step = 2, ` + planned(2),
		`step 2, late: made up to 25 mL`:                      `step = 2, late = true, make-up-to = "25 mL"`,
		`step 2 late: done`:                                   `step = 2, late = true, ` + planned(2),
		`step 3: took 1 mL; note = level read twice`:          `step = 3, take = "1 mL", note = "level read twice"`,
		`step 3: took 1 mL; note = "x"; piece = 2`:            `step = 3, take = "1 mL", note = "x", piece = 2`,
		`step 3: took 1 mL; rinsed = true`:                    `step = 3, take = "1 mL", rinsed = true`,
		`step 3: took 1 mL; note = a "b" \c`:                  `step = 3, take = "1 mL", note = "a \"b\" \\c"`,
		`step 3: spoilt`:                                      `step = 3, ` + planned(3) + `, spoilt = "spoilt"`,
		`step 3: spoilt, a spill`:                             `step = 3, ` + planned(3) + `, spoilt = "a spill"`,
		`step 3: spoilt by a spill`:                           `step = 3, ` + planned(3) + `, spoilt = "a spill"`,
		`step 3: took 0.9 mL, spoilt: spill, seen late`:       `step = 3, take = "0.9 mL", spoilt = "spill, seen late"`,
		`step 3: done, spoilt; note = a spill`:                `step = 3, ` + planned(3) + `, spoilt = "spoilt", note = "a spill"`,
		`step 3: withdrawn`:                                   `step = 3, withdrawn = true`, // refused where it is read
		`entry 6: took 1.96 mL`:                               `corrects = 6, take = "1.96 mL"`,
		`entry 6: 1.96 mL`:                                    `corrects = 6, take = "1.96 mL"`,
		`entry 6: spoilt, a spill`:                            `corrects = 6, spoilt = "a spill"`,
		`entry 6: withdrawn; note = it was step 5`:            `corrects = 6, withdrawn = true, note = "it was step 5"`,
		`entry 99: took 1 mL`:                                 `corrects = 99, take = "1 mL"`,                      // it may be added with this one
		`entry 99999999999999999999: withdrawn`:               `corrects = 99999999999999999999, withdrawn = true`, // refused where it is read
		`entry 1: 24 °C within 2 °C`:                          `corrects = 1, temperature = "24 °C", within = "2 °C"`,
		`entry 6: done`:                                       `corrects = 6, ` + planned(3),
		`step 2: done; in = x; piece = 2`:                     `step = 2, make-up-to = "` + verb.AmountInFile(&r.Planned.Steps[1]) + `", as-planned = true, in = "x", piece = 2`,
		`step 7: done`:                                        `step = 7`, // refused where it is read
		`entry 1: withdrawn`:                                  `corrects = 1, withdrawn = true`,
		`bench: 23 °C`:                                        `temperature = "23 °C"`,
		`bench: 23 °C within 1 °C`:                            `temperature = "23 °C", within = "1 °C"`,
		`bench: 23 °C, within 1 °C; note = noon`:              `temperature = "23 °C", within = "1 °C", note = "noon"`,
		`step 7: took all`:                                    `step = 7, take = "all"`,
		`step 7: took all of it`:                              `step = 7, take = "all"`,
		`step 9: took all of step 6`:                          `step = 9, take = "all", of = "step 6"`,
		`step 7: weighed 1.00 g on the 0.01 g scale`:          `step = 7, weigh-aliquot = "1.00 g", on = "0.01 g scale"`,
		`step 8: added 2 mL of solvent with the pipette`:      `step = 8, add = "2 mL", with = "pipette"`,
		`step 8: added 0.10 g of solute on the scale`:         `step = 8, add-solute = "0.10 g", on = "scale"`,
		`step 8: added 10 mg on the scale`:                    `step = 8, add-solute = "10 mg", on = "scale"`,
		`step 8: strengthened by 1 mL of step 2 with it`:      `step = 8, strengthen = "1 mL", of = "step 2", with = "it"`,
		`step 8: strengthened by 3 drops of strong`:           `step = 8, strengthen = "3 drops", of = "strong"`,
		`step 8: strengthened by 1 mL of a with b on c`:       `step = 8, strengthen = "1 mL", of = "a", with = "b on c"`,
		`step 8: strengthened by 1 mL of a with the b`:        `step = 8, strengthen = "1 mL", of = "a", with = "b"`,
		`step 8: strengthened by 1 mL of a with b with the c`: `step = 8, strengthen = "1 mL", of = "a with b", with = "c"`,
	} {
		keys, err := parseAddition(line, r)
		require.NoError(t, err, line)
		assert.Equal(t, want, strings.Join(keys, ", "), line)
	}
}

// Words that cannot be understood.
func TestRefusedAdditions(t *testing.T) {
	const words = "write one of weighed out, weighed, weighed up to, made up to, took, poured, measured, dissolved in, strengthened by, added"
	const instrument = `write it as in "with the 2 mL pipette", by its name in the kit`
	const option = `write it as in "step 3: took 1 mL; note = read twice"`
	r := readerOf(t, demoPrep(t), demoText(t, "batch.toml"))
	for _, c := range []struct{ line, message, hint string }{
		{``, `"" does not say what was done in which step`, howToAdd},
		{`step 3`, `"step 3" does not say what was done in which step`, howToAdd},
		{`step 3: `, `"step 3: " does not say what was done in which step`, howToAdd},
		{`step 0: done`, `"step 0: done" does not say what was done in which step`, howToAdd},
		{`Step 3: done`, `"Step 3: done" does not say what was done in which step`, howToAdd},
		{`step 3 took 1 mL`, `"step 3 took 1 mL" does not say what was done in which step`, howToAdd},
		{`took 1 mL`, `"took 1 mL" does not say what was done in which step`, howToAdd},
		{`bench 23 °C`, `"bench 23 °C" does not say what was done in which step`, howToAdd},
		{"step 3: took 1 mL\n8 = { }", `"step 3: took 1 mL\n8 = { }" does not say what was done in which step`, howToAdd},
		{`step 1: weighed 1.02`, `"weighed 1.02" gives no reading with its unit`, howToAdd},
		{`step 1: weighed -1 g`, `"weighed -1 g" gives no reading with its unit`, howToAdd},
		{`step 3: not spoilt`, `"not" gives no reading with its unit`, howToAdd},
		{`step 1: weighd 1.02 g`, `"weighd" says nothing of what was done`, "write weighed"},
		{`step 3: Took 1 mL`, `"Took" says nothing of what was done`, "write took"},
		{`step 1: tipped in 1 g`, `"tipped in" says nothing of what was done`, words},
		{`entry 99: 1 mL`, `nothing says what was done with 1 mL`, words},
		{`step 7: 1.05 mL`, `nothing says what was done with 1.05 mL`, words},
		{`step 3: took 1 mL nicely`, `"nicely" does not name an instrument`, instrument},
		{`step 3: took 1 mL with`, `"with" does not name an instrument`, instrument},
		{`step 3: took 1 mL; colour`, `"colour" after the semicolon is not of the form KEY = VALUE`, option},
		{`step 3: took 1 mL; Note = x`, `"Note = x" after the semicolon is not of the form KEY = VALUE`, option},
		{`step 3: spoilt; a spill`, `"a spill" after the semicolon is not of the form KEY = VALUE`, option},
		{`step 3: took 1 mL;`, `"" after the semicolon is not of the form KEY = VALUE`, option},
	} {
		_, err := parseAddition(c.line, r)
		var e *quantity.Error
		require.True(t, errors.As(err, &e), c.line)
		assert.Equal(t, quantity.Error{Found: c.line, Message: c.message, Hint: c.hint}, *e)
	}
}

// saidAndRead is a step that is said to have been done, and read again, in a record with
// the entries above it.
func saidAndRead(t *testing.T, p *route.Prep, above string, number int, s route.Step) route.Step {
	t.Helper()
	a := Addition{By: "AK", At: "2026-11-28 10:05", Lines: []string{Said(number, &s)}}
	lines, err := a.entries(readerOf(t, p, above))
	require.NoError(t, err)
	r := parseRecord(t, p, above+lines)
	return r.Entries[len(r.Entries)-1].Done
}

// What Said says of a step is read as that step: as planned, with another amount, and on
// another instrument.
func TestSaidOfThePlan(t *testing.T) {
	p := stocked(t)
	other := map[string]string{"0.01 g scale": "0.001 g scale", "2 mL pipette": "5 mL pipette", "10 mL cylinder": "25 mL cylinder"}
	seen := make(map[route.Verb]bool)
	for _, planned := range p.Routes {
		if _, err := ParseRecord("record.toml", []byte(recordOf(planned.Name, "")), p); err != nil {
			continue // the bench cannot do it
		}
		for i := range planned.Steps {
			s := planned.Steps[i]
			seen[s.Verb] = true
			assert.Equal(t, s, saidAndRead(t, p, recordOf(planned.Name, ""), i+1, s))
			switch {
			case s.Verb == route.WeighUpTo || s.Verb == route.WeighAliquot: // on one balance both
				s.Amount *= 1.1
			case s.Balance != nil && other[s.Balance.Name] != "" && s.Amount < 20:
				s.Balance = p.Kit.Balance(other[s.Balance.Name])
			case s.Measure != nil && other[s.Measure.Name] != "":
				s.Measure = p.Kit.Measure(other[s.Measure.Name])
			default:
				continue
			}
			read := saidAndRead(t, p, recordOf(planned.Name, ""), i+1, s)
			assert.InDelta(t, s.Amount, read.Amount, 1e-12)
			s.Amount = read.Amount
			assert.Equal(t, s, read, "%s, step %d", planned.Name, i+1)
		}
	}
	assert.Len(t, seen, 14, "every verb")
}

// The same of steps after the plan.
func TestSaidOfFurtherSteps(t *testing.T) {
	p := stocked(t)
	pipette, cylinder, dropper, scale := p.Kit.Measure("5 mL pipette"), p.Kit.Measure("25 mL cylinder"), p.Kit.Measure("dropper"), p.Kit.Balance("0.01 g scale")
	all := `1 = { step = 7, take = "all" }`
	for _, c := range []struct {
		entries string
		number  int
		step    route.Step
	}{
		{"", 7, route.Step{Verb: route.TakeAll}},
		{"", 7, route.Step{Verb: route.Take, Amount: 2.5, Measure: pipette}},
		{"", 7, route.Step{Verb: route.Pour, Amount: 15, Measure: cylinder}},
		{"", 7, route.Step{Verb: route.WeighAliquot, Amount: 1.25, Balance: scale}},
		{`1 = { step = 7, weigh-aliquot = "1.25 g", on = "0.01 g scale" }`, 8, route.Step{Verb: route.WeighUpTo, Amount: 15.5, Balance: scale}},
		{all, 8, route.Step{Verb: route.MakeUpTo, Amount: 24, Measure: cylinder}},
		{all, 8, route.Step{Verb: route.Add, Amount: 0.5, Measure: pipette}},
		{all, 8, route.Step{Verb: route.Add, Amount: 1, Measure: dropper}},
		{all, 8, route.Step{Verb: route.Strengthen, Amount: 0.5, Measure: pipette, Stock: p.Stocks[0]}},
		{all, 8, route.Step{Verb: route.Strengthen, Amount: 3, Measure: dropper, From: 2}},
		{all, 8, route.Step{Verb: route.AddSolute, Amount: 0.02, Balance: scale}},
	} {
		assert.Equal(t, c.step, saidAndRead(t, p, twoDilutions(c.entries), c.number, c.step))
	}
}

// What Add writes into a file (constructed).
func TestAdd(t *testing.T) {
	p := demoPrep(t)
	const above = "route = \"two dilutions\"\n[entries]\n"
	planned := strings.Join(mainKeys(&p.Routes[5].Steps[0]), ", ") + ", as-planned = true"
	for _, c := range []struct {
		text, line, want string
	}{
		{above, "step 1: 1.02 g", "1 = { step = 1, weigh = \"1.02 g\", by = \"AK\", at = \"2026-11-28 10:05\" }\n"},
		{above + "7 = { step = 1, weigh = \"\" }\n", "bench: 22 °C", "8 = { temperature = \"22 °C\", by = \"AK\", at = \"2026-11-28 10:05\" }\n"},
		{above + "# the last line is not ended", "step 1: done", "\n1 = { step = 1, " + planned + ", by = \"AK\", at = \"2026-11-28 10:05\" }\n"},
		{above + "1 = { step = 1, we", "step 1: done", " # cut off, left out\n1 = { step = 1, " + planned + ", by = \"AK\", at = \"2026-11-28 10:05\" }\n"},
	} {
		path := recordFile(t, c.text)
		require.NoError(t, Add(t.Context(), path, p, Addition{By: "AK", At: "2026-11-28 10:05", Lines: []string{c.line}}))
		after, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, c.text+c.want, string(after))
		_, err = LoadRecord(t.Context(), path, p)
		assert.NoError(t, err)
	}
	path := recordFile(t, above)
	require.NoError(t, Add(t.Context(), path, p, Addition{By: `"AK"`, At: "2026-11-28", Lines: []string{"step 3: took 0.9 mL, spoilt", "step 3: done", "entry 2: took 0.8 mL"}}))
	r, err := LoadRecord(t.Context(), path, p)
	require.NoError(t, err)
	assert.Len(t, r.Entries, 3)
	assert.Equal(t, 0.8, r.Made.Steps[2].Amount)
	assert.Equal(t, `"AK"`, r.Entries[0].By)
}

// Add writes nothing when the record would not be right. The place is the new entry, or
// the file when that was not right before.
func TestAddRefuses(t *testing.T) {
	p := demoPrep(t)
	batch := demoText(t, "batch.toml")
	for _, c := range []struct {
		text, at                     string
		lines                        []string
		place, marked, message, hint string
	}{
		{batch, "2026-11-28 10:50", []string{"entry 4: 1.585 g"}, "the new entry", `"1.585 g"`, "weigh: 1.585 g shows as 1.59 g on the 0.01 g scale", "write what was really read, and on which instrument"},
		{batch, "2026-11-28 10:50", []string{"bench: 22 °C within 400 °C"}, "the new entry", `"400 °C"`, "within: a bench that varies by 400 °C is not likely", "state a half-width of at most 25 °C"},
		{batch, "2026-11-28 10:50", []string{"bench: 22 °C; as-planned = true"}, "the new entry", "as-planned", "as-planned: says how a step was done", "leave it out"},
		{batch, "2026-11-28 10:50", []string{"entry 99: took 1 mL"}, "the new entry", "99", "corrects: there is no entry 99 above", "write the number of the entry that is wrong"},
		{batch, "2026-11-28 10:50", []string{"step 3: withdrawn"}, "the new entry", "withdrawn", "withdrawn: does not say which entry", "write corrects = and its number"},
		{batch, "2026-11-28 10:50", []string{"bench: 22 °C", "step 7: took all", "step 7: took all"}, "the new entry", "7", "step: step 7 is in entry 12 already",
			"to change what that says write corrects = 12 in place of step; when it was spoilt and done again, first an entry with corrects = 12 and spoilt = the reason"},
		{strings.TrimSuffix(batch, "\n"), "2026-11-28 10:50", []string{"step 7: 1 mL; take = all"}, "", "", "", ""},
		{strings.TrimSuffix(batch, "\n"), "2026-11-28 10:50", []string{"step 6: done"}, "the new entry", "6", "step: step 6 is in entry 10 already",
			"to change what that says write corrects = 10 in place of step; when it was spoilt and done again, first an entry with corrects = 10 and spoilt = the reason"},
		{batch + "11 = { step = 7, tkae = \"all\" }\n", "2026-11-28 10:50", []string{"step 6: done"}, fmt.Sprintf(":%d:18", strings.Count(batch, "\n")+1), "tkae", "tkae: there is no such step", "write take"},
	} {
		path := recordFile(t, c.text)
		err := Add(t.Context(), path, p, Addition{By: "AK", At: c.at, Lines: c.lines})
		require.Error(t, err, c.message)
		after, readErr := os.ReadFile(path)
		require.NoError(t, readErr)
		assert.Equal(t, c.text, string(after))
		if c.message == "" {
			var e *quantity.Error
			assert.True(t, errors.As(err, &e), "%v", err)
			continue
		}
		m := asMistake(t, err)
		assert.Equal(t, c.place, strings.TrimPrefix(m.String(), path))
		assert.Equal(t, []string{c.marked, c.message, c.hint}, []string{markedText(m), m.Message, m.Hint})
	}
}

// readerOf reads a record that is right, and keeps what its reader knows.
func readerOf(t testing.TB, p *route.Prep, text string) *recordReader {
	t.Helper()
	r, err := readRecord("record.toml", []byte(text), p)
	require.NoError(t, err)
	return r
}

// What is strengthened takes more words than one, of which there is an example.
func TestStrengthenedHasAnExample(t *testing.T) {
	_, err := verbOf("line", "strengthened", "0.5 mL", "")
	var said *quantity.Error
	require.ErrorAs(t, err, &said)
	assert.Equal(t, `write strengthened by, as in "step 8: strengthened by 0.5 mL of step 4 with the 2 mL pipette"`, said.Hint)
}
