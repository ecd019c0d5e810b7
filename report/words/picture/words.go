package picture

import (
	"fmt"
	"math"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// Heading is what stands below the title of a figure: what it is about, by the user's own title
// where there is one, as it is given, and what is changed.
func Heading(p *route.Prep, title string) (subject, changed string) {
	subject = supposed(p) + titled(title) + wanted(p)
	return subject, clause.When(len(p.Changes) > 0, "Changed: "+strings.Join(words.ChangeTexts(p), "; "))
}

// titled comes before what is wanted: a title that ends a sentence of its own needs no colon.
func titled(title string) string {
	if strings.HasSuffix(title, "?") || strings.HasSuffix(title, "!") || strings.HasSuffix(title, ".") {
		return title + " "
	}
	return clause.When(title != "", title+": ")
}

// supposed comes before what a figure says of a kit that is changed.
func supposed(p *route.Prep) string { return clause.When(len(p.Changes) > 0, "On a changed kit. ") }

// onChanged is what follows a title where the kit is changed.
func onChanged(p *route.Prep) string { return clause.When(len(p.Changes) > 0, ", on a changed kit") }

// wanted says what is to be made:
//
//	15 mL of 0.060 % w/v dye in ethanol, within 7 % of target
func wanted(p *route.Prep) string {
	s := words.Wanted(p)
	if len(p.Tolerances) > 0 {
		s += ", " + Tolerance(p.Tolerances[0])
	}
	return s
}

// Tolerance names one.
func Tolerance(t route.Tolerance) string { return clause.When(!t.Stated, "within ") + t.Text }

// Beside is what stands beside the row of a route: what strength it gives, its chance of being
// inside, or else what it holds within, and what it leaves over.
func Beside(p *route.Prep, r *route.Result) (gives, chance, leftOver string) {
	f := words.Shown(p, r)
	switch {
	case !r.Informative:
		gives = "could be nothing at all"
	case f.GiveOrTake == "":
		gives = f.Spread
	default:
		gives = f.Value + " give or take " + f.GiveOrTake
	}
	if f.Inside == "" {
		return gives, "± " + f.HoldsWithin, leavings(r, p.Volume)
	}
	return gives, f.Inside, leavings(r, p.Volume)
}

// inside is the chance of a route.
func inside(p *route.Prep, r *route.Result) string {
	return words.Shown(p, r).Inside + " in 100 inside"
}

// share prints a probability that the user chose, such as 95 %.
func share(p float64) string { return quantity.Number(100*p) + " %" }

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

// Cannot says of a route, by its name as there is room for it, why it cannot or must not be done.
func Cannot(r *route.Result, name string) string {
	return clause.Either(r.MayNotBeUsed(), "STOP, not to be used: ", "Not possible: ") + name + ". " + r.Reason.String() + "."
}

// Labels are words that are the same in every figure that has them.
var Labels = struct {
	// Strength is followed by a unit; the others are names of an axis as well.
	Strength, Difference, Share, LeftOver, Readability string
	// Influence heads those of a budget.
	Influence string
	// Dot is one of a spread, which lies inside the tolerance, outside, or holds nothing; a Note
	// is the user's.
	Dot, Inside, InShort, Outside, Nothing, Target, Note string
	// What follows the number of dots outside the tolerance, or beyond the edges where there is none.
	TooWeak, TooStrong, Weaker, Stronger string
	// Before is the mark of a route on the kit as it is, beside one that is changed; Was comes before its
	// chance.
	Before, Was string
	// Bar is one of a budget: of one influence, an assumed or a shared one, or so many others.
	Bar, One, Assumed, Rest, Shared, None, RestOf, AssumedShare string
	// Mark is a route of a search; Stairs are the least give or take.
	Mark, Own, Stairs string
	// Money heads a figure of what could be bought: what there is, what has no price, and no route;
	// what is good enough and what not; the coarsest readability that does.
	Money, Owned, NoPrice, NoRoute, GoodEnough, NotEnough, Coarsest string
}{
	"strength / ", "difference from the target / %", "share of the variance / %", "left over / mL", "readability of the balance / g",
	"influence",
	"Each dot is one chance in a hundred.", "inside the tolerance", "inside", "outside", "nothing in it at all", "target", "Note: ",
	"too weak", "too strong", "weaker still", "stronger still", "before the change: 95 of 100", "before: ",
	"What spoils the strength, in shares of its variance.", "one influence", "an assumed one", "the rest, added up",
	"shared: the same error in several uses", "nothing that is counted", "the rest (%d)", "assumed: ",
	"Each mark is a route that no other beats, or a rounder one.", "your own routes", "least give or take for that much left over or less",
	"In each mark: how many measurements.", "owned", "no price", "no route", "good enough", "not good enough",
	"coarsest readability that is good enough, by dilutions; ticks: balances you have",
}

const (
	predicted = "All this is predicted from what is known of the instruments, before anything is made."
	meaning   = "Give or take: expanded uncertainty, coverage probability "
)

// dilutions by their number; the last stands for all that are more.
var dilutions = []string{"direct", "one dilution", "two dilutions", "three dilutions", "four dilutions", "five dilutions or more"}

// Dilutions names a route by how many dilutions it has.
func Dilutions(n int) string { return dilutions[min(n, len(dilutions)-1)] }

// More says how many things are not named.
func More(n int) string { return fmt.Sprintf("and %d more", n) }

// InHundred is a chance with its words: "99.7 in 100 inside".
func InHundred(chance string) string { return chance + " in 100 " + Labels.InShort }
