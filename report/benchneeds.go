package report

import (
	"fmt"
	"strings"

	"minim/equipment"
	"minim/uncertainty/route"
)

// needs lists materials, instruments and bottles.
func (p *Paper) needs() []term {
	r, q, b := p.result(), p.Prep, newBench(p)
	var list []term
	if usesSolute(p.route()) {
		list = append(list, term{q.Solute.Name, grams(r.SoluteGrams) + ", and some to spare" + assayWords(q)})
	}
	seen := make(map[*route.Stock]bool)
	for _, s := range p.route().Steps {
		switch {
		case s.Stock != nil && seen[s.Stock]:
		case s.Stock != nil:
			seen[s.Stock] = true
			list = append(list, term{s.Stock.Name, fmt.Sprintf("a stock of %s %s", limit(s.Stock.Strength.Value), s.Stock.Unit.Name)})
		case s.Packet != nil:
			list = append(list, term{s.Packet.Name, "a packet of " + q.Solute.Name})
		}
	}
	list = append(list, term{q.Solvent.Name, "about " + volume(min(q.Volume, r.MadeML)+r.LeftOverML) + ", and some for rinsing"},
		term{"instruments", strings.Join(p.instrumentNames(), ", ")})
	var bottles []string
	for i := range b.made {
		bottles = append(bottles, fmt.Sprintf("%d: about %s %s (holds at least %s)", i+1, limit(roundSignificant(b.strength[i], 2)), q.Target.Unit.Name, volume(b.made[i])))
	}
	return append(list, term{"bottles", "dry, with caps, labelled " + q.Solute.Name + " in " + q.Solvent.Name + " with its hazards, and " + strings.Join(bottles, "; ")}, term{"besides", p.besides()})
}

// instrumentNames are the instruments of the route, each once, with what kind they are.
func (p *Paper) instrumentNames() (names []string) {
	seen := make(map[string]bool)
	for i := range p.route().Steps {
		s := &p.route().Steps[i]
		name := instrument(s)
		if name == "" || seen[name] {
			continue
		}
		seen[name] = true
		if s.Measure != nil && (s.Measure.Kind == equipment.Graduated || s.Measure.Kind == equipment.OneMark || s.Measure.Kind == equipment.Flask) {
			name += map[bool]string{true: " (one mark)", false: " (graduated)"}[s.Measure.Division == 0]
		}
		names = append(names, name)
	}
	return names
}

func usesSolute(r *route.Route) bool {
	for _, s := range r.Steps {
		if s.Verb == route.Weigh || s.Verb == route.Measured || s.Verb == route.AddSolute {
			return true
		}
	}
	return false
}

func assayWords(q *route.Prep) string {
	a := q.Solute.Assay
	if !a.Known {
		return ""
	}
	if a.Distribution != nil {
		if low, high := a.Distribution.Support(); low > 0 && high < 2 {
			return fmt.Sprintf(", assay %s to %s", Percent(low), Percent(high))
		}
	}
	return ", assay " + Percent(a.Value)
}

// besides is what no kit lists.
func (p *Paper) besides() string {
	parts := []string{"two droppers", "a wash bottle of " + p.Prep.Solvent.Name, "tissue", "pen and labels", "waste for liquids and for solids", "gloves and goggles"}
	if p.Prep.Bench.Temperature.Known {
		parts = append([]string{"a thermometer"}, parts...)
	}
	var weighs, boat, pipettes bool
	b := newBench(p)
	for i, s := range p.route().Steps {
		weighs = weighs || s.Verb == route.Weigh || s.Verb == route.AddSolute
		boat = boat || weighs && strings.Contains(b.do(i), "boat")
		pipettes = pipettes || s.Measure != nil && (s.Measure.Kind == equipment.Graduated || s.Measure.Kind == equipment.OneMark)
	}
	if pipettes {
		parts = append([]string{"a pipette filler"}, parts...)
	}
	switch {
	case boat:
		parts = append([]string{"a spatula", "a weighing boat", "a funnel or a glass rod"}, parts...)
	case weighs:
		parts = append([]string{"a spatula"}, parts...)
	}
	return series(parts, "and")
}
