package route

import (
	"errors"
	"slices"
	"strings"

	"minim/equipment"
	"minim/report/words/note"
)

// Clash is two things of a prep that may not meet.
type Clash struct {
	// First and Second are their names, with what each is in the prep: the solvent.
	First, Second         string
	FirstRole, SecondRole note.Note
	// Meeting says what happens then, and by what each was recognised.
	equipment.Meeting
}

// thing is what a prep brings to the bench, and the groups of substances that it is
// recognised to belong to: by its name alone, and by its hazard words as well.
type thing struct {
	name        string
	role        note.Note
	named, seen []equipment.Recognition
}

// Clashes lists what may not meet of what a route brings together, or of all that a prep
// names where none is given: the solute, the solvent, stocks with their solvents, packets.
// Everything stands on one bench, and is left over there. What it does not list is not
// thereby harmless.
func (p *Prep) Clashes(r *Route) []Clash {
	if r == nil {
		return clashesOf(p.things(p.Stocks, p.Packets))
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
	return clashesOf(p.things(stocks, packets))
}

// things are the solute, the solvent, and some stocks and packets, each name once. The
// words of every hazard table count for the solute, whatever its strength.
func (p *Prep) things(stocks []*Stock, packets []*Packet) (list []thing) {
	add := func(role note.Note, name string, words ...string) {
		if name != "" && !slices.ContainsFunc(list, func(t thing) bool { return strings.EqualFold(t.name, name) }) {
			named := equipment.Recognise(name)
			list = append(list, thing{name, role, named, slices.Concat(named, equipment.Recognise("", words...))})
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

// clashesOf lists the pairs that may not meet, and what holds such a pair by its name.
func clashesOf(things []thing) (list []Clash) {
	for i, a := range things {
		for _, m := range equipment.Meet(a.named, a.named) {
			list = append(list, Clash{a.name, a.name, a.role, a.role, m})
		}
		for _, b := range things[i+1:] {
			for _, m := range equipment.Meet(a.seen, b.seen) {
				list = append(list, Clash{a.name, b.name, a.role, b.role, m})
			}
		}
	}
	return list
}

// Forbidden says of a route why it may not be used, nothing where nothing is known against it.
func Forbidden(clashes []Clash) note.Note {
	if len(clashes) == 0 {
		return note.Note{}
	}
	return note.Of("may-not-meet", clashes[0].First, clashes[0].Second)
}

// MayBeMade returns an error where the solute may not meet the solvent, so that no route
// may be used.
func (p *Prep) MayBeMade() error {
	if clashes := p.Clashes(&Route{}); len(clashes) > 0 {
		return errors.New(note.Of("every-route-clashes", clashes[0].First, clashes[0].Second).String())
	}
	return nil
}
