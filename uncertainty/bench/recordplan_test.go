package bench

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/record"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// An invented bench and prep.
const (
	inkKit = `# invented
[[balance]]
name = "scale"
capacity = "200 g"
readability = "0.01 g"
linearity = "0.02 g"
[[balance]]
name = "old scale"
capacity = "500 g"
readability = "0.1 g"
price = "20 EUR"
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "2 mL"
class = "A"
standard = "ISO"
[[cylinder]]
name = "cylinder"
capacity = "50 mL"
class = "A"
standard = "ISO"
[[flask]]
name = "flask"
capacity = "50 mL"
class = "A"
standard = "ISO"
[[jar]]
name = "jar"
line = "100 mL"
set-with = "cylinder"
[[candidate]]
kind = "flask"
name = "wished for"
capacity = "10 mL"
class = "A"
`
	inkPrep = `# invented
title = "Ink"
kit = "bench.toml"
target = "0.040 % w/v"
volume = "40 mL"
tolerance = "6 % of target"
bench = { temperature = "21 °C", within = "2 °C" }
[solute]
name = "ink"
assay = { from = "97 %", to = "100 %" }
hazards = ["irritant"]
price = "1 EUR/g"
[solvent]
name = "water"
evaporation = "1 % of volume"
[[stock]]
name = "strong"
strength = "1 % w/v"
[[hazard]]
from = "1 % w/v"
words = ["toxic"]
[plan]
steps = 2
[[route]]
name = "two steps"
steps = [
  { weigh = "1.00 g", on = "scale" },
  { make-up-to = "50 mL", in = "flask" }, # mixed
  { take = "1 mL", with = "pipette" },
  { make-up-to = "50 mL", in = "cylinder" },
]
[[route]]
name = "another"
steps = [
  { start = "strong" },
  { take = "2 mL", with = "pipette" },
  { make-up-to = "50 mL", in = "flask" },
]
`
)

// edited is a text in which others stand in place of some.
func edited(t testing.TB, text string, pairs ...string) string {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		require.Contains(t, text, pairs[i])
	}
	return strings.NewReplacer(pairs...).Replace(text)
}

// ink reads a prep on a kit.
func ink(t testing.TB, prep, kit string) *route.Prep {
	t.Helper()
	k, err := ParseKit("bench.toml", []byte(kit))
	require.NoError(t, err)
	p, err := ParsePrep("ink.toml", []byte(prep), k)
	require.NoError(t, err)
	return p
}

// begun is the text of a record of a route of which all steps are entered as done.
func begun(t testing.TB, p *route.Prep, r *route.Route) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "record.toml")
	require.NoError(t, os.WriteFile(path, []byte(Template(p, r)), 0o600))
	var lines []string
	for i := range r.Steps {
		lines = append(lines, fmt.Sprintf("step %d: done", i+1))
	}
	require.NoError(t, Add(t.Context(), path, p, Addition{By: "AK", At: "2026-11-28 10:05", Lines: lines}))
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(text)
}

// evaluated is what follows from the text of a record.
func evaluated(t testing.TB, p *route.Prep, text string) *record.Made {
	t.Helper()
	m, err := record.Evaluate(t.Context(), parseRecord(t, p, text), uncertainty.Settings{Trials: 10_000, Seed: 1})
	require.NoError(t, err)
	return m
}

// told are the differences of a record in short.
func told(r *record.Record) (list []string) {
	for _, d := range r.Differences {
		list = append(list, fmt.Sprintf("%s|%s|%s|%s", d.Of, d.Key, d.Then, d.Now))
	}
	return list
}

