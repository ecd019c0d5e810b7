package bench

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty/route"
)

// readStep reads one step; ok is false when it has no verb to go by.
func (p prepReader) readStep(t *benchfile.Table) (s route.Step, ok bool) {
	verb, ok := oneVerb(t)
	if !ok {
		t.Accept()
		return route.Step{}, false
	}
	return p.readVerb(t, verb, nil), true
}

// readVerb reads a step of a verb. The instrument is that of the step planned when it
// is not named; without a plan, nil, it must be.
func (p prepReader) readVerb(t *benchfile.Table, verb route.Verb, planned *route.Step) route.Step {
	s := route.Step{Verb: verb}
	t.Has(verb.Traits().Key)
	key, kind := verb.Traits().Instrument, verb.Traits().Amount
	switch verb {
	case route.Start:
		s.Stock = find(t, verb, "stock", p.Stocks, stockName)
		return s
	case route.UsePacket:
		s.Packet = find(t, verb, "packet", p.Packets, packetName)
		return s
	case route.TakeAll:
		if t.Has("of") {
			p.readStrong(t, &s)
		}
		return s
	case route.Take, route.Pour:
		if t.Has("of") {
			p.readStrong(t, &s)
		}
	case route.DissolveIn:
		if holds(t, "on") || planned != nil && planned.Balance != nil && !holds(t, "with") {
			key, kind = "on", quantity.Mass
		}
	case route.Strengthen:
		if planned == nil || holds(t, "of") {
			p.readStrong(t, &s)
		}
	}
	p.readUse(t, &s, key, kind, planned)
	readOptions(t, &s)
	if count := piecesOf(&s); s.Piece > count && count > 0 {
		t.Fail("piece", fmt.Sprintf("there is no piece %d of it on the bench", s.Piece), fmt.Sprintf("the kit says count = %d, or nothing for one", count))
	}
	return s
}

// readUse reads which instrument a step uses, and what it shows.
func (p prepReader) readUse(t *benchfile.Table, s *route.Step, key string, kind quantity.Kind, planned *route.Step) {
	s.Piece = t.Count("piece", 1)
	switch {
	case planned != nil && !holds(t, key):
		t.Has(key)
		s.Balance, s.Measure = planned.Balance, planned.Measure
	case kind == quantity.Mass:
		needInstrument(t, s.Verb, key)
		s.Balance = p.findBalance(t, key)
	default:
		needInstrument(t, s.Verb, key)
		s.Measure = p.findMeasure(t, key, s.Verb)
	}
	switch {
	case planned != nil && !holds(t, string(s.Verb)):
		s.Amount = planned.Amount
	case kind == quantity.Mass:
		s.Amount = t.Positive(string(s.Verb), kind)
	default:
		s.Amount = readVolumeOrDrops(t, s.Verb, s.Measure)
	}
	if kind == quantity.Volume {
		s.Reading = equipment.Reading(t.Word("reading", equipment.Readings()...))
	}
}

// piecesOf is how many there are of the instrument; 0 when it is not known.
func piecesOf(s *route.Step) int {
	switch {
	case s.Balance != nil:
		return s.Balance.Count
	case s.Measure != nil:
		return s.Measure.Count
	}
	return 0
}

// stepBefore is how a step is named that made a solution: "step 2".
var stepBefore = regexp.MustCompile(`^step ([1-9][0-9]{0,3})$`)

// readStrong reads which solution a step strengthens with, or takes from.
func (p prepReader) readStrong(t *benchfile.Table, s *route.Step) {
	t.Need("of")
	of := t.Text("of")
	if number := stepBefore.FindStringSubmatch(of); number != nil {
		s.From, _ = strconv.Atoi(number[1]) // it has four digits at most
		return
	}
	const stepTwo ofMistake = "name a solution made before as \"step 2\""
	names := namesOf(p.Stocks, stockName, nil)
	i := slices.Index(names, of)
	switch {
	case i >= 0:
		s.Stock = p.Stocks[i]
	case of == "" || slices.Contains(names, ""):
	case len(names) == 0:
		t.FailFor(t.Root(), []string{"stock"}, "of", "the prep has no [[stock]]", "add one, with its name, or "+stepTwo)
	default:
		none := benchfile.NoSuch("[[stock]]", of, names)
		t.Fail("of", none.Message, none.Hint+"; or "+stepTwo)
	}
}

// readVolumeOrDrops reads a volume, or for a dropper a number of drops.
func readVolumeOrDrops(t *benchfile.Table, verb route.Verb, m *equipment.Measure) float64 {
	text, key := "", string(verb)
	if t.IsText(key) {
		text = t.Text(key)
	}
	n, unit, err := quantity.Split(text)
	drops := unit == "drops" || unit == "drop"
	if m == nil && drops {
		return 0 // with what, is the mistake
	}
	if m == nil || !m.Kind.Traits().Counts {
		return t.Positive(key, quantity.Volume)
	}
	t.Text(key)
	if text != "" && (err != nil || !drops || n != math.Trunc(n) || !quantity.Limits.StepDrops.Holds(n)) {
		t.Fail(key, fmt.Sprintf("a dropper counts drops, found %q", text), "write \"3 drops\"")
		return 0
	}
	return n
}

