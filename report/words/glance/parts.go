package glance

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/report/words/kits"
	"minim/report/words/note"
	"minim/uncertainty/route"
)

// opened is a screen that begins with what may not meet, what is supposed to be other than it is,
// and what is wanted.
func opened(p *route.Prep) *Screen {
	s := new(Screen)
	for _, text := range words.Stops(p) {
		s.head = append(s.head, page.Paragraph{Text: text})
	}
	if mark := kits.Invented(p.Kit); mark != "" {
		s.head = append(s.head, page.Paragraph{Text: mark})
	}
	if title := words.Titled(p); title != "" {
		s.head = append(s.head, page.Paragraph{Text: title})
	}
	if len(p.Changes) > 0 {
		s.say("Changed", strings.Join(words.ChangeTexts(p), "; "))
	}
	s.say("Wanted", wanted(p))
	return s
}

// say adds a line at the top.
func (s *Screen) say(label, text string) {
	s.head = append(s.head, page.Facts{List: []fact{{Label: label, Text: text}}, At: labels, Colon: true})
}

// wanted is "15 mL of 0.060 % w/v dye in ethanol, within 7 % (0.0558 to 0.0642)".
func wanted(p *route.Prep) string {
	if len(p.Tolerances) == 0 {
		return words.Wanted(p) + ", no tolerance given"
	}
	return words.Wanted(p) + ", " + strings.Replace(words.Within(p.Tolerances[0]), " of target (", " (", 1)
}

// chance is "99.7 in 100 inside, asked for 95", or what a strength holds within where there is no
// tolerance.
func chance(p *route.Prep, r *route.Result, coverage float64) string {
	if len(p.Tolerances) == 0 {
		return fmt.Sprintf("%s in 100 within %s of the target", quantity.Number(100*coverage), quantity.Percent(r.HoldsWithin))
	}
	return fmt.Sprintf("%s in 100 %s, asked for %s", words.Shown(p, r).Inside, inside(p), asked(p))
}

// inside is "inside", or the limits where they were stated one by one.
func inside(p *route.Prep) string {
	return clause.Either(p.Tolerances[0].Stated, p.Tolerances[0].Text, "inside")
}

// asked is the least chance that is asked for, in a hundred.
func asked(p *route.Prep) string { return quantity.Number(100 * p.LeastChance) }

// strength is "0.0598 % w/v, give or take 0.0028 (95 %)".
func strength(p *route.Prep, r *route.Result, coverage float64) string {
	return words.Shown(p, r).Sentence + " (" + quantity.Number(100*coverage) + " %)"
}

// given says what a route gives, what must not be missed of it, and why where it is not good enough.
func (s *Screen) given(c *route.Comparison, r *route.Result, made string) {
	f := words.Shown(c.Prep, r)
	s.add("Strength", strength(c.Prep, r, c.Settings.Coverage)+"; "+made)
	if !r.Informative {
		s.add("Mind", r.Uninformative.String())
	}
	if len(c.Prep.Tolerances) > 0 && !c.Prep.GoodEnough(r) {
		s.add("Why", "spoilt by "+f.Spoilt)
	}
	s.minds(&r.Notes)
	for _, b := range words.BesideFacts(r) {
		if b.Label != evaporation && !slices.ContainsFunc(note.Joined(r.Notes.Warnings), func(w string) bool { return strings.Contains(b.Text, w) }) {
			s.add(b.Label, b.Text)
		}
	}
}

// evaporation is counted, and stands with what is assumed.
const evaporation = "Evaporation"

// add adds a line below the verdict.
func (s *Screen) add(label, text string) { s.facts = append(s.facts, fact{Label: label, Text: text}) }

// minds adds the warnings, which are never left out.
func (s *Screen) minds(n *equipment.Notes) {
	if texts := note.Joined(n.Warnings); len(texts) > 0 {
		s.add("Mind", strings.Join(texts, "; "))
	}
}

// rests counts what the figures rest on.
func (s *Screen) rests(n *equipment.Notes) {
	s.hidden = append(s.hidden, count{len(n.Assumed), "assumed"}, count{len(n.FromMemory), "from memory"}, count{len(n.NotCounted), "not counted"})
}

// made is "20 mL made, 50.5 mL left over".
func made(r *route.Result) string {
	left := clause.Either(r.LeftOverML < 5e-7, "nothing", volume(r.LeftOverML))
	return volume(r.MadeML) + " made, " + left + " left over"
}

func volume(mL float64) string { return quantity.Millilitres(quantity.Round(mL, 3)) }
