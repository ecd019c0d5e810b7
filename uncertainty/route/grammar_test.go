package route

import (
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty"
)

// everyKind is a kit with an instrument of every kind.
const everyKind = `
[[balance]]
name = "balance"
capacity = "200 g"
readability = "0.01 g"
count = 2
[[balance]]
name = "certified balance"
capacity = "200 g"
readability = "0.01 g"
weighing-uncertainty = "0.02 g"
span = "0.1 % of reading"
[[cylinder]]
name = "cylinder"
capacity = "10 mL"
class = "B"
material = "borosilicate"
clinging = "0.03 mL"
[[cylinder]]
name = "cylinder Ex"
capacity = "100 mL"
class = "A"
marked = "Ex"
retained = "0.4 mL"
[[flask]]
name = "flask"
capacity = "25 mL"
class = "A"
count = 2
[[pipette]]
name = "one-mark"
kind = "one-mark"
capacity = "1 mL"
class = "B"
retained = { mean = "0.01 mL", spread = "0.004 mL" }
[[pipette]]
name = "graduated"
kind = "graduated"
capacity = "5 mL"
class = "B"
count = 2
readings = ["4.99 mL", "5.00 mL", "5.02 mL", "5.01 mL"]
[[pipette]]
name = "piston"
kind = "piston"
capacity = "1 mL"
[[pipette]]
name = "transfer"
kind = "transfer"
capacity = "3 mL"
tolerance = "10 % of reading"
single-use = true
[[burette]]
name = "burette"
division = "0.1 mL"
capacity = "25 mL"
class = "B"
correction = { value = "0.02 mL", expanded = "0.01 mL", k = 2 }
[[syringe]]
name = "syringe"
capacity = "10 mL"
single-use = true
[[dropper]]
name = "dropper"
[[beaker]]
name = "beaker"
capacity = "50 mL"
division = "10 mL"
bore = "40 mm"
[[conical-flask]]
name = "conical flask"
capacity = "100 mL"
[[conical-measure]]
name = "conical measure"
capacity = "50 mL"
tolerance = "1 mL"
[[jar]]
name = "jar"
line = "50 mL"
set-with = "cylinder"
bore = "45 mm"
count = 2
`

// speaker builds a prep from the grammar, one choice after the other, by a
// string of bytes; when they run out each choice is the first.
type speaker struct{ bytes []byte }

func (s *speaker) number(n int) int {
	if len(s.bytes) == 0 {
		return 0
	}
	b := int(s.bytes[0])
	s.bytes = s.bytes[1:]
	return b % n
}

func (s *speaker) one(of ...string) string { return of[s.number(len(of))] }

// maybe says a line with one of several values, or nothing.
func (s *speaker) maybe(key string, of ...string) string {
	if n := s.number(len(of) + 1); n > 0 {
		return key + " = " + of[n-1] + "\n"
	}
	return ""
}

// also says a key of a step once in eight times.
func (s *speaker) also(key string, of ...string) string {
	if s.number(8) != 7 {
		return ""
	}
	return fmt.Sprintf(", %s = %s", key, s.one(of...))
}

var someStrengths = []string{"1 % w/v", "1 % w/w", "5 % v/v", "0.5 g/L", "20 mg/mL", "300 mg/L", "1 µg/mL", "0.1 mol/L", "2 mmol/L", "7 U/mL", "60 % w/w", "95 % v/v"}

func quotedAll(texts []string) []string {
	out := make([]string, len(texts))
	for i, text := range texts {
		out[i] = fmt.Sprintf("%q", text)
	}
	return out
}