// A finished batch stays what it is, to the last digit, whatever becomes of the prep and
// its kit; what differs is told, and what does not count is not.
func TestEditsLeaveABatchAsItIs(t *testing.T) {
	skipIfSlow(t)
	before := ink(t, inkPrep, inkKit)
	text := begun(t, before, before.Routes[0])
	want := evaluated(t, before, text)
	require.True(t, want.Meets())
	require.Empty(t, told(want.Record))
	for _, c := range []struct {
		name      string
		prep, kit []string
		differ    []string
	}{
		{"a reading", []string{`"1.00 g"`, `"1.20 g"`}, nil, []string{"step 1|weigh|1.00 g|1.20 g"}},
		{"the target", []string{`"0.040 % w/v"`, `"0.050 % w/v"`}, nil, []string{"|target|0.040 % w/v|0.050 % w/v"}},
		{"the unit", []string{`"0.040 % w/v"`, `"0.4 g/L"`}, nil, []string{"|target|0.040 % w/v|0.4 g/L"}},
		{"the tolerance", []string{`"6 % of target"`, `"1 % of target"`}, nil, []string{"|tolerance|6 % of target|1 % of target"}},
		{"the limits", []string{`tolerance = "6 % of target"`, `not-below = "0.039 % w/v"`}, nil, []string{"|tolerance|6 % of target|", "|not-below||0.039 % w/v"}},
		{"the chance", []string{"volume = ", "least-chance = \"99.99 %\"\nvolume = "}, nil, []string{"|least-chance||99.99 %"}},
		{"the volume", []string{`"40 mL"`, `"45 mL"`}, nil, []string{"|volume|40 mL|45 mL"}},
		{"the bench", []string{`within = "2 °C"`, `within = "5 °C", reading = "careful"`}, nil, []string{"bench|within|2 °C|5 °C", "bench|reading||careful"}},
		{"no bench", []string{`bench = { temperature = "21 °C", within = "2 °C" }`, ""}, nil, []string{"bench|temperature|21 °C|", "bench|within|2 °C|"}},
		{"the assay", []string{`{ from = "97 %", to = "100 %" }`, `"90 %"`}, nil, []string{`solute|assay|{ from = "97 %", to = "100 %" }|90 %`}},
		{"an end of the assay", []string{`"97 %"`, `"90 %"`}, nil, []string{"solute, assay|from|97 %|90 %"}},
		{"the solute", []string{`name = "ink"`, `name = "dye"`}, nil, []string{"solute|name|ink|dye"}},
		{"the solvent", []string{`"water"`, `"acetone"`}, nil, []string{"solvent|name|water|acetone"}},
		{"the evaporation", []string{`evaporation = "1 % of volume"`, ""}, nil, []string{"solvent|evaporation|1 % of volume|"}},
		{"a stock", []string{`strength = "1 % w/v"`, `strength = "2 % w/v"`}, nil, []string{"strong|strength|1 % w/v|2 % w/v"}},
		{"an option", []string{`with = "pipette" },` + "\n  { make-up-to = \"50 mL\", in = \"cyl", `with = "pipette", state = "wet" },` + "\n  { make-up-to = \"50 mL\", in = \"cyl"}, nil, []string{"step 3|state||wet"}},
		{"an instrument of a step", []string{`in = "cylinder"`, `in = "flask"`}, nil, []string{"step 4|in|cylinder|flask"}},
		{"a step less", []string{"  { take = \"1 mL\", with = \"pipette\" },\n  { make-up-to = \"50 mL\", in = \"cylinder\" },\n", ""}, nil,
			[]string{`step 3||{ take = "1 mL", with = "pipette" }|`, `step 4||{ make-up-to = "50 mL", in = "cylinder" }|`}},
		{"another step", []string{`make-up-to = "50 mL", in = "cylinder"`, `add = "49 mL", with = "cylinder"`}, nil,
			[]string{`step 4||{ make-up-to = "50 mL", in = "cylinder" }|{ add = "49 mL", with = "cylinder" }`}},
		{"the name of the route", []string{`"two steps"`, `"2 steps"`}, nil, []string{"the route two steps||gone|"}},
		{"a property", nil, []string{`linearity = "0.02 g"`, `linearity = "0.2 g"`}, []string{"scale|linearity|0.02 g|0.2 g"}},
		{"a class", nil, []string{"name = \"pipette\"\nkind = \"graduated\"\ncapacity = \"2 mL\"\nclass = \"A\"", "name = \"pipette\"\nkind = \"graduated\"\ncapacity = \"2 mL\"\nclass = \"B\""}, []string{"pipette|class|A|B"}},
		{"an instrument that is gone", []string{`with = "pipette"`, `with = "cylinder"`}, []string{"[[pipette]]\nname = \"pipette\"", "[[pipette]]\nname = \"other pipette\""},
			[]string{"step 3|with|pipette|cylinder", `pipette||{ name = "pipette", kind = "graduated", capacity = "2 mL", class = "A", standard = "ISO" }|`}},
		{"the shape of limits", nil, []string{"# invented", `shape = "rectangular"`}, []string{"|shape||rectangular"}},
		{"all of it", []string{`"0.040 % w/v"`, `"0.050 % w/v"`, `"1.00 g"`, `"1.20 g"`}, []string{`linearity = "0.02 g"`, `linearity = "0.2 g"`},
			[]string{"|target|0.040 % w/v|0.050 % w/v", "step 1|weigh|1.00 g|1.20 g", "scale|linearity|0.02 g|0.2 g"}},

		{"how a quantity is written", []string{`"1.00 g"`, `"1000 mg"`, `"0.040 % w/v"`, `"0.04 % w/v"`, `"6 % of target"`, `"6.0 % of target"`}, []string{`"0.02 g"`, `"20 mg"`}, nil},
		{"comments and the layout", []string{"# invented", "# by hand", " # mixed", "", ` = "Ink"`, ` =   "Ink"  `}, []string{"# invented\n", "\n\n"}, nil},
		{"the order of the instruments", nil, []string{`name = "scale"`, `name = "scale"`, "[[balance]]\nname = \"old scale\"\ncapacity = \"500 g\"\nreadability = \"0.1 g\"\nprice = \"20 EUR\"\n", "", "[[candidate]]", "[[balance]]\nname = \"old scale\"\ncapacity = \"500 g\"\nreadability = \"0.1 g\"\n[[candidate]]"}, nil},
		{"an instrument that the batch does not use", nil, []string{`readability = "0.1 g"`, `readability = "1 g"`}, nil},
		{"a new instrument, a new candidate", nil, []string{`"wished for"`, `"wished for more"`, "[[balance]]\nname = \"old", "[[balance]]\nname = \"new\"\ncapacity = \"20 g\"\nreadability = \"0.01 g\"\n[[balance]]\nname = \"old"}, nil},
		{"prices and the search", []string{`"1 EUR/g"`, `"2 EUR/g"`, "steps = 2", "steps = 3"}, []string{`"20 EUR"`, `"30 EUR"`}, nil},
		{"another route", []string{`take = "2 mL"`, `take = "1 mL"`}, nil, nil},
	} {
		now := ink(t, edited(t, inkPrep, c.prep...), edited(t, inkKit, c.kit...))
		got := evaluated(t, now, text)
		assert.Equal(t, want.AsMade.Analytic, got.AsMade.Analytic, c.name)
		assert.Equal(t, want.AsMade.Inside, got.AsMade.Inside, c.name)
		assert.Equal(t, want.AsPlanned.Analytic, got.AsPlanned.Analytic, c.name)
		assert.True(t, got.Meets(), c.name)
		differ := told(got.Record)
		for i := range differ {
			if strings.HasPrefix(differ[i], "the route") {
				differ[i] = "the route two steps||gone|"
			}
		}
		assert.Equal(t, c.differ, differ, c.name)
		assert.Equal(t, inkText(want), inkText(got), c.name)
	}
}

