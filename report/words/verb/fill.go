package verb

import (
	"fmt"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// filled puts the words of a step, and others that go before them, in place of those in
// braces. What is put in is not looked through again.
func filled(text string, s *route.Step, others map[string]string) string {
	words := map[string]string{"solute": "solute", "of solute": "", "solvent": "solvent", "instrument": Instrument(s),
		"number": quantity.Exact(s.Amount), "measured": clause.Either(s.Balance != nil, "weighed on", "measured with")}
	if s.Balance != nil || s.Measure != nil {
		words["amount"] = Amount(s)
	}
	if s.Packet != nil {
		words["packet"] = s.Packet.Name
	}
	if s.Stock != nil {
		words["stock"] = s.Stock.Name
	}
	words["strong"] = strong(s)
	words["of strong"] = clause.When(OfWhich(s) != "", " of "+strong(s))
	for key, word := range others {
		words[key] = word
	}
	var pairs []string
	for key, word := range words {
		pairs = append(pairs, "{"+key+"}", word)
	}
	return strings.NewReplacer(pairs...).Replace(text)
}

// Instrument names that of a step, with its piece; "" for none.
func Instrument(s *route.Step) string {
	name := ""
	switch {
	case s.Measure != nil:
		name = s.Measure.Name
	case s.Balance != nil:
		name = s.Balance.Name
	}
	return name + clause.When(s.Piece > 1, fmt.Sprintf(" (piece %d)", s.Piece))
}

// Amount is what a step that reads an instrument reads: a mass as the balance shows it, a
// volume, or a number of drops.
func Amount(s *route.Step) string {
	switch {
	case s.Balance != nil:
		return s.Balance.Display(s.Amount)
	case !s.Measure.Kind.Traits().Counts:
		return quantity.Millilitres(s.Amount)
	case s.Amount == 1:
		return "1 drop"
	}
	return fmt.Sprintf("%.0f drops", s.Amount)
}

// strong is the solution that a step takes from or strengthens with.
func strong(s *route.Step) string {
	switch {
	case OfWhich(s) == "":
		return "the solution"
	case s.Stock != nil:
		return s.Stock.Name
	}
	return "the solution of " + OfWhich(s)
}
