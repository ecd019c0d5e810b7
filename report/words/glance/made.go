package glance

import (
	"fmt"

	"minim/report/page"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// The most deviations from the plan, and readings still to come, that are told.
const mostEffects, mostRoom = 3, 4

// RecordIt is what to do next about a batch that can be corrected.
const RecordIt = "once that is done, record it: --all shows how"

// Made is the screen of a batch.
func Made(b *words.Batch) *Screen {
	s, c := opened(b.Prep), b.Comparison()
	if text := words.PlanFirst(b); text != "" {
		s.say("First", text)
	}
	s.answer(c, &b.AsMade, words.MadeWord(b), b.Made.Made.Name)
	s.is(b, c)
	s.record(b)
	s.hidden = []count{{len(b.Entries), "recorded lines"}}
	notes := b.AsMade.Notes
	switch {
	case b.NoWay != nil:
		s.noWay(b.NoWay)
	case b.Rescue != nil:
		s.correction(b)
	}
	s.rests(&notes)
	s.hazards = words.CautionsInShort(b.Prep, words.WithoutLadder(&b.AsMade), b.Rescue)
	return s
}

// is says what the batch is, and what makes it differ from the plan.
func (s *Screen) is(b *words.Batch, c *route.Comparison) {
	word := clause.Either(b.Finished(), "Made", "Makes")
	s.add(word, gives(c, &b.AsMade)+", "+leftOver(&b.AsMade))
	s.mind(&b.AsMade)
	s.add("Plan", words.AgainstPlan(b))
	for i, e := range b.Effects {
		if i == mostEffects {
			s.hidden = append(s.hidden, count{len(b.Effects) - i, "deviations"})
			break
		}
		s.add("", words.EffectWords(b, e))
	}
}

// record says what the record leaves open, and how far off readings still to come may be.
func (s *Screen) record(b *words.Batch) {
	for _, gap := range words.Gaps(b.Record) {
		s.add("Mind", gap)
	}
	for i, room := range words.RoomLines(b) {
		if i == mostRoom {
			break
		}
		s.add(clause.When(i == 0, "To come"), room.Label+" "+room.Text)
	}
}

// correction adds the way by which the batch can be corrected below what it is.
func (s *Screen) correction(b *words.Batch) {
	r := b.Rescue
	way := &r.Results[r.Verdict.Use]
	s.below = append(s.below,
		hanging(r.Finding().String(), way.Route.Name+": "+chance(r.Prep, way, r.Settings.Coverage)+words.CloseCall(r.Prep, way)),
		page.Steps{First: words.ShownFrom(r) + 1, Items: words.WayInstructions(r, r.Verdict.Use)},
		line("Gives", gives(r.Comparison, way)+setAside(r, r.Verdict.Use)))
	s.hidden = append(s.hidden, count{len(r.Results) - 1, "other ways"})
	if inside := words.Shown(r.Prep, way).Inside; inside != "" {
		s.verdict.Text += fmt.Sprintf("; corrected: %s in 100", inside)
	}
}