func (s *speaker) prep() string {
	liquids := []string{`"water"`, `"ethanol"`, `"acetone"`, `"ethanol 96 %"`, `"oil"`}
	var b strings.Builder
	fmt.Fprintf(&b, "target = %q\nvolume = %q\n", s.one(someStrengths...), s.one("10 mL", "0.1 mL", "2 L"))
	b.WriteString(s.maybe("tolerance", `"8 % of target"`, `["20 % of target", "5 % of target"]`, `"0.001 g/L"`))
	if !strings.Contains(b.String(), "tolerance") {
		b.WriteString(s.maybe("not-above", `"90 % w/v"`) + s.maybe("not-below", `"0.001 mg/L"`))
	}
	fmt.Fprintf(&b, "bench = { temperature = %q, within = %q%s%s }\n", s.one("20 °C", "0 °C", "37 °C"), s.one("3 °C", "0 °C"),
		s.also("reading", `"careful"`, `"first-time"`, `"none"`), s.also("meniscus", `"ignored"`))
	b.WriteString("[solute]\nname = " + s.one(`"urea"`, `"ethanol"`, `"water"`) + "\nstate = \"solid\"\n" +
		s.maybe("assay", `"at least 98 %"`, `{ from = "1 %", to = "100 %" }`, `{ value = "90 %", expanded = "2 %", k = 2 }`) +
		s.maybe("form-factor", "0.639", "2") + s.maybe("solubility", `"10 g/L"`, `"30 % w/w"`) +
		"molar-mass = " + s.one(`"58.44 g/mol"`, `{ value = "58.44 g/mol", expanded = "0.01 g/mol", k = 2 }`) + "\n" +
		"density = " + s.one(`"2.16 g/mL"`, `{ from = "0.8 g/mL", to = "1.2 g/mL" }`) + "\n" +
		"activity = " + s.one(`"30 U/mg"`, `{ from = "1 U/g", to = "1 U/mg" }`) + "\n" +
		s.maybe("specific-volume", `"-0.9 mL/g"`, `{ value = "0.3 mL/g", expanded = "0.02 mL/g", k = 2 }`, `"1.3 mL/g"`))
	b.WriteString("[solvent]\nname = " + s.one(liquids...) + "\ndensity = \"0.9 g/mL\"\n" +
		s.maybe("expansion", `"1e-3 /°C"`) + s.maybe("evaporation", `"2 % of volume"`, `"50 % of volume"`))
	b.WriteString("[[stock]]\nname = \"stock\"\nstrength = " + s.one(quotedAll(someStrengths)...) + "\n" +
		s.maybe("solvent", liquids...) + s.maybe("loss", `"5 % of strength"`, `"50 % of strength"`) + s.maybe("density", `"0.9 g/mL"`, `{ from = "1 g/mL", to = "1.2 g/mL" }`))
	b.WriteString("[[stock]]\nname = \"certified\"\nstrength = " + s.one(`{ value = "10 % w/w", expanded = "1 % w/w", k = 2 }`,
		`{ from = "1 mol/L", to = "2 mol/L" }`, `{ value = "900 U/mL", expanded = "100 U/mL", k = 1 }`) + "\n" + s.maybe("solvent", liquids...))
	b.WriteString("[[packet]]\nname = \"packet\"\ncontent = " + s.one(`"5 g"`, `{ from = "0.1 g", to = "5 g" }`, `{ value = "9 g", expanded = "8 g", k = 1 }`) + "\n")
	for r := range 1 + s.number(2) {
		fmt.Fprintf(&b, "[[route]]\nname = \"route %d\"\nsteps = [\n%s]\n", r+1, s.steps())
	}
	return b.String()
}

// steps follow the grammar, but for one choice in sixty-four.
func (s *speaker) steps() string {
	var b strings.Builder
	at := nothing
	for n := 0; n < 9; n++ {
		var fitting []Verb
		wild := s.number(64) == 63
		for _, v := range Verbs()[:13] {
			for _, after := range v.Traits().after {
				if after == at || wild {
					fitting = append(fitting, v)
					break
				}
			}
		}
		verb := fitting[s.number(len(fitting))]
		b.WriteString("{ " + s.step(verb) + " },\n")
		if at = verb.Traits().then; (at == solution || at == mixture) && s.number(3) == 0 {
			break
		}
	}
	return b.String()
}

// sizes are volumes that an instrument can measure, and one that it cannot.
var sizes = map[string][]string{
	"one-mark": {"1 mL", "1 mL", "2 mL"}, "graduated": {"5 mL", "0.5 mL", "6 mL"}, "piston": {"1 mL", "0.1 mL", "1.1 mL"}, "transfer": {"3 mL", "1 mL", "0 mL"},
	"burette": {"25 mL", "3 mL", "26 mL"}, "syringe": {"10 mL", "1 mL", "11 mL"}, "dropper": {"1 drop", "10000 drops", "0 drops"},
	"cylinder": {"10 mL", "3.1 mL", "0.1 mL"}, "cylinder Ex": {"100 mL", "20 mL", "101 mL"}, "beaker": {"50 mL", "10 mL", "1 mL"},
	"conical flask": {"100 mL", "50 mL", "101 mL"}, "conical measure": {"50 mL", "10 mL", "51 mL"}, "flask": {"25 mL", "25 mL", "10 mL"}, "jar": {"50 mL", "50 mL", "10 mL"},
}

// size is mostly one that fits.
func (s *speaker) size(instrument string) string {
	n := s.number(32)
	if n < 31 {
		n %= 2
	}
	return sizes[instrument][min(n, 2)]
}

