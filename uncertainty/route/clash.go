package route

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/report/words/note"
)

// Clash is two things of a prep that may not meet.
type Clash struct {
	// First and Second are their names, with what each is in the prep: "the solvent".
	First, Second         string
	FirstRole, SecondRole string
	// Meeting says what happens then, and by what each was recognised.
	equipment.Meeting
}

// thing is what a prep brings to the bench, and the groups of substances that it is
// recognised to belong to: by its name alone, and by its hazard words as well.
type thing struct {
	name, role  string
	named, seen []equipment.Recognition
}

// Clashes lists what may not meet of all that a prep names: the solute, the solvent,
// stocks with their solvents, packets. Everything stands on one bench, and is left over
// there. What it does not list is not thereby harmless.
func (p *Prep) Clashes() []Clash { return clashesOf(p.things(p.Stocks, p.Packets)) }

// ClashesIn lists what a route brings together that may not meet.
func (p *Prep) ClashesIn(r *Route) []Clash {
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
	add := func(role, name string, words ...string) {
		if name != "" && !slices.ContainsFunc(list, func(t thing) bool { return strings.EqualFold(t.name, name) }) {
			named := equipment.Recognise(name)
			list = append(list, thing{name, role, named, slices.Concat(named, equipment.Recognise("", words...))})
		}
	}
	words := slices.Clone(p.Solute.Hazards)
	for _, h := range p.Hazards {
		words = append(words, h.Words...)
	}
	add("the solute", p.Solute.Name, words...)
	add("what is weighed", p.Solute.WeighedAs)
	add("the solvent", p.Solvent.Name, p.Solvent.Hazards...)
	for _, s := range stocks {
		add("a stock", s.Name)
		add("the solvent of "+s.Name, s.Solvent)
	}
	for _, k := range packets {
		add("a packet", k.Name)
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

// String says which two may not meet, by what they were recognised, and what happens.
func (c *Clash) String() string {
	text := fmt.Sprintf("%s (%s; recognised %s) and %s (%s; recognised %s)", c.First, c.FirstRole, c.FirstBy, c.Second, c.SecondRole, c.SecondBy)
	if c.First == c.Second {
		text = fmt.Sprintf("what is in %s (%s; recognised %s, and %s)", c.First, c.FirstRole, c.FirstBy, c.SecondBy)
	}
	text += ": " + c.What
	if c.Strong {
		text += "; what is known of this pair is known of strong solutions, and how strong yours are is not asked"
	}
	return text
}

// Forbidden says of a route why it may not be used, nothing where nothing is known against it.
func Forbidden(clashes []Clash) note.Note {
	if len(clashes) == 0 {
		return note.Note{}
	}
	return note.Of("may-not-meet", clashes[0].First, clashes[0].Second)
}

// clashError reports a prep of which every route would bring together what may not meet.
type clashError struct{ Clashes []Clash }

func (e *clashError) Error() string {
	return "every route " + strings.TrimPrefix(Forbidden(e.Clashes).String(), "it ")
}

// MayBeMade returns a *[clashError] where the solute may not meet the solvent, so that no
// route may be used.
func (p *Prep) MayBeMade() error {
	if clashes := p.ClashesIn(&Route{}); len(clashes) > 0 {
		return &clashError{clashes}
	}
	return nil
}
