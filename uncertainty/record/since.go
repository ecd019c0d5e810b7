package record

import (
	"slices"

	"minim/uncertainty/hazards"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

// Since returns the plan of a batch with what has come since, by the prep as it is now:
// instruments, stocks and packets of other names, the limits of a search and the prices.
// Of the hazards those of both hold, since they are not planned but found out.
func Since(plan, now *route.Prep) *route.Prep {
	q := *plan
	q.File, q.Digest, q.Limits, q.Changes, q.AssumedFactor = now.File, now.Digest, now.Limits, now.Changes, now.AssumedFactor
	q.Kit = plan.Kit.WithMissing(now.Kit)
	q.Kit.File, q.Kit.Digest, q.Kit.Invented = now.Kit.File, now.Kit.Digest, now.Kit.Invented
	if now.Solute.Name != plan.Solute.Name {
		return &q // the prep makes something else by now
	}
	q.Solute.Price, q.Solute.Hazards = now.Solute.Price, hazards.Both(plan.Solute.Hazards, now.Solute.Hazards)
	q.Stocks = withMissing(plan.Stocks, counted(plan, now.Stocks), func(s *route.Stock) string { return s.Name })
	q.Packets = withMissing(plan.Packets, now.Packets, func(k *route.Packet) string { return k.Name })
	if now.Solvent.Name == plan.Solvent.Name {
		q.Solvent.Price, q.Solvent.Hazards = now.Solvent.Price, hazards.Both(plan.Solvent.Hazards, now.Solvent.Hazards)
	}
	q.Hazards = slices.Clone(plan.Hazards)
	for _, h := range now.Hazards {
		addHazard(&q, h)
	}
	return &q
}

// counted are the stocks of which the strength can be had in what the models carry.
func counted(p *route.Prep, stocks []*route.Stock) []*route.Stock {
	return slices.DeleteFunc(slices.Clone(stocks), func(s *route.Stock) bool { return p.CanState(s, strengths.Strength{Unit: s.Unit}) != nil })
}

// withMissing appends the items that the list has none of the name of.
func withMissing[T any](list, more []*T, name func(*T) string) []*T {
	list = slices.Clone(list)
	for _, item := range more {
		if !slices.ContainsFunc(list, func(had *T) bool { return name(had) == name(item) }) {
			list = append(list, item)
		}
	}
	return list
}

// addHazard adds words that hold from a strength on, which another prep states. They stand
// in place of others only where both say so; a strength that means nothing here counts as
// reached.
func addHazard(p *route.Prep, h hazards.Stated) {
	s, err := p.ParseStrength(h.From.Text)
	h.From = strengths.Strength{Unit: p.Target.Unit, Text: h.From.Text}
	if err == nil {
		h.From.Value = p.InTargetUnit(s)
	}
	for i := range p.Hazards {
		if had := &p.Hazards[i]; had.From.Value == h.From.Value {
			had.Words, had.Replaces = hazards.Add(slices.Clone(had.Words), h.Words), had.Replaces && h.Replaces
			return
		}
	}
	h.Replaces = false
	p.Hazards = append(p.Hazards, h)
}
