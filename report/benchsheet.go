package report

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/uncertainty/route"
)

// SheetHTML is a page to work from as HTML: what is needed, the steps with what to watch
// at each, boxes for what was really read, by whom and when, and cautions.
func SheetHTML(p *Paper) ([]byte, error) { return p.sheet().html() }

// SheetMarkdown is the same in Markdown.
func SheetMarkdown(p *Paper) []byte { return p.sheet().markdown("") }

func (p *Paper) sheet() *document {
	d := &document{Title: "Bench sheet: " + p.subject(), Kind: "sheet"}
	d.add(headline{"Bench sheet: " + p.subject(), p.sheetBelow()})
	d.add(tabular{Head: []string{"batch", "date", "by", "bench, °C", "from", "to"}, Numbers: 6, IsForm: true, Marked: -1, Rows: [][]string{{"", p.Date, "", "", "", ""}}})
	d.section("You need", termList{p.needs()})
	d.section("Steps", p.stepTable())
	d.section("At every step", bulletList{p.habits()})
	d.section("You get", paragraph{Text: p.gives()})
	d.section("Cautions", paragraph{Text: strings.Join(Cautions(p.Prep), " ")})
	d.add(paragraph{Text: fmt.Sprintf("minim %s. What was read goes into a record (minim new --record), which says what was really made.", p.Origin.Version), Small: true})
	return d
}

func (p *Paper) sheetBelow() string {
	text := Wanted(p.Prep)
	if len(p.Prep.Tolerances) > 0 {
		text += ", " + tolerance(p.Prep.Tolerances[0])
	}
	text += " · route: " + p.route().Name
	if p.Prep.Note != "" {
		text += " · " + p.Prep.Note
	}
	return text
}

// needs lists materials and instruments.
func (p *Paper) needs() []term {
	r, q := p.result(), p.Prep
	var list []term
	if usesSolute(p.route()) {
		list = append(list, term{q.Solute.Name, grams(r.SoluteGrams) + assayWords(q)})
	}
	for _, s := range p.route().Steps {
		switch {
		case s.Stock != nil:
			list = append(list, term{s.Stock.Name, fmt.Sprintf("a stock of %s %s", limit(s.Stock.Strength.Value), s.Stock.Unit.Name)})
		case s.Packet != nil:
			list = append(list, term{s.Packet.Name, "a packet of " + q.Solute.Name})
		}
	}
	list = append(list, term{q.Solvent.Name, "about " + volume(min(q.Volume, r.MadeML)+r.LeftOverML) + ", and some for rinsing"})
	var names []string
	for _, row := range p.instrumentRows() {
		names = append(names, row[0])
	}
	return append(list, term{"instruments", strings.Join(names, ", ")}, term{"besides", p.besides()})
}

func usesSolute(r *route.Route) bool {
	return slices.ContainsFunc(r.Steps, func(s route.Step) bool {
		return s.Verb == route.Weigh || s.Verb == route.Measured || s.Verb == route.AddSolute
	})
}

func assayWords(q *route.Prep) string {
	text := ""
	if a := q.Solute.Assay; a.Known {
		text = fmt.Sprintf(", assay %s", Percent(a.Value))
		if a.Distribution != nil {
			low, high := a.Distribution.Support()
			if low > 0 && high < 2 {
				text = fmt.Sprintf(", assay %s to %s", Percent(low), Percent(high))
			}
		}
	}
	return text
}

// besides is what no kit lists.
func (p *Paper) besides() string {
	parts := []string{"a clean dry bottle for each solution", "tissue"}
	weighs := false
	for _, s := range p.route().Steps {
		weighs = weighs || s.Verb == route.Weigh || s.Verb == route.AddSolute
	}
	if weighs {
		parts = append(parts, "a weighing boat")
	}
	return series(parts, "and")
}

// stepTable is the steps with what to watch, what is planned, and boxes.
func (p *Paper) stepTable() tabular {
	t := tabular{Head: []string{"step", "do", "watch", "planned", "read", "by, at"}, Numbers: 6, IsForm: true, Marked: -1}
	lines := Instructions(p.prep(), p.route())
	for i := range p.route().Steps {
		s := &p.route().Steps[i]
		planned, read := "–", "–"
		if s.Balance != nil || s.Measure != nil {
			planned, read = measured(s), ""
		}
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), capital(lines[i]), capital(strings.Join(p.watch(i), "; ")), planned, read, ""})
	}
	return t
}

