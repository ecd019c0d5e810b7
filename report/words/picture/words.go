package picture

import (
	"fmt"
	"math"

	"minim/equipment/quantity"
	"minim/report/words"
	"minim/uncertainty/route"
)

// Title of a figure.
func Title(p *route.Prep, own string) string {
	if own != "" {
		return own
	}
	return fmt.Sprintf("%s in %s", p.Solute.Name, p.Solvent.Name)
}

// OnChanged is what follows a title where the kit is changed.
func OnChanged(p *route.Prep) string {
	if len(p.Changes) > 0 {
		return ", on a changed kit"
	}
	return ""
}

// Changed says what is changed.
func Changed(p *route.Prep) string { return "Changed: " + words.Changes(p) }

// Wanted says what is to be made:
//
//	15 mL of 0.060 % w/v dye in ethanol, within 7 % of target
func Wanted(p *route.Prep) string {
	s := words.Wanted(p)
	if len(p.Tolerances) > 0 {
		s += ", " + Tolerance(p.Tolerances[0])
	}
	return s
}

// Tolerance names one.
func Tolerance(t route.Tolerance) string {
	if t.Stated {
		return t.Text
	}
	return "within " + t.Text
}

// GivesIn heads a column of strengths.
func GivesIn(p *route.Prep) string { return "it gives in " + p.Target.Unit.Name }

// Percent prints a chance beside the one that is asked for.
func Percent(share, least float64) string { return words.InHundred(share, least) + " %" }

// Inside is the chance of a route.
func Inside(r *route.Result, p *route.Prep) string {
	return Percent(r.Chance(), p.LeastChance) + " inside"
}

// Holds prints the half-width round the target that holds the strength with the
// coverage probability.
func Holds(r *route.Result) string { return quantity.Percent(r.HoldsWithin) }

// Share prints a probability that the user chose, such as 95 %.
func Share(p float64) string { return words.Asked(p) + " %" }

// Spread says what strength a route gives.
func Spread(r *route.Result) string {
	if !r.Informative {
		return "could be nothing at all"
	}
	s := words.Rounded(r)
	if s.GiveOrTake == "" {
		return s.Lower + " to " + s.Upper
	}
	return s.Value + " give or take " + s.GiveOrTake
}

// Leavings says what a route makes too little of, or leaves over.
func Leavings(r *route.Result, volume float64) string {
	if !r.Enough(volume) {
		return "makes only " + quantity.Millilitres(r.MadeML)
	}
	if v := Millilitres(r.LeftOverML); v != "0 mL" {
		return v + " left over"
	}
	return "nothing left over"
}

// Millilitres drops the digits that nobody needs.
func Millilitres(v float64) string {
	if v < 10 {
		return quantity.Millilitres(math.Round(v*10) / 10)
	}
	return quantity.Millilitres(math.Round(v))
}

// Tag is the word on the route to use.
func Tag(c *route.Comparison) string {
	switch {
	case c.Verdict.Meets:
		return "USE THIS ROUTE"
	case len(c.Prep.Tolerances) == 0:
		return "NEAREST THE TARGET"
	}
	return "BEST, NOT ENOUGH"
}

// Cannot says of a route, by its name as there is room for it, why it cannot or must not be done.
func Cannot(r *route.Result, name string) string {
	word := "Not possible: "
	if r.MayNotBeUsed() {
		word = "STOP, not to be used: "
	}
	return word + name + ". " + r.Reason.String() + "."
}

// marked says why the marked route is marked.
func marked(c *route.Comparison) string {
	least := Share(c.Prep.LeastChance)
	switch {
	case c.Verdict.Meets:
		return "Marked: of the routes with a chance of at least " + least + ", the one that leaves least over."
	case len(c.Prep.Tolerances) == 0:
		return "Marked: the route that stays nearest to the target. No tolerance is given."
	}
	return "No route here makes enough with a chance of at least " + least + "; the best of them is marked."
}
