package words

import (
	"fmt"

	"minim/report/words/verb"
	"minim/uncertainty/route"
)

// sheetBench is what stands on the bench while a sheet goes through the steps: the solutions
// made, each in a bottle with a number.
type sheetBench struct {
	*Paper
	route *route.Route
	// bottle is the number of the bottle that each step makes, 0 for none.
	bottle []int
	// solutions are those in the bottles.
	solutions []route.Solution
	// orders in which the parts of each solution are brought together, by step.
	orders []*route.Order
}

// newSheetBench numbers the bottles of a route.
func newSheetBench(p *Paper) *sheetBench {
	b := &sheetBench{Paper: p, route: p.route()}
	b.bottle = make([]int, len(b.route.Steps))
	var err error
	if b.solutions, err = p.prep().Solutions(b.route); err != nil {
		return b // a batch or a route that can be done has its solutions
	}
	b.orders, _ = p.prep().Orders(b.route) // it fails where Solutions does
	for n, s := range b.solutions {
		b.bottle[s.Step-1] = n + 1
	}
	return b
}

// source is where a step takes from.
func (b *sheetBench) source(i int) string {
	if s := &b.route.Steps[i]; s.Stock != nil || s.From > 0 {
		return b.strong(s)
	}
	for i--; i >= 0; i-- {
		if b.bottle[i] > 0 {
			return fmt.Sprintf("bottle %d", b.bottle[i])
		}
		if s := b.route.Steps[i].Stock; s != nil && b.route.Steps[i].Verb != route.Strengthen {
			return s.Name
		}
	}
	return "the solution"
}

// work says what a step of a verb does with which liquid, from where, into what.
var work = map[route.Verb]func(b *sheetBench, i int) string{
	route.Weigh: (*sheetBench).weigh, route.UsePacket: (*sheetBench).packet, route.Measured: (*sheetBench).measure, route.MakeUpTo: (*sheetBench).makeUp,
	route.Take: (*sheetBench).take, route.Pour: (*sheetBench).take, route.TakeAll: (*sheetBench).takeAll, route.Add: (*sheetBench).addSolvent,
	route.DissolveIn: (*sheetBench).addSolvent, route.Strengthen: (*sheetBench).strengthen, route.AddSolute: (*sheetBench).addSolute, route.WeighAliquot: (*sheetBench).weighAliquot,
	route.WeighUpTo: (*sheetBench).weighUpTo,
}

// do says what a step does.
func (b *sheetBench) do(i int) string {
	if words, found := work[b.route.Steps[i].Verb]; found {
		return words(b, i)
	}
	return Instructions(b.prep(), b.route)[i]
}

// take says where an aliquot comes from and where it goes.
func (b *sheetBench) take(i int) string {
	s, strong := &b.route.Steps[i], b.goesIn(i)
	text := b.ahead(i) + b.stirred(i)
	switch {
	case s.Verb == route.Pour:
		text += fmt.Sprintf("; fill the %s from it to %s and pour that %sinto %s", instrument(s), measured(s), when(strong, "slowly "), b.vessel(i))
	case strong && verb.RunsOut(s.Measure):
		text += fmt.Sprintf("; let %s run slowly from the %s into %s", measured(s), instrument(s), b.vessel(i))
	case strong:
		text += fmt.Sprintf("; measure %s of it with the %s and pour that slowly into %s", measured(s), instrument(s), b.vessel(i))
	default:
		text += fmt.Sprintf("; take %s from it with the %s into %s", measured(s), instrument(s), b.vessel(i))
	}
	return text + "; write" + b.settle(i)
}

// takeAll says where a solution goes that goes on whole, with what is rinsed from its
// vessel.
func (b *sheetBench) takeAll(i int) string {
	text := fmt.Sprintf("%spour all of %s %sinto %s", b.ahead(i), b.source(i), when(b.goesIn(i), "slowly "), b.vessel(i))
	rinsed := either(b.goesIn(i), ", and rinse it with some of the mixture", when(b.makesMark(b.order(i)), ", and rinse it into the same with a little "+b.prep().Solvent.Name))
	return text + rinsed + b.settle(i)
}

// measure says where a liquid solute goes.
func (b *sheetBench) measure(i int) string {
	s := &b.route.Steps[i]
	text := fmt.Sprintf("%smeasure %s of %s with the %s", b.ahead(i), measured(s), b.prep().Solute.Weighed(), instrument(s))
	return either(b.goesIn(i),
		fmt.Sprintf("%s and let it run slowly into %s; write%s", text, b.vessel(i), b.settle(i)),
		fmt.Sprintf("%s into %s; write", text, b.vessel(i)))
}

// addSolvent says what solvent is added to, or since when it is there.
func (b *sheetBench) addSolvent(i int) string {
	s, solvent := &b.route.Steps[i], b.prep().Solvent.Name
	if b.isEarly(i) {
		return b.already(i, solvent)
	}
	return fmt.Sprintf("add %s of %s %s to %s%s", measured(s), solvent, measuredWith(s), b.vessel(i), b.mixed(i))
}

// measuredWith is "with the 10 mL cylinder", or "weighed on the scale".
func measuredWith(s *route.Step) string {
	return either(s.Balance != nil, "weighed on the ", "with the ") + instrument(s)
}

func (b *sheetBench) strengthen(i int) string {
	s := &b.route.Steps[i]
	if b.isEarly(i) {
		return b.already(i, b.strong(s))
	}
	return fmt.Sprintf("add %s of %s %swith the %s to %s; write%s%s", measured(s), b.strong(s), when(b.goesIn(i), "slowly "), instrument(s), b.vessel(i), b.settle(i), b.mixed(i))
}

// strong is what a step strengthens with: a stock, or the bottle of a step before.
func (b *sheetBench) strong(s *route.Step) string {
	if s.Stock != nil {
		return s.Stock.Name
	}
	return fmt.Sprintf("bottle %d", b.bottle[s.From-1])
}
