package route

import "cmp"

// Solution is one that a route has made on its way.
type Solution struct {
	// Step that made it, from 1.
	Step int
	// Concentration expected, in g/mL, the volume that was made, and what is left of it in
	// the end, in mL.
	Concentration, MadeML, LeftML float64
}

// Solutions are those that a route makes, in order, the wanted one last. The route must
// be possible.
func (p *Prep) Solutions(r *Route) ([]Solution, error) {
	c, err := p.compile(r)
	if err != nil {
		return nil, err
	}
	var list []Solution
	for i := range r.Steps {
		if l := c.solutions[i]; l != nil {
			list = append(list, Solution{i + 1, c.model.Expected(l.concentration), l.made, l.left})
		}
	}
	return list, nil
}

// StockConcentration is the expected concentration of a stock in g/mL.
func (p *Prep) StockConcentration(s *Stock) (float64, error) {
	c := p.newCompiler(&Route{})
	l, err := c.stock(s)
	if err != nil {
		return 0, err
	}
	return c.model.Expected(l.concentration), nil
}

// StockFraction is the intended mass fraction of a stock. The density of the solvent, or its
// own, must be known, and models must carry masses.
func (p *Prep) StockFraction(s *Stock) (float64, error) {
	c := p.newCompiler(&Route{})
	l, err := c.stock(s)
	if err != nil {
		return 0, err
	}
	w, _, err := c.byMass(l)
	if err != nil {
		return 0, err
	}
	return c.model.Intended(w), nil
}

// SoluteContent is the mass of the substance that the strength counts in 1 g of what is
// weighed.
func (p *Prep) SoluteContent() float64 {
	content := 1.0
	if p.Solute.Assay.Known {
		content = p.Solute.Assay.Value
	}
	return float64(content * cmp.Or(p.Solute.FormFactor, 1))
}

// SpecificVolume is the apparent specific volume of the solute in mL/g, as estimated.
func (p *Prep) SpecificVolume() float64 { return p.phi().Value }
