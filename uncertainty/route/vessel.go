package route

import (
	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/words/note"
)

// burden is what stands on a balance in a step: net of what is read, in a vessel.
type burden struct {
	net, vessel float64 // in g
	// assumed says how the mass of the vessel was come by; nothing where it is stated.
	assumed note.Note
}

// Carries returns an [equipment.Cannot] error when what a step weighs is, with the
// vessel that it is in, more than the balance carries; for a step without a balance, nil.
// A vessel is zeroed and does not show, but it weighs. Where neither the step nor the
// kit states its mass, it is as heavy as the water that it holds, if of glass, and a
// fifth of that, if of plastic: see [equipment.Measure.VesselMass].
func (p *Prep) Carries(s Step) error {
	if s.Balance == nil {
		return nil
	}
	l := p.burdenOf(&s)
	if l.net+l.vessel <= s.Balance.Capacity*(1+1e-12) || l.net > s.Balance.Capacity*(1+1e-12) {
		return nil // or more than it shows, which weighing says
	}
	net, vessel, most := s.Balance.Display(l.net), quantity.GramsBeyond(l.vessel, s.Balance.Capacity-l.net), equipment.G(s.Balance.Capacity)
	if l.assumed.None() {
		return equipment.Cannot("carries-no-vessel", s.Balance.Name, net, vessel, most)
	}
	return equipment.Cannot("carries-no-assumed-vessel", s.Balance.Name, net, vessel, most, l.assumed)
}

// mustCarry is Carries for a step of the route, with the vessel that was zeroed for it. It
// notes an assumed mass where twice as much would be too much.
func (c *compiler) mustCarry(i int) error {
	s := c.route.Steps[i]
	if s.Verb.Traits().Fills && !s.Vessel.Known && i > 0 {
		s.Vessel = c.route.Steps[i-1].vesselZeroed()
	}
	if err := c.prep.Carries(s); err != nil || s.Balance == nil {
		return err
	}
	if l := c.prep.burdenOf(&s); !l.assumed.None() && l.net+2*l.vessel > s.Balance.Capacity {
		c.notes.Assume("vessel-on-balance", s.Balance.Name, s.Balance.Display(l.net), l.vessel, l.assumed, quantity.GramsWithin(s.Balance.Capacity-l.net))
	}
	return nil
}

// vesselZeroed is the mass of the vessel that a weighed aliquot is in.
func (s *Step) vesselZeroed() equipment.Stated {
	if s.Verb.Traits().then == weighedPart {
		return s.Vessel
	}
	return equipment.Stated{}
}

// burdenOf is what a step with a balance puts on it.
func (p *Prep) burdenOf(s *Step) burden {
	l := burden{net: s.Amount}
	switch {
	case s.Vessel.Known:
		l.vessel = s.Vessel.Value
	case s.Verb == Weigh || s.Verb == AddSolute:
		boat := equipment.Measure{Capacity: s.Amount, Plastic: true} // as heavy as if it were filled with water of that mass
		l.vessel, _ = boat.VesselMass()
		l.assumed = note.Of("boat-of-plastic", "")
	case s.Verb == WeighAliquot:
		// the total that follows is more
	default:
		l.vessel, l.assumed = p.lightestVessel(s.Amount / p.densityOfSolvent())
	}
	return l
}

// densityOfSolvent is that of water where it is not known.
func (p *Prep) densityOfSolvent() float64 {
	if p.Solvent.Density.Known {
		return p.Solvent.Density.Value
	}
	return 1
}

// lightestVessel is the mass of the lightest vessel that holds a volume in mL: of those
// of the kit whose mass is stated or that are of plastic, and of one of glass that just
// holds it.
func (p *Prep) lightestVessel(mL float64) (g float64, assumed note.Note) {
	just := equipment.Measure{Capacity: mL}
	g, _ = just.VesselMass()
	assumed = note.Of("vessel-of-glass", "")
	for _, k := range p.Kit.Measures {
		if !k.Kind.Traits().Receives || k.Capacity < mL*(1-1e-9) {
			continue
		}
		if mass, stated := k.VesselMass(); mass < g && (stated || k.Plastic) {
			g, assumed = mass, note.Of("vessel-of-plastic", k.Name)
			if stated {
				assumed = note.Of("vessel-taken-for-it", k.Name)
			}
		}
	}
	return g, assumed
}
