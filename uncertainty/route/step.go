package route

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// Verb is what a step does.
type Verb string

// The verbs of a step.
const (
	Weigh        Verb = "weigh"         // solute, on a balance
	UsePacket    Verb = "packet"        // the whole of a bought packet of solute
	Measured     Verb = "measure"       // a liquid solute, by volume
	Start        Verb = "start"         // from a stock
	DissolveIn   Verb = "dissolve-in"   // a measured amount of solvent
	MakeUpTo     Verb = "make-up-to"    // the mark of a vessel
	Take         Verb = "take"          // a measured volume
	Pour         Verb = "pour"          // what a vessel holds up to a mark
	Add          Verb = "add"           // a measured volume of solvent
	WeighAliquot Verb = "weigh-aliquot" // a part of the solution, on a balance
	WeighUpTo    Verb = "weigh-up-to"   // a total mass, with solvent
)

// State of an instrument before a step.
type State string

// The states of a pipette or a vessel before it is used.
const (
	// Conditioned: rinsed with what it will take, so that nothing is carried
	// over. The default.
	Conditioned State = "conditioned"
	Dry         State = "dry"
	// Wet: it holds a film of solvent.
	Wet State = "wet"
	// Used: it holds a film of what it held before.
	Used State = "used"
)

// Step is one step of a route.
type Step struct {
	Verb Verb
	// Amount is the display reading in g, the mark in mL, or a number of drops.
	Amount float64
	// Balance, Measure, Stock or Packet is what the step uses; the others are
	// nil.
	Balance *equipment.Balance
	Measure *equipment.Measure
	Stock   *Stock
	Packet  *Packet
	// Piece of the instrument, from 1; 0 when not stated.
	Piece int
	// Reading is the step's own word for how carefully is read, or "".
	Reading equipment.Reading
	// Emptying is what is done with what stays in the instrument.
	Emptying equipment.Emptying
	// State of the instrument before the step; "" is Conditioned.
	State State
	// WeighedBack: the boat is weighed again, so that nothing is left on it
	// unknown. LeftBehind in g is the most that stays on it.
	WeighedBack bool
	LeftBehind  equipment.Stated
	// SeparateTare: tare and gross are two readings.
	SeparateTare bool
	// Contraction on mixing, as a fraction of the volume.
	Contraction equipment.Stated
}

// grammar says for a verb which key names its instrument, what the amount is,
// and after which states of the work it can stand.
type grammar struct {
	instrument string
	kind       quantity.Kind
	after      []state
	then       state
}

// state is what stands on the bench between two steps.
type state string

const (
	nothing     state = "nothing yet"
	stock       state = "a stock"
	solid       state = "measured solute"
	solution    state = "a finished solution"
	aliquot     state = "an aliquot"
	mixture     state = "a solution that is being diluted"
	weighedPart state = "a weighed aliquot"
)

var verbs = []Verb{Weigh, UsePacket, Measured, Start, DissolveIn, MakeUpTo, Take, Pour, Add, WeighAliquot, WeighUpTo}

var grammars = map[Verb]grammar{
	Weigh:        {"on", quantity.Mass, []state{nothing, solid}, solid},
	UsePacket:    {"", quantity.Share, []state{nothing, solid}, solid},
	Measured:     {"with", quantity.Volume, []state{nothing, solid}, solid},
	Start:        {"", quantity.Share, []state{nothing}, stock},
	DissolveIn:   {"with", quantity.Volume, []state{solid}, solution},
	MakeUpTo:     {"in", quantity.Volume, []state{solid, aliquot}, solution},
	Take:         {"with", quantity.Volume, []state{stock, solution, mixture, aliquot}, aliquot},
	Pour:         {"from", quantity.Volume, []state{stock, solution, mixture, aliquot}, aliquot},
	Add:          {"with", quantity.Volume, []state{aliquot, mixture}, mixture},
	WeighAliquot: {"on", quantity.Mass, []state{stock, solution, mixture}, weighedPart},
	WeighUpTo:    {"on", quantity.Mass, []state{solid, weighedPart}, solution},
}