// inkText is what a batch is said to be.
func inkText(m *record.Made) string {
	return fmt.Sprint(m.Prep.Target, m.Prep.Tolerances, m.Prep.Volume, m.Prep.LeastChance, m.Prep.Title, m.Prep.Solute.Name, m.Prep.Solvent.Name, m.Made.Name)
}

// A measure counts for a batch also where only a line was set with it, or a rung is made with
// it.
func TestInstrumentsThatCount(t *testing.T) {
	prep := edited(t, inkPrep, `make-up-to = "50 mL", in = "cylinder"`, `make-up-to = "100 mL", in = "jar"`, `"0.040 % w/v"`, `"0.020 % w/v"`,
		"[solute]", "ladder = [ \"0.01 % w/v\" ]\nladder-with = \"wide pipette\"\nladder-in = \"small flask\"\n[solute]")
	kit := inkKit + "[[flask]]\nname = \"small flask\"\ncapacity = \"10 mL\"\nclass = \"A\"\n" + moreInKit
	before := ink(t, prep, kit)
	text := begun(t, before, before.Routes[0])
	for old, want := range map[string]string{
		"name = \"cylinder\"\ncapacity = \"50 mL\"\nclass = \"A\"":    "cylinder|class|A|B",
		"name = \"small flask\"\ncapacity = \"10 mL\"\nclass = \"A\"": "small flask|class|A|B",
	} {
		now := ink(t, prep, edited(t, kit, old, strings.Replace(old, `"A"`, `"B"`, 1)))
		assert.Equal(t, []string{want}, told(parseRecord(t, now, text)))
	}
	now := ink(t, prep, edited(t, kit, `tolerance = "0.05 mL"`, `tolerance = "0.1 mL"`))
	assert.Equal(t, []string{"wide pipette|tolerance|0.05 mL|0.1 mL"}, told(parseRecord(t, now, text)))
}

