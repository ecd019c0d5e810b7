package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"minim/equipment"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// SheetHTML is a page to work from as HTML: what is needed, cautions, the steps with what
// to take care of at each, boxes for what was really read, by whom and when, and what
// comes of it. Room says how far off each reading may be; it may be empty.
func SheetHTML(p *Paper, room []record.Room) ([]byte, error) { return p.sheet(room).html() }

// SheetMarkdown is the same in Markdown.
func SheetMarkdown(p *Paper, room []record.Room) []byte { return p.sheet(room).markdown("") }

func (p *Paper) sheet(room []record.Room) *document {
	d := &document{Title: "Bench sheet: " + p.subject(), Kind: "sheet"}
	d.stops(p.Prep)
	d.add(headline{"Bench sheet: " + p.subject(), p.sheetBelow()})
	d.add(tabular{Head: []string{"this batch", "date", "by", "bench at start, °C", "start", "end"}, Numbers: 6, Class: "form", Marked: -1, Rows: [][]string{{"", p.Date, "", "", "", ""}}})
	d.section("Before step 1", paragraph{Text: strings.Join(Cautions(p.Prep), " ") + " Read the safety data sheets of all that is used; wear gloves and goggles."})
	d.section("You need", termList{p.needs()})
	d.section("Steps", p.stepTable(room))
	d.add(tabular{Head: []string{"what was spoilt, and why; other remarks", "checked by"}, Numbers: 2, Class: "form remarks", Marked: -1, Rows: [][]string{{"", ""}}})
	d.section("All along", bulletList{p.habits(planIsInside(p) && len(room) > 0)})
	d.section("You get", paragraph{Text: p.gives()})
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

// stepTable is the steps with what to take care of, what is planned, boxes, and from
// where to begin again.
func (p *Paper) stepTable(room []record.Room) tabular {
	if !planIsInside(p) {
		room = nil
	}
	t := tabular{Head: []string{"", "do", "take care", "planned", "read", "initials, time", "again from"}, Numbers: 7, Class: "form steps", Marked: -1}
	b, cared := newBench(p), make(map[string]int)
	for i := range p.route().Steps {
		s := &p.route().Steps[i]
		planned, read := "–", "–"
		if s.Balance != nil || s.Measure != nil {
			planned, read = measured(s)+roomFor(s, room, i+1), ""
		}
		t.Rows = append(t.Rows, []string{strconv.Itoa(i + 1), capital(b.do(i)), careOnce(capital(strings.Join(p.care(i), "; ")), i+1, cared), planned, read, "", strconv.Itoa(b.again(i))})
	}
	t.Rows = append(t.Rows, []string{strconv.Itoa(len(t.Rows) + 1), "Close the last bottle; date and initials on its label", "Each left-over to its own labelled waste; glass, balance and bench clean", "–", "–", "", "–"})
	return t
}

// planIsInside reports whether the batch is inside when all goes as planned, so that
// limits beside the planned readings mean something.
func planIsInside(p *Paper) bool {
	return len(p.Prep.Tolerances) > 0 && p.result().Informative && p.result().Inside[0].Normal >= p.Prep.LeastChance
}

// careOnce says the same only once, and then where it was said.
func careOnce(care string, step int, cared map[string]int) string {
	if before := cared[care]; before > 0 {
		return fmt.Sprintf("As in step %d", before)
	}
	cared[care] = step
	return care
}

// roomFor says between which readings the batch stays inside.
func roomFor(s *route.Step, room []record.Room, number int) string {
	for i := range room {
		r := &room[i]
		if r.Step != number || r.Fixed || !r.Any || r.LowFree && r.HighFree || r.Low == r.High {
			continue
		}
		low, high := *s, *s
		low.Amount, high.Amount = r.Low, r.High
		switch {
		case r.LowFree:
			return "; at most " + measured(&high)
		case r.HighFree:
			return "; at least " + measured(&low)
		}
		return fmt.Sprintf("; %s to %s", measured(&low), measured(&high))
	}
	return ""
}

// care is what to mind at a step (common practice; the sizes of these mistakes are in
// the measurement model where it counts them).
func (p *Paper) care(i int) []string {
	s := &p.route().Steps[i]
	switch s.Verb {
	case route.Weigh, route.AddSolute:
		return []string{"no draught; read when the display stands still, and write what it shows; the assay is counted already"}
	case route.WeighAliquot, route.WeighUpTo:
		return []string{"read at once when the display stands still; take nothing out; no drops on the outside"}
	case route.MakeUpTo:
		return p.filling(i)
	case route.Take, route.Pour, route.Measured, route.Strengthen:
		return delivering(s)
	case route.Add, route.DissolveIn:
		if s.Measure != nil {
			return delivering(s)
		}
		return []string{"read when the display stands still"}
	case route.UsePacket:
		return []string{"rinse the packet out with the solvent"}
	case route.Start:
		return []string{"look at its label and its date"}
	}
	return []string{"rinse its vessel with what is added"}
}

// filling is what to mind when something is made up to a mark.
func (p *Paper) filling(i int) []string {
	s := &p.route().Steps[i]
	list := []string{"bottom of the meniscus at the line, at eye level; last drops with a dropper, none above it; read before mixing"}
	if s.Measure.Division == 0 {
		list = []string{"bottom of the meniscus at the mark, at eye level, the last drops with a dropper, none above it; write a tick, or what else happened"}
	}
	if p.solidBefore(i) {
		list = append([]string{"dissolve it in a part first, until no solid is left; let it come to the temperature of the bench"}, list...)
	}
	return append(list, stateOf(s)...)
}

// solidBefore reports whether what is made up has to dissolve first.
func (p *Paper) solidBefore(i int) bool {
	return i > 0 && slices.Contains([]route.Verb{route.Weigh, route.UsePacket}, p.route().Steps[i-1].Verb)
}

// delivering is what to mind with an instrument that measures out.
func delivering(s *route.Step) []string {
	list := stateOf(s)
	if len(list) == 0 && s.Measure.Kind != equipment.Dropper {
		list = []string{"rinse the " + pipetteOrVessel(s) + " with a little of the same first, to waste"}
	}
	switch s.Measure.Kind {
	case equipment.Dropper:
		return append(list, "hold it upright; count")
	case equipment.Piston, equipment.Syringe, equipment.Transfer:
		list = append(list, "no bubble; slow and even; wipe the tip")
	case equipment.OneMark, equipment.Graduated, equipment.Burette:
		list = append(list, "no bubble; wipe the tip; bottom of the meniscus at eye level", running(s))
	default:
		list = append(list, "bottom of the meniscus at eye level; pour, and let it drain")
	}
	if s.Emptying == equipment.Rinsed {
		list = append(list, "rinse it into the receiver")
	}
	return list
}

// pipetteOrVessel is what an instrument is called in a word.
func pipetteOrVessel(s *route.Step) string {
	switch s.Measure.Kind {
	case equipment.OneMark, equipment.Graduated, equipment.Piston, equipment.Transfer:
		return "pipette"
	}
	return string(s.Measure.Kind)
}

// running says how far a pipette runs out: to its tip when it delivers all that it
// holds, and else from its top line to the one that is so much further down.
func running(s *route.Step) string {
	switch {
	case s.Amount < s.Measure.Capacity*(1-1e-9):
		return "from the top line down by " + measured(s) + ", which is what to write; the rest to waste"
	case s.Emptying == equipment.BlownOut:
		return "fill to the top line; let it run out at the wall, wait; then blow the last drop out"
	}
	return "fill to the top line; let it run out at the wall, wait 5 s or as marked on it; leave the last drop in the tip"
}

// stateOf says in what state the instrument must be, where it is not rinsed.
func stateOf(s *route.Step) []string {
	switch s.State {
	case route.Wet:
		return []string{"it is still wet with solvent"}
	case route.Used:
		return []string{"not rinsed since its last use"}
	case route.Dry:
		return []string{"clean and dry"}
	}
	return nil
}

// habits hold at every step.
func (p *Paper) habits(hasRoom bool) []string {
	first := "Write what you read and go on with it, even where it is not as planned; take nothing out of a solution again."
	if hasRoom {
		first += " If one reading alone differs, and is within the limits beside the planned one, the batch stays inside; if several differ, the record tells."
	}
	list := []string{first,
		"Spoilt is a step with a bubble, a spill, a lost zero, a level above the top line, or solid that does not dissolve: write why in the box, take clean dry pieces, and begin again from the step in the last column.",
		"Label bottles before they are filled. Each left-over goes with its rinses to its own labelled waste, none back, none down the drain.",
	}
	if p.Prep.Bench.Temperature.Known {
		list = append(list, "The bench is taken to be at "+temperature(p.Prep.Bench.Temperature.Value, p.Prep.Bench.Within)+", and the liquids as well.")
	}
	return list
}

// gives says what comes of it.
func (p *Paper) gives() string {
	r := p.result()
	s := State(r)
	text := fmt.Sprintf("%s of %s, of which %s are wanted; left over in all %s.", volume(r.MadeML), s.sentence(p.Prep.Target.Unit.Name), equipment.Millilitres(p.Prep.Volume), volume(r.LeftOverML))
	if shifted := shifts(r); shifted != "" {
		text += fmt.Sprintf(" The marks alone would give %s; already in the figure, with nothing to correct: %s.", limit(roundSignificant(r.Intended, 3)), shifted)
	}
	for _, mind := range p.minds() {
		text += " " + mind
	}
	text += " What was read goes into the record, from which follows what was really made."
	if len(r.Inside) > 0 {
		text += fmt.Sprintf(" If every reading is as planned, the chance of being inside the tolerance is %s in 100.", InHundred(r.Chance(), p.Prep.LeastChance))
	}
	return text
}
