package words

import (
	"context"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
)

// All preps of these tests are invented.
const benchOfOrders = `
[[balance]]
name = "scale"
capacity = "200 g"
readability = "0.01 g"
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "10 mL"
class = "B"
[[cylinder]]
name = "cylinder"
capacity = "100 mL"
class = "B"
[[cylinder]]
name = "small cylinder"
capacity = "10 mL"
class = "B"
[[dropper]]
name = "dropper"
[[flask]]
name = "10 mL flask"
capacity = "10 mL"
class = "A"
[[flask]]
name = "25 mL flask"
capacity = "25 mL"
class = "A"
[[flask]]
name = "50 mL flask"
capacity = "50 mL"
class = "A"
[[flask]]
name = "100 mL flask"
capacity = "100 mL"
class = "A"
`

// sheetOf is the bench of a prep with one route, of a solute and a solvent with hazards.
func sheetOf(t *testing.T, solute, solvent, more, steps string) *sheetBench {
	t.Helper()
	kit, err := read.ParseKit("bench.toml", []byte(benchOfOrders))
	require.NoError(t, err)
	text := fmt.Sprintf(`target = "1 %% w/v"
volume = "5 mL"
solute = { name = "solute", density = "1.2 g/mL"%s }
solvent = { name = "water"%s }
packet = [ { name = "sachet", content = "0.5 g" } ]
stock = [ { name = "strong", strength = "37 %% w/v" }, { name = "weak", strength = "2 %% w/v" } ]
%s
route = [ { name = "one", steps = [ %s ] } ]
`, solute, solvent, more, steps)
	p, err := read.ParsePrep("prep.toml", []byte(text), kit)
	require.NoError(t, err, text)
	c, err := contest.Compare(context.Background(), p, "", uncertainty.Settings{Trials: 10000, Seed: 1, Coverage: 0.95})
	require.NoError(t, err)
	require.True(t, c.Results[0].Possible, "%s: %s", steps, c.Results[0].Reason)
	c.Verdict.Use = 0
	return newSheetBench(&Paper{Comparison: c})
}

