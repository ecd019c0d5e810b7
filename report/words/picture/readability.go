package picture

import (
	"fmt"
	"math"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/uncertainty/purchase"
)

// Readability is what is drawn of the question what to buy.
type Readability struct {
	*purchase.Purchase
	// Lines are those that are drawn, by their dilutions; Hollow is true where one has marks
	// of a search that was cut short.
	Lines  []int
	Hollow bool
	// LikeName is the balance that is like those of the lines, as there is room for it.
	LikeName string
	// Coverage is the probability that the give or take of the balances has; 0 without any.
	Coverage float64
	// Balances are those that are drawn, and Without those with which no route was found.
	Balances []*purchase.Choice
	Without  []string
	// Shaded is true where the tolerance is drawn.
	Shaded bool
}

// Caption explains what is drawn, and says what is not, and what the figure shows.
func (f *Readability) Caption() Caption {
	return Caption{GiveOrTake: giveOrTakeAxis(f.Coverage), Notes: f.notes(), Alt: f.alt()}
}

func (f *Readability) notes() []string {
	var list clause.List
	list.Add(len(f.Lines) > 0, "%s", f.lines())
	list.Add(len(f.Balances) > 0, "Circles: the route that would be chosen with each balance alone, whatever it leaves over.")
	list.Put("", f.cutShort())
	coarsest := f.breakEven()
	list.Add(coarsest != "", "The coarsest readability with a chance of being inside of at least %s: %s.", share(f.Prep.LeastChance), coarsest)
	list.Add(f.Shaded, "Shaded: a give or take that fits within the tolerance, to its nearer limit, when the strength expected is on target.")
	list.Add(len(f.Without) > 0, "No route was found with: %s.", strings.Join(f.Without, ", "))
	return append(list, clause.Either(f.Coverage == 0, "Give or take: expanded uncertainty. ", meaning+share(f.Coverage)+". ")+predicted)
}

// lines say what the lines are of.
func (f *Readability) lines() string {
	mL := f.MostLeftOver
	like := clause.When(f.Like != nil, " like the "+f.LikeName)
	left := clause.When(mL > 0 && !math.IsInf(mL, 1), ", that leave over no more than "+quantity.Millilitres(mL))
	return "Lines: the tightest routes with a balance" + like + ", were it to read to so many g" + left + ", with an expected strength within a tenth of the target. Both scales are logarithmic."
}

// cutShort says where a search was cut short; "" where of none.
func (f *Readability) cutShort() string {
	var parts, with clause.List
	parts.Add(f.Hollow, "Hollow marks on a line: the tightest route that was found before the search was cut short; there may be a tighter one.")
	for _, o := range f.Balances {
		with.Add(o.CutShort, "%s", o.Name)
	}
	parts.Add(len(with) > 0, "The search was cut short with the %s, where a better route may exist.", strings.Join(with, ", the "))
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
		parts = append(parts, words+clause.When(b.Dilutions > 0, " with")+" "+Dilutions(b.Dilutions))
	}
	return strings.Join(parts, ", ")
}

func (f *Readability) alt() string {
	lines := clause.Each(f.Lines, Dilutions)
	balances := clause.Each(f.Balances, func(o *purchase.Choice) string {
		return o.Name + ", " + quantity.Grams(o.Balance.Readability) + ", " + quantity.Percent(o.Best.GiveOrTake())
	})
	parts := clause.List{fmt.Sprintf("What the readability of the balance does to the give or take with which one makes %s%s%s.",
		wanted(f.Prep), onChanged(f.Prep), clause.When(len(lines) > 0, ": lines for "+strings.Join(lines, ", ")))}
	coarsest := f.breakEven()
	parts.Add(coarsest != "", "The coarsest that is good enough: %s.", coarsest)
	parts.Put("", f.cutShort())
	parts.Add(len(balances) > 0, "Balances: %s.", strings.Join(balances, "; "))
	return strings.Join(parts, " ")
}
