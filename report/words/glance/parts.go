package glance

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words"
	"minim/report/words/beside"
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
	title := words.Titled(p)
	if mark := kits.Invented(p.Kit); mark != "" {
		title = mark + clause.When(p.Title != "", ". "+p.Title)
	}
	if title != "" {
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
	s.head = append(s.head, line(label, text))
}

// wanted is "15 mL of 0.060 % w/v dye in ethanol, within 7 % (0.0558 to 0.0642)".
func wanted(p *route.Prep) string {
	if len(p.Tolerances) == 0 {
		return words.Wanted(p) + ", no tolerance given"
	}
	return words.Wanted(p) + ", " + strings.Replace(words.Within(p.Tolerances[0]), " of target (", " (", 1)
}

// chance is "99.7 in 100 inside, 95 asked for", or what a strength holds within where there is no
// tolerance.
func chance(p *route.Prep, r *route.Result, coverage float64) string {
	if len(p.Tolerances) == 0 {
		return fmt.Sprintf("%s in 100 within %s of the target", quantity.Number(100*coverage), quantity.Percent(r.HoldsWithin))
	}
	return fmt.Sprintf("%s in 100 inside", words.Shown(p, r).Inside) + askedFor(p)
}

func askedFor(p *route.Prep) string { return fmt.Sprintf(", %s asked for", asked(p)) }

// asked is the least chance that is asked for, in a hundred.
func asked(p *route.Prep) string { return quantity.Number(100 * p.LeastChance) }

// gives is "20 mL of 0.0598 % w/v, give or take 0.0028 (95 %)".
func gives(c *route.Comparison, r *route.Result) string {
	return volume(r.MadeML) + " of " + words.Shown(c.Prep, r).Sentence + " (" + quantity.Number(100*c.Settings.Coverage) + " %)"
}

// given says what a route gives and leaves over, what must not be missed of it, and why where it is not
// good enough.
func (s *Screen) given(c *route.Comparison, r *route.Result) {
	s.add("Gives", gives(c, r)+", "+leftOver(r))
	if len(c.Prep.Tolerances) > 0 && !c.Prep.GoodEnough(r) {
		s.add("Why", "spoilt by "+words.Shown(c.Prep, r).Spoilt)
	}
	s.mind(r)
}

// mind says what must not be missed of a result.
func (s *Screen) mind(r *route.Result) {
	if !r.Informative {
		s.add("Mind", r.Uninformative.String())
	}
	s.minds(&r.Notes)
	for _, b := range beside.Facts(r) {
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

// leftOver is "50.5 mL left over".
func leftOver(r *route.Result) string {
	return clause.Either(r.LeftOverML < 5e-7, "nothing", volume(r.LeftOverML)) + " left over"
}

func volume(mL float64) string { return quantity.Millilitres(quantity.Round(mL, 3)) }
