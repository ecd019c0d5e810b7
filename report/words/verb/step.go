package verb

import (
	"fmt"
	"slices"
	"strings"

	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// Do words a step in the imperative, with what is done besides, by the words in braces in whose
// place it goes; turned says that solvent has gone first, for what is weighed.
func Do(s *route.Step, besides map[string]string, turned bool) string {
	r := of(s.Verb)
	return filled(clause.Either(turned && r.turned != "", r.turned, r.do), s, besides)
}

// Short says in short what a step does: "weigh 1.00 g on the 0.01 g scale". Where it takes the
// place of one that was planned, both readings are said.
func Short(s *route.Step, insteadOf ...*route.Step) string {
	others := make(map[string]string)
	for _, planned := range insteadOf {
		others["amount"] = Amount(s) + " instead of " + Amount(planned)
	}
	return filled(of(s.Verb).short, s, others)
}

// Doing words a step as something that is done, of a solute and in a solvent: "weighing
// 1.00 g of dye on the 0.01 g scale".
func Doing(s *route.Step, solute, solvent string) string {
	r := of(s.Verb)
	_, rest, _ := strings.Cut(r.short, " ")
	return filled(r.doing+" "+rest, s, map[string]string{"solute": solute, "of solute": " of " + solute, "solvent": solvent})
}

// Care is what to mind at a step where its instrument does not say it.
func Care(s *route.Step) string { return of(s.Verb).care }

// Name of what steps do one after the other: "1.50 g in 25, 2 in 25, 3 + 17 mL", or "all +
// 5 mL, then + 1.2 mL".
func Name(steps []route.Step) string {
	name := ""
	for i := range steps {
		s := &steps[i]
		if i > 0 && s.Verb == route.Add && steps[i-1].Verb == route.Strengthen {
			name += " mL, then"
		}
		name += filled(of(s.Verb).name, s, nil)
	}
	return strings.TrimPrefix(name, ", ") + clause.When(steps[len(steps)-1].Measure != nil, " mL")
}

// Done says that a step was done, as an addition to a record: "took 2 mL with the 5 mL
// pipette"; "done" of one that begins with a stock or a packet.
func Done(s *route.Step) string {
	switch r := of(s.Verb); {
	case s.Verb == route.TakeAll:
		return "took all" + clause.When(OfWhich(s) != "", " of "+OfWhich(s))
	case len(r.done) == 0:
		return "done"
	default:
		strong := clause.When(OfWhich(s) != "", " of "+OfWhich(s))
		key, name := InstrumentInFile(s)
		return fmt.Sprintf("%s %s%s %s the %s", r.done[0], AmountInFile(s), strong, key, name)
	}
}

// Past finds the keys of the steps that words say were done, that of a further step first, and
// all words by which a record says what was done, each once.
func Past(words string) (keys, all []string) {
	for i := range rows {
		if r := &rows[i]; slices.Contains(r.done, words) {
			keys = append(keys, string(r.verb))
		}
		for _, w := range rows[i].done {
			if !slices.Contains(all, w) {
				all = append(all, w)
			}
		}
	}
	return keys, all
}