func (p *Prep) readRoute(t *benchfile.Table) *Route {
	t.Need("name", "steps")
	r := &Route{Name: t.Text("name")}
	if slices.ContainsFunc(p.Routes, func(o *Route) bool { return o.Name == r.Name && r.Name != "" }) {
		t.Fail("name", "there are two routes called \""+r.Name+"\"", "give each its own name")
	}
	at, inOrder := nothing, true
	tables := t.Tables("steps")
	for _, st := range tables {
		s, ok := p.readStep(st)
		if !ok {
			return r
		}
		inOrder = r.follows(st, at, s) && inOrder
		at = grammars[s.Verb].then
		r.Steps = append(r.Steps, s)
	}
	if inOrder {
		r.checkOptions(p, tables)
	}
	switch {
	case t.Has("steps") && len(tables) == 0:
		t.Fail("steps", "the route has no steps", "")
	case inOrder && at != solution && at != mixture:
		t.Fail("steps", fmt.Sprintf("the route ends with %s, not with a finished solution", at), "end with make-up-to, add or weigh-up-to")
	}
	return r
}

// follows checks that a step can stand where it does.
func (r *Route) follows(t *benchfile.Table, at state, s Step) bool {
	g := grammars[s.Verb]
	if !slices.Contains(g.after, at) {
		hint := "it must come first"
		if s.Verb != Start {
			after := make([]string, len(g.after))
			for i, a := range g.after {
				after[i] = string(a)
			}
			hint = "it can follow " + strings.Join(after, " or ")
		}
		t.FailKey(string(s.Verb), fmt.Sprintf("cannot come here, where there is %s", at), hint)
		return false
	}
	if s.Verb == WeighUpTo && at == weighedPart {
		zeroed := r.Steps[len(r.Steps)-1]
		if s.Balance != zeroed.Balance || max(s.Piece, 1) != max(zeroed.Piece, 1) {
			t.Fail("on", "the vessel was zeroed on another balance", "weigh the aliquot and the total on one balance")
		}
	}
	if at == solid && (s.Verb == Measured) != r.liquidSolute() && slices.Contains([]Verb{Weigh, UsePacket, Measured}, s.Verb) {
		t.FailKey(string(s.Verb), "the solute is measured by volume in one step and by mass in another", "use one of the two for all of it")
		return false
	}
	return true
}

// liquidSolute reports whether the solute was measured by volume.
func (r *Route) liquidSolute() bool {
	return slices.ContainsFunc(r.Steps, func(s Step) bool { return s.Verb == Measured })
}

// readStep reads one step; ok is false when it has no verb to go by.
func (p *Prep) readStep(t *benchfile.Table) (s Step, ok bool) {
	verb, ok := oneVerb(t)
	if !ok {
		return Step{}, false
	}
	s = Step{Verb: verb}
	g := grammars[verb]
	switch verb {
	case Start:
		s.Stock = find(t, verb, "stock", p.Stocks, func(k *Stock) string { return k.Name })
		return s, true
	case UsePacket:
		s.Packet = find(t, verb, "packet", p.Packets, func(k *Packet) string { return k.Name })
		return s, true
	case DissolveIn:
		if slices.Contains(t.Keys(), "on") {
			g.instrument, g.kind = "on", quantity.Mass
		}
	}
	s.Piece = t.Count("piece", 1)
	needInstrument(t, verb, g.instrument)
	count := 1
	if g.kind == quantity.Mass {
		s.Amount = t.Positive(string(verb), g.kind)
		if s.Balance = p.findBalance(t, g.instrument); s.Balance != nil {
			count = s.Balance.Count
		}
	} else {
		if s.Measure = p.findMeasure(t, g.instrument, verb); s.Measure != nil {
			count = s.Measure.Count
		}
		s.Amount = readVolumeOrDrops(t, verb, s.Measure)
		s.Reading = equipment.Reading(t.Word("reading", equipment.Readings()...))
	}
	s.readOptions(t)
	if s.Piece > count {
		t.Fail("piece", fmt.Sprintf("there is no piece %d of it on the bench", s.Piece), fmt.Sprintf("the kit says count = %d, or nothing for one", count))
	}
	return s, true
}

// readVolumeOrDrops reads a volume, or for a dropper a number of drops.
func readVolumeOrDrops(t *benchfile.Table, verb Verb, m *equipment.Measure) float64 {
	if m == nil || m.Kind != equipment.Dropper {
		return t.Positive(string(verb), quantity.Volume)
	}
	text := t.Text(string(verb))
	n, unit, err := quantity.Split(text)
	if text != "" && (err != nil || unit != "drops" && unit != "drop" || n != math.Trunc(n) || n < 1 || n > 10000) {
		t.Fail(string(verb), fmt.Sprintf("a dropper counts drops, found %q", text), "write \"3 drops\"")
		return 0
	}
	return n
}