// Of every prep and route of the project a record can be begun, with which nothing differs
// and the plan has the figures that it has without the record.
func TestEveryRouteCanBeCarried(t *testing.T) {
	skipIfSlow(t)
	var files []string
	for _, pattern := range []string{"../../testdata/benches/*/*.toml", "../../testdata/published/*/*.toml", "../../cmd/minim/demo/*.toml"} {
		found, err := filepath.Glob(pattern)
		require.NoError(t, err)
		files = append(files, found...)
	}
	routes := 0
	for _, file := range files {
		p, err := LoadPrep(context.Background(), file, "")
		if err != nil {
			continue // a kit, or a prep without one of its own
		}
		for _, r := range p.Routes {
			want, err := p.Assess(r, 0.95)
			require.NoError(t, err)
			if !want.Possible {
				assert.Contains(t, mistakeIn(t, p, Template(p, r)).Message, "as planned: ")
				continue
			}
			rec := parseRecord(t, p, Template(p, r))
			assert.Empty(t, told(rec), file+": "+r.Name)
			assert.False(t, rec.PlanMissing || rec.Undigested)
			assert.Empty(t, rec.Newcomers)
			got, err := rec.Plan.Assess(rec.Planned, 0.95)
			require.NoError(t, err)
			assert.Equal(t, want.Reason, got.Reason)
			assert.Equal(t, want.Analytic, got.Analytic, file+": "+r.Name)
			routes++
		}
	}
	assert.Greater(t, routes, 30)
}

// A plan that is not as it was when the record was begun is refused, unless its digest is
// taken out; comments and the layout do not count.
func TestDigestOfAPlan(t *testing.T) {
	p := ink(t, inkPrep, inkKit)
	text := begun(t, p, p.Routes[0])
	for _, c := range [][2]string{
		{`target = "0.040 % w/v"`, `target = "0.041 % w/v"`}, {`linearity = "0.02 g"`, `linearity = "0.01 g"`},
		{`{ weigh = "1.00 g"`, `{ weigh = "1.01 g"`}, {"[planned.kit]", "[planned.kit]\nshape = \"rectangular\""}, {"digest = \"SHA-256 ", "digest = \"SHA-256 0"},
	} {
		m := mistakeIn(t, p, edited(t, text, c[:]...))
		assert.Equal(t, "digest: the plan in this record is not as it was when the record was begun", m.Message)
		assert.Equal(t, "put it back as it was; or take this line out, and the plan counts as it stands, which is said of all that follows from it", m.Hint)
		assert.True(t, strings.HasPrefix(markedText(m), `"SHA-256 `))
	}
	same := parseRecord(t, p, edited(t, text, "[planned]\n", "[planned] # as it was\n\n", `volume = "`, `volume   = "`))
	assert.False(t, same.Undigested)

	lines := strings.SplitAfter(text, "\n")
	for i, line := range lines {
		if strings.HasPrefix(line, "digest = ") {
			lines[i] = ""
		}
	}
	loose := parseRecord(t, p, edited(t, strings.Join(lines, ""), `{ weigh = "1.00 g"`, `{ weigh = "1.01 g"`))
	assert.True(t, loose.Undigested)
	assert.Equal(t, 1.01, loose.Planned.Steps[0].Amount)
	assert.Equal(t, []string{"step 1|weigh|1.01 g|1.00 g"}, told(loose))
}

// A record that carries no plan is read against the prep as it is now.
func TestRecordWithoutAPlan(t *testing.T) {
	text := recordOf("two steps", "1 = { step = 1, BY }")
	for _, reading := range []float64{1, 1.2} {
		p := ink(t, edited(t, inkPrep, `"1.00 g"`, fmt.Sprintf(`"%.2f g"`, reading)), inkKit)
		r := parseRecord(t, p, text)
		assert.True(t, r.PlanMissing)
		assert.True(t, p == r.Plan)
		assert.Empty(t, r.Differences)
		assert.Equal(t, reading, r.Made.Steps[0].Amount)
	}
	// what an entry says was done as planned stays
	path := recordFile(t, recordOf("two steps", ""))
	require.NoError(t, Add(t.Context(), path, ink(t, inkPrep, inkKit), Addition{By: "AK", At: "2026-11-28", Lines: []string{"step 1: done"}}))
	r, err := LoadRecord(t.Context(), path, ink(t, edited(t, inkPrep, `"1.00 g"`, `"1.20 g"`), inkKit))
	require.NoError(t, err)
	assert.Equal(t, 1.0, r.Made.Steps[0].Amount)
	assert.Equal(t, []int{1}, r.OfOrigin(record.AsPlanned))
}

