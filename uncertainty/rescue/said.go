package rescue

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty/portable"
	"minim/uncertainty/route"
)

// noWay says why there is none.
func (r *rescuer) noWay() error {
	is, wanted := r.concentrations()
	switch {
	case is <= 0:
		return &NoWayError{"nothing is known to be in it", ""}
	case is > wanted:
		return &NoWayError{r.withNotTried(fmt.Sprintf("it would have to be diluted %s times, which neither all of it in one vessel nor a part of it in one step or two comes to", quantity.Exact(roundTo(is/wanted, 3)))), "a larger vessel or a smaller pipette"}
	}
	cure := "a stock that is stronger"
	if r.prep.MayEvaporate() {
		cure += "; or " + Evaporating
	}
	reason := "it is too weak, and there is neither a stronger solution nor a balance that weighs so little solute"
	switch {
	case len(r.stronger) == 0 && !r.prep.CountsMass():
		reason = "it is too weak, there is no stronger solution, and " + r.prep.NeedsMass("a mass").Error()
	case len(r.stronger) > 0:
		reason = "it is too weak, and nothing on the bench measures out what it needs of a stronger solution or of solute"
	}
	return &NoWayError{r.withNotTried(reason), cure}
}

// inVain says how little the best of what was tried is worth, and what was not tried.
func (r *rescuer) inVain(best *route.Result) error {
	percent := func(chance float64) string { return fmt.Sprintf("%.1f", math.Floor(1000*chance)/10) }
	reason := fmt.Sprintf("of %d corrections that were tried the best is inside in %s of 100, and as it is the batch is so in %s; what is uncertain of it stays uncertain in whatever is made of it",
		r.tried, percent(best.Chance()), percent(r.now.Chance()))
	return &NoWayError{r.withNotTried(reason), "a new batch, by a surer route"}
}

// withNotTried adds to a reason what was not tried.
func (r *rescuer) withNotTried(reason string) string {
	if list := r.notTried(false); len(list) > 0 {
		reason += "; not tried: " + strings.Join(list, "; ")
	}
	return reason
}

// notTried says what was left out. What might be done in more steps matters only where
// nothing is good enough.
func (r *rescuer) notTried(good bool) (list []string) {
	for _, kind := range r.cut {
		list = append(list, fmt.Sprintf("some of the ways with %s, since no more than %d of them are worked out", kind, mostTried))
	}
	list = append(list, r.notSearched...)
	is, wanted := r.concentrations()
	switch {
	case good:
	case is > wanted:
		list = append(list, "diluting a part more than twice, or twice at other marks than the numbered ones from 20 % of a scale on")
	case len(r.stronger) > 0 || len(r.prep.Kit.Balances) > 0:
		list = append(list, "a stronger solution that is made or diluted for it first"+r.dilutedFirst(is, wanted)+": state that as a [[stock]], and ask again")
	}
	return list
}

// dilutedFirst says which solution can be diluted first, how many times, and how much is
// then needed of it: a fifth or more of what the smallest instrument measures, or else as
// much as can be. It stays twice as strong as what is wanted.
func (r *rescuer) dilutedFirst(is, wanted float64) string {
	smallest := math.Inf(1)
	for _, k := range r.deliverers() {
		smallest = min(smallest, k.Capacity)
	}
	text, most := "", 0.0
	for _, s := range r.stronger {
		for _, times := range []float64{2, 5, 10, 20, 50, 100, 200, 500, 1000} {
			needed := r.now.MadeML * (wanted - is) / (s.concentration/times - wanted)
			if s.concentration < 2*times*wanted || needed <= most {
				continue
			}
			most, text = needed, fmt.Sprintf(" (of %s diluted %v times about %s mL would be needed)", s.name(), times, quantity.Exact(roundTo(needed, 2)))
			if needed >= 0.2*smallest {
				return text
			}
		}
	}
	return text
}

// name of a stronger solution.
func (s *strong) name() string {
	if s.source.Stock != nil {
		return s.source.Stock.Name
	}
	return fmt.Sprintf("the solution of step %d", s.source.From)
}

// addOnce appends what is not yet there.
func addOnce[T comparable](list []T, x T) []T {
	if slices.Contains(list, x) {
		return list
	}
	return append(list, x)
}

// Evaporating is what may be offered where [route.Prep.MayEvaporate] holds.
const Evaporating = "letting water evaporate in the open at the temperature of the bench, never by heating, which is slow; how much goes is not worked out here, and what is left must be measured"

func roundTo(x float64, digits int) float64 {
	scale := math.Pow10(digits - 1 - portable.Decade(math.Abs(x)))
	return math.Round(x*scale) / scale
}