var routesOfOrders = []string{
	`{ start = "strong" }, { take = "2 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
	`{ start = "strong" }, { take = "8 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
	`{ start = "strong" }, { pour = "9.4 mL", from = "small cylinder" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
	`{ weigh = "0.50 g", on = "scale" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
	`{ packet = "sachet" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
	`{ measure = "2 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
	`{ start = "strong" }, { take = "2 mL", with = "pipette" }, { add = "20 mL", with = "cylinder" }`,
	`{ start = "strong" }, { take = "5 mL", with = "pipette" }, { add = "5 mL", with = "pipette" }, { add = "20 drops", with = "dropper" }`,
	`{ weigh = "0.50 g", on = "scale", weighed-back = true }, { dissolve-in = "20 mL", with = "cylinder" }`,
	`{ measure = "2 mL", with = "pipette" }, { dissolve-in = "20.00 g", on = "scale" }`,
	`{ weigh = "0.50 g", on = "scale" }, { weigh-up-to = "20.00 g", on = "scale" }`,
	`{ weigh = "0.50 g", on = "scale", weighed-back = true }, { weigh-up-to = "20.00 g", on = "scale" }`,
	`{ weigh = "0.50 g", on = "scale" }, { packet = "sachet" }, { weigh-up-to = "20.00 g", on = "scale" }`,
	`{ measure = "2 mL", with = "pipette" }, { weigh-up-to = "20.00 g", on = "scale" }`,
	`{ start = "strong" }, { weigh-aliquot = "2.00 g", on = "scale" }, { weigh-up-to = "20.00 g", on = "scale" }`,
	`{ start = "weak" }, { take = "10 mL", with = "pipette" }, { strengthen = "2 mL", of = "strong", with = "pipette" }, { add = "5 mL", with = "pipette" }`,
	`{ start = "strong" }, { take = "2 mL", with = "pipette" }, { strengthen = "10 mL", of = "weak", with = "pipette" }`,
	`{ start = "weak" }, { take = "10 mL", with = "pipette" }, { add-solute = "0.20 g", on = "scale" }`,
	`{ weigh = "0.50 g", on = "scale" }, { make-up-to = "25 mL", in = "25 mL flask" }, { take = "all" }, { make-up-to = "100 mL", in = "100 mL flask" }`,
	`{ weigh = "0.50 g", on = "scale" }, { make-up-to = "25 mL", in = "25 mL flask" }, { take = "all" }, { add = "5 mL", with = "pipette" }`,
	`{ weigh = "0.50 g", on = "scale" }, { make-up-to = "25 mL", in = "25 mL flask" }, { take = "2 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`,
}

// hazardsOfOrders are words for the solute, the solvent and strengths, and what must then
// hold of what goes into the vessel.
var hazardsOfOrders = []struct {
	solute, solvent, more string
	into, gas, solidBath  bool
}{
	{solute: `, hazards = ["acid"]`, into: true, solidBath: true},
	{solute: `, hazards = ["Alkali"]`, into: true, solidBath: true},
	{solute: `, hazards = ["toxic", "corrosive"]`, into: true, solidBath: true},
	{into: true},
	{solute: `, hazards = ["gives off gas"]`, into: true, gas: true},
	{solute: `, hazards = ["acid", "gives off gas"]`, into: true, gas: true, solidBath: true},
	{solute: `, hazards = ["none known"]`, more: `hazard = [ { from = "0.01 % w/v", words = ["corrosive", "gives off gas"] } ]`, into: true, gas: true, solidBath: true},
	{solute: `, hazards = ["none known"]`},
	{solute: `, hazards = ["toxic", "flammable", "oxidiser", "sensitiser"]`},
	{solute: `, hazards = ["none known"]`, solvent: `, hazards = ["gives off gas"]`, gas: true},
}

var (
	// solventAfter is how solvent would come onto what is there already.
	solventAfter = regexp.MustCompile(`add [^;]* of water|(^|; )water to [0-9]+ mL`)
	closes       = regexp.MustCompile(`\b(close|closed|shake|turn|turned|invert|inverted|stopper)\b`)
	// brings is where a part goes in, and putsFirst where solvent does.
	brings    = regexp.MustCompile(`let [0-9.]+ |let it run|pour that|pour all|tip `)
	putsFirst = regexp.MustCompile(`(about|measures,|put) [0-9.]+ (mL|g|drops) of (water|weak)`)
)

// For every verb and hazard: what must go into the solvent does, what gives off gas is
// neither closed nor inverted, and what may be handled as usual is.
func TestSolventFirst(t *testing.T) {
	skipIfSlow(t)
	for _, h := range hazardsOfOrders {
		for _, steps := range routesOfOrders {
			b := sheetOf(t, h.solute, h.solvent, h.more, steps)
			for i := range b.route.Steps {
				o, text := b.order(i), b.do(i)
				name := fmt.Sprintf("%s%s%s: %s, step %d: %s", h.solute, h.solvent, h.more, steps, i+1, text)
				if b.route.Steps[i].Verb == route.Start {
					continue
				}
				require.Equal(t, h.into, o.IntoSolvent, name)
				require.Empty(t, o.Refused, name)
				if h.into {
					assert.NotRegexp(t, solventAfter, text, name)
					assertBroughtInto(t, b, o, i, text, name)
				} else {
					assert.NotContains(t, text, "first", name)
					assert.NotContains(t, text, "bath", name)
				}
				if h.gas {
					said := strings.ReplaceAll(text+strings.Join(b.care(i), "; "), "do not close or invert it", "")
					assert.NotRegexp(t, closes, said, name)
				}
				if i == o.Last {
					assert.Equal(t, h.gas, strings.Contains(text, "fume cupboard") && strings.Contains(text, "vented cap"), name)
				}
			}
			assert.Equal(t, h.gas, strings.Contains(strings.Join(b.lastRow(), " "), "vented"))
			assert.Equal(t, h.gas, b.caps() == "vented caps")
		}
	}
}

// assertBroughtInto asserts that where a part goes in, something weaker is there.
func assertBroughtInto(t *testing.T, b *sheetBench, o *route.Order, i int, text, name string) {
	t.Helper()
	at := brings.FindStringIndex(text)
	if at == nil || !isTurned(o) || i > o.First && !b.isWeighed(o) {
		return
	}
	first := putsFirst.FindStringIndex(text)
	if b.isWeighed(o) && i == o.Last && !strings.Contains(text, "tip ") {
		return
	}
	if assert.NotNil(t, first, name) {
		assert.Less(t, first[0], at[0], name)
	}
}

// Half of the mark goes first, or less, so that with the aliquot it stays below nine
// tenths; a beaker in a cold bath where that is less than twice the aliquot. Each row is
// worked out by hand from that rule, and rounded down to two digits.
func TestSolventThatGoesFirst(t *testing.T) {
	for _, row := range []struct {
		take, flask, want string
		beaker            bool
	}{
		{"0.5 mL", "10 mL", "5 mL", false}, {"2.5 mL", "10 mL", "5 mL", false}, {"2.6 mL", "10 mL", "5 mL", true}, {"4 mL", "10 mL", "4.9 mL", true},
		{"5 mL", "10 mL", "3.9 mL", true}, {"8 mL", "10 mL", "0.99 mL", true}, {"9 mL", "10 mL", "0.5 mL", true},
		{"2 mL", "25 mL", "12 mL", false}, {"6 mL", "25 mL", "12 mL", false}, {"6.3 mL", "25 mL", "12 mL", true}, {"10 mL", "25 mL", "12 mL", true},
		{"1 mL", "50 mL", "25 mL", false}, {"12 mL", "50 mL", "25 mL", false}, {"20 mL", "50 mL", "24 mL", true}, {"30 mL", "50 mL", "14 mL", true},
		{"10 mL", "100 mL", "50 mL", false}, {"25 mL", "100 mL", "50 mL", false}, {"26 mL", "100 mL", "50 mL", true}, {"50 mL", "100 mL", "39 mL", true},
	} {
		with := "cylinder"
		if strings.Contains(row.take, ".") {
			with = "pipette"
		}
		steps := fmt.Sprintf(`{ start = "strong" }, { take = %q, with = %q }, { make-up-to = %q, in = "%s flask" }`, row.take, with, row.flask, row.flask)
		b := sheetOf(t, `, hazards = ["acid"]`, "", "", steps)
		into := "the " + row.flask + " flask"
		if row.beaker {
			into = "a beaker in a cold bath"
		}
		assert.Contains(t, b.do(1), "about "+row.want+" of water into "+into+" first; ", steps)
		assert.Equal(t, row.beaker, strings.Contains(b.do(2), "pour it into the "+row.flask+" flask, rinse the beaker into it"), steps)
		assert.Contains(t, b.do(2), "at room temperature, ", steps)
	}
}

// A solid that is stated to be strong goes into a beaker whatever its size, one of which
// nothing is stated into the flask, both in portions.
func TestStrongSolids(t *testing.T) {
	for _, size := range []string{"10", "25", "50", "100"} {
		for _, start := range []string{`{ weigh = "0.50 g", on = "scale" }`, `{ packet = "sachet" }`} {
			steps := fmt.Sprintf(`%s, { make-up-to = "%s mL", in = "%s mL flask" }`, start, size, size)
			for hazards, into := range map[string]string{`, hazards = ["alkali"]`: "a beaker in a cold bath", "": "the " + size + " mL flask"} {
				b := sheetOf(t, hazards, "", "", steps)
				assert.Contains(t, b.do(0), " of water into "+into+" first; ", steps)
				assert.Contains(t, b.do(0), " in portions into the water, swirling, until no solid is left", steps)
				assert.Contains(t, b.do(0), "; let cool", steps)
				assert.Equal(t, hazards != "", strings.Contains(b.do(1), "rinse the beaker into it twice"), steps)
				assert.NotContains(t, strings.Join(b.care(1), "; "), "dissolve it in a part first", steps)
			}
		}
	}
}

// The strength does not depend on which goes first.
func TestOrderLeavesTheStrength(t *testing.T) {
	skipIfSlow(t)
	for _, steps := range routesOfOrders {
		want := sheetOf(t, `, hazards = ["none known"]`, "", "", steps).Results[0].Analytic
		for _, h := range hazardsOfOrders {
			got := sheetOf(t, h.solute, h.solvent, h.more, steps).Results[0].Analytic
			assert.Equal(t, want.Value, got.Value, steps)
			assert.Equal(t, want.StandardUncertainty, got.StandardUncertainty, steps)
		}
	}
}

// What cannot be turned round is refused, like what may not meet; of a batch that was made so
// it is said that it is not to be repeated.
func TestRefusedOrders(t *testing.T) {
	for steps, want := range map[string]string{
		`{ start = "strong" }, { weigh-aliquot = "5.00 g", on = "scale" }, { weigh-up-to = "14.00 g", on = "scale" }`:   "less than twice as much solvent on the balance",
		`{ start = "strong" }, { take = "2 mL", with = "pipette" }, { add = "8 mL", with = "pipette", state = "used" }`: "the pipette is not rinsed between step 2 and step 3",
		`{ weigh = "30.00 g", on = "scale" }, { make-up-to = "25 mL", in = "25 mL flask" }`:                             "leaves no room for solvent",
	} {
		b := sheetOf(t, `, hazards = ["none known"]`, "", "", steps)
		assert.NoError(t, b.prep().CheckOrder(b.route))
		assert.NotContains(t, strings.Join(note.Texts(b.Notes.Warnings), "; "), "solvent")

		b.Prep.Solute.Hazards = []string{"corrosive"}
		settings := uncertainty.Settings{Trials: 10000, Seed: 1, Coverage: 0.95}
		c, err := contest.Compare(context.Background(), b.Prep, "", settings)
		require.NoError(t, err)
		assert.Equal(t, -1, c.Verdict.Use, steps)
		assert.True(t, c.Results[0].Refused && c.Results[0].MayNotBeUsed() && !c.Results[0].Possible, steps)
		assert.Contains(t, c.Results[0].Reason.String(), want)
		assert.Equal(t, "STOP: not to be used", NotPossible(&c.Results[0]))
		_, err = contest.CompareTo(context.Background(), b.Prep, "one", settings)
		var cannot *route.CannotError
		require.ErrorAs(t, err, &cannot)
		assert.True(t, cannot.Forbidden)

		made := *b.route
		made.Made = len(made.Steps)
		c, err = route.Evaluate(context.Background(), b.Prep, []*route.Route{&made}, settings)
		require.NoError(t, err)
		require.Equal(t, 0, c.Verdict.Use, "what was made is not refused any more")
		assert.Contains(t, strings.Join(note.Texts(c.Notes.Warnings), "; "), "is not to be repeated as it stands: solvent must go first")
		b = newSheetBench(&Paper{Comparison: c})
		assert.Contains(t, strings.Join(Instructions(b.prep(), b.route), "; "), "do not do this as it stands, since solvent cannot go first: ")
		assert.Contains(t, b.method(), "It is not to be repeated as it stands")
	}
}

// A spoilt step is taken up where its vessel, with the solvent that went first, is begun.
func TestAgainFromWhereSolventGoesFirst(t *testing.T) {
	b := sheetOf(t, "", "", "", `{ start = "strong" }, { take = "1 mL", with = "pipette" }, { take = "2 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`)
	var again []int
	for i := range b.route.Steps {
		again = append(again, b.again(i))
	}
	assert.Equal(t, []int{1, 2, 2, 2}, again)
	assert.Contains(t, b.do(1), "about 12 mL of water")
	assert.NotContains(t, b.do(2), "about 12 mL of water")
}

// What the note says of the boat is what the sheet says.
func TestBoatOfNoteAndSheet(t *testing.T) {
	const rinsed, emptied, none = "rinsed", "emptied", "none"
	for steps, want := range map[string]string{
		`{ weigh = "0.50 g", on = "scale"%s }, { make-up-to = "25 mL", in = "25 mL flask" }`: rinsed,
		`{ weigh = "0.50 g", on = "scale"%s }, { dissolve-in = "20 mL", with = "cylinder" }`: emptied,
		`{ weigh = "0.50 g", on = "scale"%s }, { weigh-up-to = "20.00 g", on = "scale" }`:    none,
	} {
		for _, hazards := range []string{`, hazards = ["none known"]`, ``} {
			for _, option := range []string{"", ", weighed-back = true", `, left-behind = "0.01 g"`} {
				b := sheetOf(t, hazards, "", "", fmt.Sprintf(steps, option))
				said := strings.Join(note.Texts(b.Results[0].Notes.NotCounted), "; ")
				sheet := b.do(0) + "; " + b.do(1)
				rinses := strings.Contains(sheet, "rinse the boat") || strings.Contains(sheet, "with rinsing")
				boat := want
				if boat == none && (hazards == "" || option != "") {
					boat = rinsed
				}
				if option != "" {
					boat = emptied
				}
				assert.Equal(t, boat == rinsed, rinses, sheet)
				assert.Equal(t, boat != none, strings.Contains(sheet, "boat"), sheet)
				assert.Equal(t, option == "" && boat == rinsed, strings.Contains(said, "after it was rinsed into the vessel (taken as nothing)"), sheet)
				assert.Equal(t, option == "" && boat == emptied, strings.Contains(said, "which is not rinsed"), sheet)
				assert.Equal(t, strings.Contains(option, "back"), strings.Contains(sheet, "weigh the emptied boat"), sheet)
			}
		}
	}
}

// The assay is spoken of only where one is stated.
func TestAssayOnTheSheet(t *testing.T) {
	steps := `{ weigh = "0.50 g", on = "scale" }, { make-up-to = "25 mL", in = "25 mL flask" }`
	for assay, want := range map[string]bool{"": false, `, assay = "98 %"`: true} {
		b := sheetOf(t, assay, "", "", steps)
		assert.Equal(t, want, strings.Contains(strings.Join(b.care(0), "; "), "assay"))
	}
}

// The screen and the method to be quoted name what goes first as well.
func TestScreenPutsSolventFirst(t *testing.T) {
	b := sheetOf(t, `, hazards = ["acid"]`, "", "", routesOfOrders[0])
	assert.Equal(t, "take 2 mL with the pipette, into some of the water", Instructions(b.prep(), b.route)[1])
	assert.Contains(t, b.method(), "When it is repeated, water goes in first")
	b = sheetOf(t, `, hazards = ["none known"]`, "", "", routesOfOrders[0])
	assert.Equal(t, "take 2 mL with the pipette", Instructions(b.prep(), b.route)[1])
	assert.NotContains(t, b.method(), "first")
}

// What lies beside the steps goes by the words as well: how solvent is kept ready, how much
// solute there is to spare, dust, tissue and waste.
func TestHazardWordsBesideTheSteps(t *testing.T) {
	steps := routesOfOrders[3]
	for word, want := range map[string]string{
		"toxic": "a small beaker of water with a dropper", "gives off gas": "a small beaker of water with a dropper", "flammable": "a wash bottle of water",
	} {
		b := sheetOf(t, `, hazards = ["none known"]`, fmt.Sprintf(`, hazards = [%q]`, word), "", steps)
		assert.Contains(t, b.besides(), want, word)
	}
	b := sheetOf(t, `, hazards = ["toxic", "oxidiser"]`, "", "", steps)
	assert.Equal(t, ", and no more than is needed to weigh it", b.toSpare())
	assert.Contains(t, strings.Join(b.care(0), "; "), "raise no dust")
	assert.Contains(t, b.wasteHabits(), "soaked in water")
	b = sheetOf(t, `, hazards = ["none known"]`, "", "", steps)
	assert.Equal(t, ", and some to spare", b.toSpare())
	assert.NotContains(t, strings.Join(b.care(0), "; "), "dust")
	assert.Empty(t, b.wasteHabits()+strings.Join(b.orderHabits(), ""))
	assert.Empty(t, b.extras())
	b = sheetOf(t, `, hazards = ["alkali", "gives off gas"]`, "", "", steps)
	assert.Equal(t, []string{"a fume cupboard", "a beaker", "a cold bath"}, b.extras())
}