func (s *speaker) step(v Verb) string {
	piece := s.also("piece", "1", "2")
	reading := s.also("reading", `"careful"`, `"none"`)
	state := s.also("state", `"wet"`, `"used"`, `"dry"`, `"conditioned"`)
	rinsed, blown := s.also("rinsed", "true"), s.also("blown-out", "true")
	contraction := s.also("contraction", `"0 % of volume"`, `"50 % of volume"`) + s.also("open", `"0 min"`, `"200 min"`) + s.also("mouth", `"8 mm"`, `"200 mm"`)
	with := s.one("one-mark", "graduated", "piston", "transfer", "burette", "syringe", "cylinder", "cylinder Ex", "beaker", "conical measure", "dropper")
	vessel := s.one("flask", "cylinder", "cylinder Ex", "beaker", "conical flask", "conical measure", "jar")
	volume, mark := s.size(with), s.size(vessel)
	balance, mass, total := s.one("balance", "balance", "certified balance"), s.one("1.00 g", "0.01 g", "5.00 g"), s.one("50.00 g", "200.00 g", "1.00 g")
	switch v {
	case Weigh:
		return fmt.Sprintf("weigh = %q, on = %q", mass, balance) + piece + s.also("tare", `"separate"`, `"zeroed"`) + s.also("weighed-back", "true") + s.also("left-behind", `"0.009 g"`)
	case UsePacket:
		return `packet = "packet"`
	case Start:
		return "start = " + s.one(`"stock"`, `"certified"`)
	case Measured, Take:
		return fmt.Sprintf("%s = %q, with = %q", v, volume, with) + piece + reading + state + rinsed + blown
	case DissolveIn:
		if s.number(2) == 1 {
			return fmt.Sprintf("dissolve-in = %q, on = %q", total, balance) + piece
		}
		return fmt.Sprintf("dissolve-in = %q, with = %q", volume, with) + piece + reading + state + contraction
	case Add:
		return fmt.Sprintf("add = %q, with = %q", volume, with) + piece + reading + state + contraction
	case MakeUpTo:
		return fmt.Sprintf("make-up-to = %q, in = %q", mark, vessel) + piece + reading + state
	case Pour:
		return fmt.Sprintf("pour = %q, from = %q", mark, vessel) + piece + reading + state + rinsed
	case WeighUpTo:
		return fmt.Sprintf("weigh-up-to = %q, on = %q", total, balance) + piece
	default:
		return fmt.Sprintf("%s = %q, on = %q", v, mass, balance) + piece
	}
}

// understand reads and compares what was said. A mistake must have its place
// and its message; a prep without one must give numbers.
func understand(t *testing.T, kit *equipment.Kit, text string) (readable, possible bool) {
	t.Helper()
	defer func() {
		if r := recover(); r != nil {
			t.Fatalf("panic: %v\n%s", r, text)
		}
	}()
	p, err := ParsePrep("prep.toml", []byte(text), kit)
	if err != nil {
		all, _ := benchfile.Told(err)
		for i, m := range all {
			if m.Line < 1 || m.Column < 1 || m.Message == "" || i > 0 && m.Line < all[i-1].Line {
				t.Fatalf("no place: %v\n%s", err, text)
			}
		}
		if len(all) == 0 {
			t.Fatalf("no mistake: %v\n%s", err, text)
		}
		return false, false
	}
	for _, r := range p.Routes { // without the spread, and here so that a panic is seen
		_, err := p.compile(r)
		if _, no := equipment.WhyNot(err); err != nil && !no {
			t.Fatalf("compile: %v\n%s", err, text)
		}
	}
	c, err := Compare(context.Background(), p, "", uncertainty.Settings{Trials: 10_000, Seed: 1, Coverage: 0.95})
	if err != nil {
		t.Fatalf("compare: %v\n%s", err, text)
	}
	for i := range c.Results {
		checkFinite(t, &c.Results[i])
		possible = possible || c.Results[i].Possible
	}
	if t.Failed() {
		t.Log(text)
	}
	return true, possible
}

func grammarKit(t testing.TB) *equipment.Kit {
	t.Helper()
	kit, err := ParseKit("bench.toml", []byte(everyKind))
	require.NoError(t, err)
	return kit
}

// FuzzGrammar: no combination of valid words panics or gives a number that is
// not finite.
func FuzzGrammar(f *testing.F) {
	kit := grammarKit(f)
	random := rand.New(rand.NewPCG(2, 3))
	for range 20 {
		f.Add(randomBytes(random))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		s := speaker{data}
		understand(t, kit, s.prep())
	})
}

func randomBytes(random *rand.Rand) []byte {
	data := make([]byte, 60+random.IntN(150))
	for i := range data {
		data[i] = byte(random.Uint32())
	}
	return data
}

// The same over some hundreds of preps in every run of the tests, so that a
// fuzz target that never gets past the reader would be seen.
func TestGrammar(t *testing.T) {
	skipIfSlow(t)
	kit := grammarKit(t)
	random := rand.New(rand.NewPCG(1, 2))
	count, readable, possible := 600, 0, 0
	for range count {
		s := speaker{randomBytes(random)}
		read, done := understand(t, kit, s.prep())
		if read {
			readable++
		}
		if done {
			possible++
		}
	}
	t.Logf("of %d preps %d are readable, %d have a route that can be done", count, readable, possible)
	require.Greater(t, readable, count/10)
	require.Greater(t, possible, count/50)
}
