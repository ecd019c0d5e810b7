package words

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/note"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// Sheet is what a bench sheet says: what comes before the steps, the steps, boxes to write in,
// what to mind all along, and what comes of it. Room says how far off each reading may be.
func (p *Paper) Sheet(room []record.Room) (title string, blocks []page.Block) {
	title = "Bench sheet: " + p.subject()
	form := func(class string, row []string, head ...string) *page.Table {
		return &page.Table{Head: head, Numbers: len(head), Class: class, Rows: page.Rows([][]string{row})}
	}
	return title, slices.Concat(p.headed(title, p.sheetBelow()),
		[]page.Block{form("form", []string{"", p.Date, "", "", "", ""}, "this batch", "date", "by", "bench at start, °C", "start", "end")},
		p.mind(),
		section("Before step 1", prose(strings.Join(p.cautions(), " ")+" Read the safety data sheets of all that is used; wear gloves and goggles.")),
		section("You need", page.Facts{List: p.needs()}),
		section("All along", page.Bullets{Items: p.habits(room)}),
		section("Steps", p.stepTable(room)),
		section("You get", prose(p.gives()), form("form remarks", []string{"", ""}, "what was spoilt, and why; other remarks", "checked by")))
}

// SheetFoot stands on every page of a sheet.
func (p *Paper) SheetFoot() string { return "Bench sheet: " + p.subject() + " · batch ____________" }

func (p *Paper) sheetBelow() string {
	parts := clauses{wantedWithin(p.Prep), "route: " + p.route().Name}
	parts.Put("", p.Prep.Note)
	return strings.Join(parts, " · ")
}

// stepTable is the steps with what to take care of, what is planned, boxes, and from
// where to begin again.
func (p *Paper) stepTable(room []record.Room) page.Block {
	if !planIsInside(p) {
		room = nil
	}
	t := page.Work{Do: "do", Care: "take care", Planned: "planned", Read: "read", Sign: "initials, time", Again: "again from"}
	b, cared := newSheetBench(p), make(map[string]int)
	for i := range p.route().Steps {
		s := &p.route().Steps[i]
		step := page.WorkStep{Do: capital(b.do(i)), Care: careOnce(capital(strings.Join(b.care(i), "; ")), i+1, cared), Planned: "–", Again: strconv.Itoa(b.again(i))}
		if s.Balance != nil || s.Measure != nil {
			step.Planned, step.Room, step.Boxes = measured(s), roomFor(s, room, i+1), boxes(s)
		}
		t.Steps = append(t.Steps, step)
	}
	last := b.lastRow()
	t.Steps = append(t.Steps, page.WorkStep{Do: last[0], Care: last[1], Planned: "–", Again: "–"})
	return t
}

// boxes are one for each reading of a step, with the unit of what is planned.
func boxes(s *route.Step) (list []page.WriteBox) {
	_, unit, _ := strings.Cut(measured(s), " ")
	of := clauses{}
	of.Add(s.SeparateTare, "empty")
	of = append(of, when(s.SeparateTare || s.WeighedBack, "full"))
	of.Add(s.WeighedBack, "emptied")
	for _, what := range of {
		list = append(list, page.WriteBox{Of: what, Unit: unit})
	}
	return list
}

// planIsInside reports whether the batch is inside when all goes as planned, so that
// limits beside the planned readings mean something.
func planIsInside(p *Paper) bool {
	return len(p.Prep.Tolerances) > 0 && p.Prep.GoodEnough(p.result()) && findingOf(p.Prep, p.result(), false) != notPure
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
		if r.Step != number || r.Fixed || !r.Any {
			continue
		}
		low, high := *s, *s
		low.Amount, high.Amount = r.Low, r.High
		switch {
		case r.LowFree && r.HighFree:
			return "any will do"
		case r.Low == r.High:
			return "only so"
		case r.LowFree:
			return "at most " + measured(&high)
		case r.HighFree:
			return "at least " + measured(&low)
		}
		return fmt.Sprintf("%s to %s", measured(&low), measured(&high))
	}
	return ""
}

// habits hold at every step.
func (p *Paper) habits(room []record.Room) []string {
	first := "Write what you read and go on with it, even where it is not as planned; take nothing out of a solution again." + when(planIsInside(p) && len(room) > 0,
		" If one reading alone differs, and is within the limits beside the planned one, the batch stays inside; if several differ, the record tells.")
	b := newSheetBench(p)
	list := []string{first,
		"Spoilt is a step with a spill, a lost zero, a level above the top line, air drawn into a pipette" + either(b.bringsSolid(), ", or solid that does not dissolve", ", or what does not mix") + ": write why in the box, take clean dry pieces, and begin again from the step in the last column.",
		"Label bottles before they are filled. Each left-over goes with its rinses to its own labelled waste, none back, none down the drain." + b.wasteHabits(),
	}
	list = append(list, b.orderHabits()...)
	if p.Prep.Bench.Temperature.Known {
		list = append(list, "The bench is taken to be at "+temperature(p.Prep.Bench.Temperature.Value, p.Prep.Bench.Within)+", and the liquids as well.")
	}
	return list
}

// gives says what comes of it.
func (p *Paper) gives() string {
	r := p.result()
	s := state(r)
	parts := clauses{fmt.Sprintf("%s of %s, of which %s are wanted; %s.",
		volume(r.MadeML), s.sentence(p.Prep.Target.Unit.Name), quantity.Millilitres(p.Prep.Volume), leftInAll(r))}
	shifted := shifts(r)
	parts.Add(shifted != "", "The marks alone would give %s; already in the figure%s: %s.", quantity.Decimal(r.Intended, 3), when(p.finding() == "" && !mendable(r), ", with nothing to correct"), shifted)
	parts.Put("", "What was read goes into the record, from which follows what was really made.")
	parts.Add(len(r.Inside) > 0, "If every reading is as planned, the chance of being inside the tolerance is %s in 100%s.", chanceOf(p.Prep, r), CloseCall(p.Prep, r))
	return strings.Join(parts, " ")
}

// mendable reports whether what shifts a strength is in part a way of using an instrument of which
// the notes say what to do instead.
func mendable(r *route.Result) bool {
	return slices.ContainsFunc(r.Notes.Warnings, func(n note.Note) bool {
		return slices.Contains([]string{"in-runs-out", "last-drop-left", "carried-over"}, n.Code)
	})
}