// readOptions reads what a step may say beside its verb and its instrument.
func readOptions(t *benchfile.Table, s *route.Step) {
	if s.Balance != nil {
		s.Vessel = vesselMass(t)
	}
	if s.Verb.Traits().Makes {
		readOpen(t, s)
	}
	switch {
	case s.Verb.Traits().WeighsSolute:
		s.WeighedBack = t.Flag("weighed-back")
		s.LeftBehind = stated(t, "left-behind", quantity.Mass)
		s.SeparateTare = t.Word("tare", "zeroed", "separate") == "separate"
		if s.WeighedBack && s.LeftBehind.Known {
			t.Fail("left-behind", "the boat is weighed back, so nothing is left on it unknown", "state one of the two")
		}
		if s.LeftBehind.Value >= s.Amount && s.Amount > 0 {
			t.Fail("left-behind", "more than was weighed cannot be left behind", "")
		}
	case s.Verb.Traits().Empties:
		s.Emptying = emptying(t, s)
		s.State = readState(t)
	case s.Verb.Traits().Fills && s.Balance == nil:
		s.State = readState(t)
	case s.Verb.Traits().Mixes && s.Balance == nil:
		s.State = readState(t)
		s.Contraction = equipment.Stated{Value: shareOf(t, "contraction", "volume"), Known: t.Has("contraction")}
	}
}

func readState(t *benchfile.Table) route.State {
	return route.State(t.Word("state", string(route.Conditioned), string(route.Dry), string(route.Wet), string(route.Used)))
}

func emptying(t *benchfile.Table, s *route.Step) equipment.Emptying {
	rinsed, blown := t.Flag("rinsed"), false
	if s.Verb.Traits().Instrument != "from" { // a vessel that is poured out has no tip
		blown = t.Flag("blown-out")
	}
	switch m := s.Measure; {
	case blown && m != nil && !m.Kind.Traits().LastDrop:
		t.FailKey("blown-out", "the "+m.Name+" has no last drop to blow out", "only a glass pipette has one, one-mark or graduated")
	case blown && m != nil && m.TwoMarks:
		t.FailKey("blown-out", "the "+m.Name+" runs from mark to mark, and has no last drop to blow out", "leave blown-out out")
	case rinsed && m != nil && (m.Kind.Traits().RestApart || m.TwoMarks):
		t.FailKey("rinsed", "what is left in the "+m.Name+" does not belong to what was measured", "leave rinsed out")
	case rinsed && blown:
		t.Fail("blown-out", "rinsed and blown out are both stated", "state what is done last")
	case rinsed:
		return equipment.Rinsed
	case blown:
		return equipment.BlownOut
	}
	return ""
}

// needInstrument asks for the key that names the instrument, and says so when
// another verb's key stands in its place.
func needInstrument(t *benchfile.Table, verb route.Verb, key string) {
	if holds(t, key) {
		return
	}
	for _, other := range []string{"on", "in", "with", "from"} {
		if holds(t, other) {
			t.FailKey(other, fmt.Sprintf("%s does not say %s what, but %s what", verb, other, key), "write "+key)
			return
		}
	}
	t.Need(key)
}

// verbKeys are the keys of the verbs that have one of their own.
func verbKeys() []string {
	return namesOf(route.Verbs(), func(v route.Verb) string { return v.Traits().Key }, func(v route.Verb) bool { return v != route.TakeAll })
}

// oneVerb finds the verb of a step.
func oneVerb(t *benchfile.Table) (route.Verb, bool) {
	keys := verbKeys()
	found := slices.DeleteFunc(t.Keys(), func(key string) bool { return !slices.Contains(keys, key) })
	switch len(found) {
	case 1:
		if verb := route.Verb(found[0]); verb != route.Take || !t.IsText("take") || t.Text("take") != "all" {
			return verb, true
		}
		return route.TakeAll, true
	case 0:
		failVerb(t, keys)
	default:
		for _, key := range found {
			t.Has(key)
		}
		t.FailKey(found[1], fmt.Sprintf("a step has one verb; this one has %s and %s", found[0], found[1]), "make two steps of it")
	}
	return "", false
}

// failVerb says that a step has no verb, or that it is misspelt.
func failVerb(t *benchfile.Table, verbs []string) {
	for _, key := range t.Keys() {
		if near := benchfile.Nearest(key, verbs); near != "" {
			t.FailKey(key, "there is no such step", "write "+near)
			return
		}
	}
	t.Fail("", "the step has no verb", "it needs one of "+strings.Join(verbs, ", "))
}
