package figure

import (
	"fmt"
	"math"

	"minim/equipment/quantity"
	"minim/report/words"
	"minim/uncertainty/route"
)

// title of the figure.
func title(p *route.Prep) string {
	if t := clean(p.Title); t != "" {
		return t
	}
	return fmt.Sprintf("%s in %s", p.Solute.Name, p.Solvent.Name)
}

// wanted says what is to be made:
//
//	15 mL of 0.060 % w/v dye in ethanol, within 7 % of target
func wanted(p *route.Prep) string {
	s := words.Wanted(p)
	if len(p.Tolerances) > 0 {
		s += ", " + toleranceWords(p.Tolerances[0])
	}
	return s
}

func toleranceWords(t route.Tolerance) string {
	if t.Stated() {
		return t.Text
	}
	return "within " + t.Text
}

// percent prints a chance.
func percent(share, least float64) string { return words.InHundred(share, least) + " %" }

// holds prints the half-width round the target that holds the strength with the
// coverage probability.
func holds(r *route.Result) string { return quantity.Percent(r.HoldsWithin) }

// shareWords prints a probability that the user chose, such as 95 %.
func shareWords(p float64) string { return words.Asked(p) + " %" }

// spreadWords say what strength a route gives.
func spreadWords(r *route.Result) string {
	if !r.Informative {
		return "could be nothing at all"
	}
	s := words.State(r)
	if s.GiveOrTake == "" {
		return s.Lower + " to " + s.Upper
	}
	return s.Value + " give or take " + s.GiveOrTake
}

// leavings say what a route makes too little of, or leaves over.
func leavings(r *route.Result, volume float64) string {
	if !r.Enough(volume) {
		return "makes only " + quantity.Millilitres(r.MadeML)
	}
	if v := millilitres(r.LeftOverML); v != "0 mL" {
		return v + " left over"
	}
	return "nothing left over"
}

// millilitres drops the digits that nobody needs.
func millilitres(v float64) string {
	if v < 10 {
		return quantity.Millilitres(math.Round(v*10) / 10)
	}
	return quantity.Millilitres(math.Round(v))
}

// tag is the word on the route to use.
func tag(c *route.Comparison) string {
	switch {
	case c.Verdict.Meets:
		return "USE THIS ROUTE"
	case len(c.Prep.Tolerances) == 0:
		return "NEAREST THE TARGET"
	}
	return "BEST, NOT ENOUGH"
}

// chosen says why the marked route is marked.
func chosen(c *route.Comparison) string {
	least := shareWords(c.Prep.LeastChance)
	switch {
	case c.Verdict.Meets:
		return "Marked: of the routes with a chance of at least " + least + ", the one that leaves least over."
	case len(c.Prep.Tolerances) == 0:
		return "Marked: the route that stays nearest to the target. No tolerance is given."
	}
	return "No route here makes enough with a chance of at least " + least + "; the best of them is marked."
}

const predicted = "All this is predicted from what is known of the instruments, before anything is made."

// footnotes explain what is drawn.
func footnotes(c *route.Comparison) []string { return []string{chosen(c), dots(c), predicted} }

// dots say what the dots stand for.
func dots(c *route.Comparison) string {
	mc := &c.Results[c.Verdict.Use].MonteCarlo
	return fmt.Sprintf("The dots stand for %s simulated batches (seed %d), each dot for one in a hundred. Give or take: expanded "+
		"uncertainty, coverage probability %s.", quantity.Grouped(mc.Trials), mc.Seed, shareWords(mc.CoverageProbability))
}