// readOptions reads what a step may say beside its verb and its instrument.
func (s *Step) readOptions(t *benchfile.Table) {
	switch s.Verb {
	case Weigh:
		s.WeighedBack = t.Flag("weighed-back")
		s.LeftBehind = equipment.Stated{Value: t.NotNegative("left-behind", quantity.Mass), Known: t.Has("left-behind")}
		s.SeparateTare = t.Word("tare", "zeroed", "separate") == "separate"
		if s.WeighedBack && s.LeftBehind.Known {
			t.Fail("left-behind", "the boat is weighed back, so nothing is left on it unknown", "state one of the two")
		}
		if s.LeftBehind.Value >= s.Amount && s.Amount > 0 {
			t.Fail("left-behind", "more than was weighed cannot be left behind", "")
		}
	case Take, Pour, Measured:
		s.Emptying = s.emptying(t)
		s.State = readState(t)
	case MakeUpTo:
		s.State = readState(t)
	case Add, DissolveIn:
		if s.Balance == nil {
			s.State = readState(t)
			s.Contraction = equipment.Stated{Value: shareOf(t, "contraction", "volume"), Known: t.Has("contraction")}
		}
	}
}

func readState(t *benchfile.Table) State {
	return State(t.Word("state", string(Conditioned), string(Dry), string(Wet), string(Used)))
}

func (s *Step) emptying(t *benchfile.Table) equipment.Emptying {
	rinsed, blown := t.Flag("rinsed"), false
	if s.Verb != Pour {
		blown = t.Flag("blown-out")
	}
	kind := equipment.OneMark
	if s.Measure != nil {
		kind = s.Measure.Kind
	}
	switch {
	case blown && kind != equipment.OneMark && kind != equipment.Graduated:
		t.FailKey("blown-out", "the "+s.Measure.Name+" has no last drop to blow out", "only a glass pipette has one, one-mark or graduated")
	case rinsed && (kind == equipment.Dropper || kind == equipment.Burette):
		t.FailKey("rinsed", "what is left in the "+s.Measure.Name+" does not belong to what was measured", "leave rinsed out")
	case rinsed && blown:
		t.Fail("blown-out", "rinsed and blown out are both stated", "state what is done last")
	case rinsed:
		return equipment.Rinsed
	case blown:
		return equipment.BlownOut
	}
	return equipment.Drained
}

// checkOptions checks what depends on the steps before and after.
func (r *Route) checkOptions(p *Prep, tables []*benchfile.Table) {
	solvent := mediumOf(p.Solvent.Name)
	liquid := solvent
	for i := range r.Steps {
		s, t := &r.Steps[i], tables[i]
		if s.Stock != nil && s.Stock.Solvent != "" {
			liquid = mediumOf(s.Stock.Solvent)
		}
		switch {
		case s.Measure == nil:
			// nothing to be said of it
		case s.Emptying == equipment.Rinsed && !r.thenToAMark(i):
			t.FailKey("rinsed", "the solvent of the rinse is not measured", "rinse only into what is then made up to a mark or weighed up")
		case s.State == Used && s.Measure.SingleUse:
			t.FailKey("state", "the "+s.Measure.Name+" is single-use, a new one each time", "leave state out")
		case s.State == Used && !r.usedBefore(i):
			t.FailKey("state", "the "+s.Measure.Name+" has not been used before this step", "leave state out, or say \"wet\"")
		case s.Verb == DissolveIn && s.Contraction.Known && !r.liquidSolute():
			t.FailKey("contraction", "is stated for a solid, which takes up its specific volume", "state specific-volume in the table [solute]")
		case s.Verb == Add && liquid.name != solvent.name && !s.Contraction.Known && !alcoholic(liquid, solvent):
			t.Fail("", fmt.Sprintf("%s and %s contract on mixing by an amount that is not stated", liquid.name, solvent.name),
				"state contraction = \"2 % of volume\", or make up to a mark")
		}
		if s.Verb == MakeUpTo || s.Verb == WeighUpTo {
			liquid = solvent
		}
	}
}

// thenToAMark reports whether what receives the liquid of step i is then made up
// to a mark, or to a mass.
func (r *Route) thenToAMark(i int) bool {
	for _, s := range r.Steps[i+1:] {
		switch s.Verb {
		case Take, Pour, Measured, Weigh, UsePacket:
			continue
		}
		return s.Verb == MakeUpTo || s.Verb == WeighUpTo
	}
	return false
}

