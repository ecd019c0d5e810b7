package picture

import (
	"fmt"
	"math"
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty/plan"
)

// Readability is what is drawn of the question what to buy.
type Readability struct {
	*plan.Purchase
	// Lines are those that are drawn, by their dilutions; Hollow is true where one has marks
	// of a search that was cut short.
	Lines  []int
	Hollow bool
	// LikeName is the balance that is like those of the lines, as there is room for it.
	LikeName string
	// Coverage is the probability that the give or take of the balances has; 0 without any.
	Coverage float64
	// Balances are those that are drawn, and Without those with which no route was found.
	Balances []*plan.Choice
	Without  []string
	// Shaded is true where the tolerance is drawn.
	Shaded bool
}

// Caption explains what is drawn, and says what is not, and what the figure shows.
func (f *Readability) Caption() Caption {
	return Caption{GiveOrTake: giveOrTakeAxis(f.Coverage), Notes: f.notes(), Alt: f.alt()}
}

func (f *Readability) notes() (list []string) {
	if len(f.Lines) > 0 {
		list = append(list, f.lines())
	}
	if len(f.Balances) > 0 {
		list = append(list, "Circles: the route that would be chosen with each balance alone, whatever it leaves over.")
	}
	if words := f.cutShort(); words != "" {
		list = append(list, words)
	}
	if words := f.breakEven(); words != "" {
		list = append(list, "The coarsest readability with a chance of being inside of at least "+share(f.Prep.LeastChance)+": "+words+".")
	}
	if f.Shaded {
		list = append(list, "Shaded: a give or take that fits within the tolerance, to its nearer limit, when the strength expected is on target.")
	}
	if len(f.Without) > 0 {
		list = append(list, "No route was found with: "+strings.Join(f.Without, ", ")+".")
	}
	if f.Coverage == 0 {
		return append(list, "Give or take: expanded uncertainty. "+predicted)
	}
	return append(list, meaning+share(f.Coverage)+". "+predicted)
}

// lines say what the lines are of.
func (f *Readability) lines() string {
	like, left := "", ""
	if f.Like != nil {
		like = " like the " + f.LikeName
	}
	if mL := f.MostLeftOver; mL > 0 && !math.IsInf(mL, 1) {
		left = ", that leave over no more than " + quantity.Millilitres(mL)
	}
	return "Lines: the tightest routes with a balance" + like + ", were it to read to so many g" + left + ", with an expected strength within a tenth of the target. Both scales are logarithmic."
}

// cutShort says where a search was cut short; "" where of none.
func (f *Readability) cutShort() string {
	var parts []string
	if f.Hollow {
		parts = append(parts, "Hollow marks on a line: the tightest route that was found before the search was cut short; there may be a tighter one.")
	}
	var with []string
	for _, o := range f.Balances {
		if o.CutShort {
			with = append(with, o.Name)
		}
	}
	if len(with) > 0 {
		parts = append(parts, "The search was cut short with the "+strings.Join(with, ", the ")+", where a better route may exist.")
	}
	return strings.Join(parts, " ")
}

// breakEven is "0.0005 g direct, 0.01 g with one dilution, none with two dilutions".
func (f *Readability) breakEven() string {
	var parts []string
	for _, b := range f.BreakEven {
		words := "none"
		switch {
		case b.Readability == 0 && b.CutShort:
			words = "none found so far"
		case b.Readability > 0 && b.CutShort:
			words = quantity.Grams(b.Readability) + " or coarser"
		case b.Readability > 0:
			words = quantity.Grams(b.Readability)
		}
		if b.Dilutions > 0 {
			words += " with"
		}
		parts = append(parts, words+" "+Dilutions(b.Dilutions))
	}
	return strings.Join(parts, ", ")
}

func (f *Readability) alt() string {
	var lines, balances []string
	for _, n := range f.Lines {
		lines = append(lines, Dilutions(n))
	}
	for _, o := range f.Balances {
		balances = append(balances, o.Name+", "+quantity.Grams(o.Balance.Readability)+", "+quantity.Percent(o.Best.Analytic.Relative()))
	}
	s := fmt.Sprintf("What the readability of the balance does to the give or take with which one makes %s%s", wanted(f.Prep), onChanged(f.Prep))
	if len(f.Lines) > 0 {
		s += ": lines for " + strings.Join(lines, ", ")
	}
	s += "."
	if words := f.breakEven(); words != "" {
		s += " The coarsest that is good enough: " + words + "."
	}
	if words := f.cutShort(); words != "" {
		s += " " + words
	}
	if len(f.Balances) > 0 {
		s += " Balances: " + strings.Join(balances, "; ") + "."
	}
	return s
}
