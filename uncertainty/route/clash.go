package route

import (
	"errors"
	"slices"
	"strings"

	"minim/report/words/note"
	"minim/uncertainty/hazards"
)

// Clashes lists what may not meet of what a route brings together, or of all that a prep
// names where none is given: the solute, the solvent, stocks with their solvents, packets.
// Everything stands on one bench, and is left over there. What it does not list is not
// thereby harmless.
func (p *Prep) Clashes(r *Route) []hazards.Clash {
	if r == nil {
		return hazards.Clashes(p.things(p.Stocks, p.Packets))
	}
	var stocks []*Stock
	var packets []*Packet
	for i := range r.Steps {
		if s := r.Steps[i].Stock; s != nil {
			stocks = append(stocks, s)
		}
		if k := r.Steps[i].Packet; k != nil {
			packets = append(packets, k)
		}
	}
	return hazards.Clashes(p.things(stocks, packets))
}

// things are the solute, the solvent, and some stocks and packets, each name once. The
// words of every hazard table count for the solute, whatever its strength.
func (p *Prep) things(stocks []*Stock, packets []*Packet) (list []hazards.Thing) {
	add := func(role note.Note, name string, words ...string) {
		if name != "" && !slices.ContainsFunc(list, func(t hazards.Thing) bool { return strings.EqualFold(t.Name, name) }) {
			list = append(list, hazards.Bring(role, name, words...))
		}
	}
	words := slices.Clone(p.Solute.Hazards)
	for _, h := range p.Hazards {
		words = append(words, h.Words...)
	}
	add(note.Of("as-solute", ""), p.Solute.Name, words...)
	add(note.Of("as-weighed", ""), p.Solute.WeighedAs)
	add(note.Of("as-solvent", ""), p.Solvent.Name, p.Solvent.Hazards...)
	for _, s := range stocks {
		add(note.Of("as-stock", ""), s.Name)
		add(note.Of("as-solvent-of-stock", s.Name), s.Solvent)
	}
	for _, k := range packets {
		add(note.Of("as-packet", ""), k.Name)
	}
	return list
}

// MayBeMade returns an error where the solute may not meet the solvent, so that no route
// may be used.
func (p *Prep) MayBeMade() error {
	if clashes := p.Clashes(&Route{}); len(clashes) > 0 {
		return errors.New(note.Of("every-route-clashes", clashes[0].First, clashes[0].Second).String())
	}
	return nil
}