// watch is what to mind at a step (common practice; the sizes of these mistakes are in
// the measurement model where it counts them).
func (p *Paper) watch(i int) []string {
	s := &p.route().Steps[i]
	switch s.Verb {
	case route.Weigh, route.AddSolute:
		return append(weighing(s), "write what the display shows, not what was wanted")
	case route.WeighAliquot, route.WeighUpTo:
		return []string{"wait until the display stands still", "no drops on the rim", "write what the display shows"}
	case route.MakeUpTo:
		return filling(s, p.solidBefore(i))
	case route.Take, route.Pour, route.Measured, route.Strengthen:
		return append(mixedFirst(p.route(), i), delivering(s)...)
	case route.Add, route.DissolveIn:
		if s.Measure != nil {
			return delivering(s)
		}
		return []string{"wait until the display stands still"}
	case route.UsePacket:
		return []string{"rinse the packet out with the solvent"}
	case route.Start:
		return []string{"look at its label and its date"}
	}
	return []string{"rinse its vessel with what is added"}
}

func weighing(s *route.Step) []string {
	list := []string{"zero with the boat on", "wait until the display stands still"}
	switch {
	case s.SeparateTare:
		list[0] = "read the boat empty, then full"
	case s.WeighedBack:
		list = append(list, "weigh the emptied boat as well")
	default:
		list = append(list, "tap the boat empty")
	}
	return list
}

// solidBefore reports whether what is made up has to dissolve first.
func (p *Paper) solidBefore(i int) bool {
	return i > 0 && slices.Contains([]route.Verb{route.Weigh, route.UsePacket}, p.route().Steps[i-1].Verb)
}

func filling(s *route.Step, dissolves bool) []string {
	var list []string
	if dissolves {
		list = append(list, "dissolve in less first, and let it come to the temperature of the bench")
	}
	return append(list, "bottom of the meniscus at the mark, at eye level", "no drops above the mark")
}

// mixedFirst says to mix a solution that has stood.
func mixedFirst(r *route.Route, i int) []string {
	if i > 0 && r.Begins(i) && r.Finished(i-1) {
		return []string{"mix again before taking"}
	}
	return nil
}

// delivering is what to mind with an instrument that measures out.
func delivering(s *route.Step) []string {
	k := s.Measure
	list := ready(s)
	switch k.Kind {
	case equipment.Dropper:
		return append(list, "hold it upright; count aloud")
	case equipment.Piston, equipment.Syringe, equipment.Transfer:
		return append(list, "no bubble; slow and even; wipe the tip")
	case equipment.OneMark, equipment.Graduated, equipment.Burette:
		list = append(list, "no bubble; wipe the tip; bottom of the meniscus at eye level", running(s))
	default:
		list = append(list, "bottom of the meniscus at eye level", "pour, and let it drain")
	}
	if s.Emptying == equipment.Rinsed {
		list = append(list, "rinse it into the receiver")
	}
	return list
}

// running says how far a pipette runs out: to its tip when it delivers all that it
// holds, and else from its upper mark to the one that is so much further down.
func running(s *route.Step) string {
	switch {
	case s.Amount < s.Measure.Capacity*(1-1e-9):
		return "from the top mark down by " + measured(s) + ", not to the tip"
	case s.Emptying == equipment.BlownOut:
		return "let it run out, touch the wall, wait; then blow the last drop out"
	}
	return "let it run out, touch the wall, wait; do not blow"
}

// ready says in what state the instrument must be.
func ready(s *route.Step) []string {
	switch s.State {
	case route.Wet:
		return []string{"it is still wet with solvent"}
	case route.Used:
		return []string{"not rinsed since its last use"}
	case route.Dry:
		return []string{"clean and dry"}
	}
	return []string{"rinse it first with what it is to take"}
}

// habits hold at every step.
func (p *Paper) habits() []string {
	list := []string{
		"Write each reading down at once, as it is, with initials and the time. A reading other than planned is no mistake; one that is not written down is.",
		"After a spoilt step (a bubble, a spill, past the mark) write why, and do it again from the step that the record allows.",
		"Label each bottle before it is filled.",
	}
	if p.Prep.Bench.Temperature.Known {
		list = append(list, "The bench is taken to be at "+temperature(p.Prep.Bench.Temperature.Value, p.Prep.Bench.Within)+"; let everything come to it.")
	}
	return list
}

// gives says what comes of it.
func (p *Paper) gives() string {
	r := p.result()
	s := State(r)
	text := fmt.Sprintf("%s of %s; left over in all %s.", volume(r.MadeML), s.sentence(p.Prep.Target.Unit.Name), volume(r.LeftOverML))
	if len(r.Inside) > 0 {
		text += fmt.Sprintf(" The chance of being inside the tolerance is %s in 100.", InHundred(r.Chance(), p.Prep.LeastChance))
	}
	return text + " What is left over goes into its own labelled container, not down the drain."
}
