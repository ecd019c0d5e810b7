package glance

import (
	"fmt"

	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/rescue"
)

// Rescued is the screen of the ways to correct a solution at hand.
func Rescued(r *rescue.Rescue) *Screen {
	s := opened(r.Prep)
	s.say("There is", words.BatchWords(r))
	s.corrected(r)
	s.rests(&r.Notes)
	s.hazards = words.CautionsInShort(r.Prep, words.WithoutLadder(&r.Results[r.Verdict.Use]), nil)
	return s
}

// corrected is the way that is recommended, and the others.
func (s *Screen) corrected(r *rescue.Rescue) {
	c, used := r.Comparison, &r.Results[r.Verdict.Use]
	s.answer(c, used, r.Finding().String(), used.Route.Name)
	if r.LeavesIt() {
		s.verdict = fact{Label: r.Finding().String() + ":", Text: chance(c.Prep, used, c.Settings.Coverage)}
	} else {
		s.first, s.steps = words.ShownFrom(r)+1, words.WayInstructions(r, r.Verdict.Use)
		s.add("Gives", gives(c, used)+setAside(r, r.Verdict.Use))
	}
	s.mind(used)
	s.hidden = append(s.hidden, count{len(r.NotTried), "not tried"})
	if len(r.Results) > 1 {
		s.ways(r)
	}
}

func setAside(r *rescue.Rescue, way int) string {
	if aside := r.SetAside(way); aside > 1e-9 {
		return fmt.Sprintf(", %s set aside", volume(aside))
	}
	return ""
}

// ways are a table of the ways.
func (s *Screen) ways(r *rescue.Rescue) {
	s.rowName = "way"
	s.table = &page.Table{Head: []string{"way", insideHead(r.Prep), "makes", "set aside", "why not"}, Numbers: 1, WordsLast: true, Indent: 2, Most: 24, Least: 12}
	for i := range r.Results {
		way := &r.Results[i]
		var figures []string
		if way.Possible && way.Informative {
			figures = []string{insideCell(r.Prep, way), volume(way.MadeML), volume(r.SetAside(i))}
		}
		cells := append([]string{way.Route.Name}, cells(r.Comparison, i, figures)...)
		s.table.Rows = append(s.table.Rows, page.Row{Marked: i == r.Verdict.Use, Cells: cells})
	}
	s.order = preferred(r.Comparison)
}

// noWay says why no way was found.
func (s *Screen) noWay(e *rescue.NoWayError) { s.add("Mend it", words.NoWayWords(e)) }