// Mistakes in a plan have their place in the record.
func TestBadPlans(t *testing.T) {
	p := ink(t, inkPrep, inkKit)
	text := Template(p, p.Routes[0])
	at := strings.Index(text, "[planned]")
	line := strings.Count(text[:at], "\n") + 1
	for _, c := range []struct{ old, new, message string }{
		{"[planned.kit]", "[planned.kti]", "unknown key `kti` in the plan"},
		{"[[planned.route]]", "[[planned.ruote]]", "unknown key `ruote` in the plan"},
		{"[[planned.route]]", "[[planned.route]]\nname = \"x\"\nsteps = [ { start = \"strong\" }, { take = \"1 mL\", with = \"pipette\" }, { make-up-to = \"50 mL\", in = \"flask\" } ]\n[[planned.route]]", "route: a plan has one route"},
		{"name = \"two steps\"", "name = \"three steps\"", "route: the plan in this record is of the route three steps"},
		{`on = "scale" }`, `on = "scales" }`, `on: there is no balance in the kit called "scales"`},
		{"target = ", "traget = ", "unknown key `traget` in the plan"},
		{`capacity = "200 g"`, `capacity = "200"`, `capacity: "200" has no unit`},
	} {
		m := mistakeIn(t, p, edited(t, withoutDigest(text), c.old, c.new))
		assert.Contains(t, m.Message, c.message)
		assert.GreaterOrEqual(t, m.Line, min(line, 7))
	}
}

func withoutDigest(text string) string {
	before, rest, _ := strings.Cut(text, "digest = ")
	_, after, _ := strings.Cut(rest, "\n")
	return before + after
}

// Hazards are not planned but found out: those of the plan and those that the prep states
// by now hold, of the same solute.
func TestHazardsOfPlanAndPrepHold(t *testing.T) {
	before := ink(t, inkPrep, inkKit)
	text := begun(t, before, before.Routes[0])
	at := func(p *route.Prep, strength float64) string {
		h := p.HazardsAt(strength, strength)
		return strings.Join(h.Undiluted, " ") + " / " + strings.Join(h.Solution, " ")
	}
	for _, c := range []struct{ old, new, undiluted, weak, strong string }{
		{`["irritant"]`, `["sensitiser"]`, "irritant sensitiser", "", "toxic"},
		{"hazards = [\"irritant\"]\n", "", "irritant", "", "toxic"},
		{`["toxic"]`, `["corrosive"]`, "irritant", "", "toxic corrosive"},
		{"[[hazard]]\nfrom = \"1 % w/v\"\nwords = [\"toxic\"]\n", "", "irritant", "", "toxic"},
		{"from = \"1 % w/v\"\nwords = [\"toxic\"]\n", "from = \"0.5 % w/v\"\nwords = [\"acid\"]\nreplaces = true\n", "irritant", "acid", "acid toxic"},
		{"from = \"1 % w/v\"\nwords = [\"toxic\"]\n", "from = \"10 g/L\"\nwords = [\"acid\"]\n", "irritant", "", "toxic acid"},
		{"words = [\"toxic\"]\n", "words = [\"acid\"]\nreplaces = true\n[[hazard]]\nfrom = \"0.5 % w/v\"\nwords = [\"dust\"]\n", "irritant", "dust", "dust toxic acid"},
		{"[plan]", "[[hazard]]\nfrom = \"1.5 % w/v\"\nwords = [\"acid\"]\nreplaces = true\n[plan]", "irritant", "", "toxic acid"},
		{`name = "ink"`, `name = "dye"`, "irritant", "", "toxic"},
	} {
		r := parseRecord(t, ink(t, edited(t, inkPrep, c.old, c.new), inkKit), text)
		assert.Equal(t, c.undiluted+" / "+c.weak, at(r.Prep, 0.6), c.new)
		assert.Equal(t, c.undiluted+" / "+c.strong, at(r.Prep, 2), c.new)
	}
	other := parseRecord(t, ink(t, edited(t, inkPrep, `name = "ink"`, `name = "dye"`, `["irritant"]`, `["acid"]`), inkKit), text)
	assert.Equal(t, "irritant / toxic", at(other.Prep, 2))
}

