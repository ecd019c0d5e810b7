package figure

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/plot/vg"

	"minim/equipment/quantity"
	"minim/uncertainty/plan"
)

// coverage is the probability that the routes of the balances are stated with; empty
// when there are none.
func (f *readable) coverage() string {
	if len(f.balances) == 0 {
		return ""
	}
	return shareWords(f.balances[0].choice.Best.Analytic.CoverageProbability)
}

func (f *readable) upName() string {
	name := "give or take, in % of the strength"
	if c := f.coverage(); c != "" {
		name += " (" + c + ")"
	}
	return name
}

// key explains the marks that occur.
func (f *readable) key() (k key) {
	k.say(boldText, "What the balance does to the give or take.")
	some := func(owned bool) bool {
		return slices.ContainsFunc(f.balances, func(b balance) bool { return b.choice.Owned == owned })
	}
	show := func(owned bool, words string) {
		if some(owned) {
			k.show(2*balanceRadius, words, func(on *sheet, x, y vg.Length) {
				f.drawBalance(on, vg.Point{X: x + balanceRadius, Y: y}, owned)
			})
		}
	}
	show(true, "a balance you have")
	show(false, "one you could buy")
	if slices.ContainsFunc(f.balances, func(b balance) bool { return b.choice.Meets }) {
		k.say(boldText, "bold: good enough")
	}
	return k
}

// notes explain what is drawn, and say what is not.
func (f *readable) notes() (list []string) {
	if len(f.curves) > 0 {
		like := ""
		if f.p.Like != nil {
			like = " like the " + cut(smallText, footWide/3, clean(f.p.Like.Name))
		}
		left := ""
		if mL := f.p.MostLeftOver; mL > 0 && !math.IsInf(mL, 1) {
			left = ", that leave over no more than " + quantity.Millilitres(mL)
		}
		list = append(list, "Lines: the tightest routes with a balance"+like+", were it to read to so many g"+left+", with an expected strength within a tenth of the target. Both scales are logarithmic.")
	}
	if len(f.balances) > 0 {
		list = append(list, "Circles: the route that would be chosen with each balance alone, whatever it leaves over.")
	}
	if words := f.cutShort(); words != "" {
		list = append(list, words)
	}
	if words := f.breakEven(); words != "" {
		list = append(list, "The coarsest readability with a chance of being inside of at least "+shareWords(f.p.Prep.LeastChance)+": "+words+".")
	}
	if f.half > 0 {
		list = append(list, "Shaded: a give or take that fits within the tolerance, to its nearer limit, when the strength expected is on target.")
	}
	if len(f.without) > 0 {
		list = append(list, "No route was found with: "+strings.Join(f.without, ", ")+".")
	}
	meaning := "Give or take: expanded uncertainty"
	if c := f.coverage(); c != "" {
		meaning += ", coverage probability " + c
	}
	return append(list, meaning+". "+predicted)
}

// cutShort says where a search was cut short; "" where of none.
func (f *readable) cutShort() string {
	var parts []string
	if slices.ContainsFunc(f.curves, func(c curve) bool { return c.cut }) {
		parts = append(parts, "Hollow marks on a line: the tightest route that was found before the search was cut short; there may be a tighter one.")
	}
	var names []string
	for _, b := range f.balances {
		if b.choice.CutShort {
			names = append(names, b.choice.Name)
		}
	}
	if len(names) > 0 {
		parts = append(parts, "The search was cut short with the "+strings.Join(names, ", the ")+", where a better route may exist.")
	}
	return strings.Join(parts, " ")
}

// breakEven is "0.0005 g direct, 0.01 g with one dilution, none with two dilutions".
func (f *readable) breakEven() string {
	var parts []string
	for _, b := range f.p.BreakEven {
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
		parts = append(parts, words+" "+markOf(b.Dilutions).words)
	}
	return strings.Join(parts, ", ")
}

// altOfReadability says in two sentences what the figure of [Readability] shows.
func altOfReadability(p *plan.Purchase) string {
	f := newReadable(p)
	on := ""
	if len(p.Prep.Changes) > 0 {
		on = ", on a changed kit"
	}
	s := fmt.Sprintf("What the readability of the balance does to the give or take with which one makes %s%s", wanted(p.Prep), on)
	if len(f.curves) > 0 {
		var names []string
		for _, c := range f.curves {
			names = append(names, markOf(c.dilutions).words)
		}
		s += ": lines for " + strings.Join(names, ", ")
	}
	s += "."
	if words := f.breakEven(); words != "" {
		s += " The coarsest that is good enough: " + words + "."
	}
	if words := f.cutShort(); words != "" {
		s += " " + words
	}
	for i, b := range f.balances {
		if i == 0 {
			s += " Balances:"
		} else {
			s += ";"
		}
		s += fmt.Sprintf(" %s, %s, %s", b.choice.Name, quantity.Grams(b.readability), quantity.Percent(b.relative/100))
	}
	if len(f.balances) > 0 {
		s += "."
	}
	return clean(s)
}