func (r *Route) usedBefore(i int) bool {
	for _, s := range r.Steps[:i] {
		if s.Measure != nil && s.piece() == r.Steps[i].piece() {
			return true
		}
	}
	return false
}

// piece is the piece that a step uses.
func (s *Step) piece() pieceOf { return pieceOf{s.Measure, max(s.Piece, 1)} }

// needInstrument asks for the key that names the instrument, and says so when
// another verb's key stands in its place.
func needInstrument(t *benchfile.Table, verb Verb, key string) {
	if slices.Contains(t.Keys(), key) {
		return
	}
	for _, other := range []string{"on", "in", "with", "from"} {
		if slices.Contains(t.Keys(), other) {
			t.FailKey(other, fmt.Sprintf("%s does not say %s what, but %s what", verb, other, key), "write "+key)
			return
		}
	}
	t.Need(key)
}

// oneVerb finds the verb of a step.
func oneVerb(t *benchfile.Table) (Verb, bool) {
	var found []Verb
	for _, key := range t.Keys() {
		if slices.Contains(verbs, Verb(key)) {
			found = append(found, Verb(key))
		}
	}
	switch len(found) {
	case 1:
		return found[0], true
	case 0:
		failVerb(t)
	default:
		for _, v := range found {
			t.Has(string(v))
		}
		t.FailKey(string(found[1]), fmt.Sprintf("a step has one verb; this one has %s and %s", found[0], found[1]), "make two steps of it")
	}
	return "", false
}

// failVerb says that a step has no verb, or that it is misspelt.
func failVerb(t *benchfile.Table) {
	words := make([]string, len(verbs))
	for i, v := range verbs {
		words[i] = string(v)
	}
	for _, key := range t.Keys() {
		if near := benchfile.Nearest(key, words); near != "" {
			t.FailKey(key, "there is no such step", "write "+near)
			return
		}
	}
	t.Fail("", "the step has no verb", "it needs one of "+strings.Join(words, ", "))
}

func (p *Prep) findBalance(t *benchfile.Table, key string) *equipment.Balance {
	name := t.Text(key)
	b := p.Kit.Balance(name)
	if name != "" && b == nil {
		p.failInstrument(t, key, name, "balance", p.balances())
	}
	return b
}

func (p *Prep) findMeasure(t *benchfile.Table, key string, verb Verb) *equipment.Measure {
	name := t.Text(key)
	m := p.Kit.Measure(name)
	switch {
	case name == "":
	case m == nil:
		p.failInstrument(t, key, name, "vessel or pipette", p.measures(verb))
	case fits(m, verb):
	case verb == MakeUpTo:
		t.Fail(key, "a solution cannot be made up in the "+name, choose(p.measures(verb)))
	case verb == Pour:
		t.Fail(key, "the "+name+" is not a vessel to pour from", choose(p.measures(verb)))
	default:
		t.Fail(key, "the "+name+" holds a volume but does not measure one out", choose(p.measures(verb)))
	}
	return m
}

// fits reports whether a verb can use an instrument.
func fits(m *equipment.Measure, verb Verb) bool {
	if verb == MakeUpTo || verb == Pour {
		return m.Kind.Receives()
	}
	return m.Kind.Delivers()
}

// measures lists the instruments of the kit that a verb can use.
func (p *Prep) measures(verb Verb) (names []string) {
	for _, m := range p.Kit.Measures {
		if fits(m, verb) {
			names = append(names, m.Name)
		}
	}
	return names
}

func (p *Prep) balances() (names []string) {
	for _, b := range p.Kit.Balances {
		names = append(names, b.Name)
	}
	return names
}

func choose(among []string) string {
	if len(among) == 0 {
		return "the kit has none that fits"
	}
	return "choose from " + strings.Join(among, ", ")
}

// failInstrument says that the kit has no such instrument, or has one of that
// name that is of another sort.
func (p *Prep) failInstrument(t *benchfile.Table, key, name, noun string, fitting []string) {
	if slices.Contains(p.Kit.Names(), name) {
		t.Fail(key, fmt.Sprintf("the %s is not a %s", name, noun), choose(fitting))
		return
	}
	t.FailChoice(key, noun+" in the kit", name, fitting, "")
}