// What has come to the bench since can be used, and is told; what is gone is not advised.
func TestBenchSinceARecordWasBegun(t *testing.T) {
	skipIfSlow(t)
	before := ink(t, inkPrep, inkKit)
	text := begun(t, before, before.Routes[0])
	now := ink(t, edited(t, inkPrep, `with = "pipette"`, `with = "syringe"`, `name = "strong"`, `name = "weak"`, `start = "strong"`, `start = "weak"`),
		edited(t, inkKit, "[[pipette]]\nname = \"pipette\"\nkind = \"graduated\"\ncapacity = \"2 mL\"\nclass = \"A\"\nstandard = \"ISO\"\n", "[[syringe]]\nname = \"syringe\"\ncapacity = \"2 mL\"\ntolerance = \"5 % of capacity\"\n"))
	more := short.Replace(`20 = { step = 5, take = "all", BY } | 21 = { step = 6, strengthen = "1 mL", of = "weak", with = "syringe", BY }`)
	r := parseRecord(t, now, text+more+"\n")
	assert.Equal(t, []string{"syringe", "weak"}, r.Newcomers)
	assert.Equal(t, []string{"ink.toml", "bench.toml"}, []string{r.Prep.File, r.Prep.Kit.File})
	assert.Equal(t, "pipette", r.Made.Steps[2].Measure.Name)
	assert.Contains(t, r.Prep.Kit.Names(), "pipette")
	assert.NotContains(t, r.OnTheBench().Kit.Names(), "pipette")
	assert.Contains(t, r.OnTheBench().Kit.Names(), "syringe")

	aimed, err := rescue.Aimed(r.OnTheBench(), "0.03 % w/v")
	require.NoError(t, err)
	found, err := rescue.Find(t.Context(), aimed, r.Made, uncertainty.Settings{Trials: 10_000, Seed: 1})
	require.NoError(t, err)
	for i := range found.Results {
		for _, s := range found.Results[i].Route.Steps[found.Before:] {
			assert.False(t, s.Measure != nil && s.Measure.Name == "pipette")
		}
	}
	again := parseRecord(t, before, text)
	assert.True(t, again.Prep == again.OnTheBench())
}

// A plan can be written of whatever the files hold, and is read with the very same values.
func TestWrittenPlanHoldsAll(t *testing.T) {
	prep := edited(t, inkPrep, "price = \"1 EUR/g\"\n", "", `title = "Ink"`, `title = "Ink \"7\" \\ µ"`, `assay = { from = "97 %", to = "100 %" }`, "assay = { value = '''98 %''', expanded = \"0.5 %\", k = 2 }\nform-factor = 0.9",
		`tolerance = "6 % of target"`, `tolerance = [ "6 % of target", "0.004 % w/v" ]`)
	kit := edited(t, inkKit, "price = \"20 EUR\"\n", "", `linearity = "0.02 g"`, `readings = [ "1.00 g", "1.01 g", "1.00 g" ]`+"\ncount = 2", "set-with = \"cylinder\"\n", "set-with = \"cylinder\"\nretained = { mean = \"0.1 mL\", spread = \"0.05 mL\" }\nsingle-use = false\n")
	p := ink(t, prep, kit)
	r := parseRecord(t, p, Template(p, p.Routes[0]))
	assert.Empty(t, told(r))
	assert.Equal(t, p.Title, r.Plan.Title)
	assert.Equal(t, p.Tolerances, r.Plan.Tolerances)
	assert.Equal(t, p.Solute, r.Plan.Solute)
	assert.Equal(t, p.Bench, r.Plan.Bench)
	assert.Equal(t, p.Kit.Balances, r.Plan.Kit.Balances)
	assert.Equal(t, p.Kit.Measures, r.Plan.Kit.Measures)
	assert.NotContains(t, Template(p, p.Routes[0]), "wished for")
	assert.NotContains(t, Template(p, p.Routes[0]), "EUR")
	assert.NotContains(t, Template(p, p.Routes[0]), `"another"`)
}
