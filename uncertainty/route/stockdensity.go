package route

import (
	"cmp"
	"fmt"
	"math"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/strengths"
)

// stockTable finds the densities of a stock by its strength: those of the solute in water, or
// of what the stock itself is called.
func (p *Prep) stockTable(s *Stock) (t *equipment.StockSubstance, found bool) {
	if !equipment.IsWater(cmp.Or(s.Solvent, p.Solvent.Name)) {
		return nil, false
	}
	if t, found = equipment.FindStock(p.Solute.Name); !found {
		t, found = equipment.FindStock(s.Name)
	}
	return t, found
}

// isSolid reports whether the solute is known to be a solid: stated, or by its name.
func (p *Prep) isSolid() bool {
	return p.Solute.State == "solid" || p.Solute.NonVolatile || equipment.StaysBehind(p.Solute.Name)
}

// LacksDensity is the error of a stock by mass of which no density is known: neither is it
// stated nor the apparent specific volume, the table of stocks does not have it, and the
// solute is not known to be a solid. It is nil for all others.
func (p *Prep) LacksDensity(s *Stock) error {
	if !s.Unit.Basis.Traits().InMass || s.Density.Known || p.Solute.SpecificVolume.Known {
		return nil // which with the strength makes a density, where the table has none
	}
	why := fmt.Errorf("the table of stocks does not have %q", p.Solute.Name)
	switch t, found := p.stockTable(s); {
	case found && p.fractionInTable(t, s) <= t.Most()*(1+1e-9):
		return nil
	case found:
		why = fmt.Errorf("the table of stocks has %s only up to %s %% w/w", t.Name, quantity.Number(100*t.Most()))
	case p.isSolid():
		return nil
	case !equipment.IsWater(cmp.Or(s.Solvent, p.Solvent.Name)):
		why = fmt.Errorf("the table of stocks is of solutions in water, not in %s", cmp.Or(s.Solvent, p.Solvent.Name))
	}
	return &quantity.Error{
		Message: fmt.Sprintf("%s needs the density of the stock: %v", s.Unit.Name, why),
		Hint:    "state density in the [[stock]], as its label has it; or, of a solid that is dissolved, state = \"solid\" in the table [solute]",
	}
}

// fractionInTable is the mass fraction of a stock as its table counts it.
func (p *Prep) fractionInTable(t *equipment.StockSubstance, s *Stock) float64 {
	return s.Strength.Value / s.Unit.Per * p.counts(t, s) * t.Holds(p.Solute.As)
}

// counts is how many g of what the strengths of the prep count 1 g holds of what the label
// of a stock counts: 0.486 g of NH3 for 1 g of NH4OH.
func (p *Prep) counts(t *equipment.StockSubstance, s *Stock) float64 {
	if s.As == "" || t == nil {
		return 1
	}
	return t.Holds(s.As) / t.Holds(p.Solute.As)
}

// strengthAsCounted appends the strength of a stock in its unit, as the strengths of the prep
// count it, and names the other way to read a label that does not say.
func (c *compiler) strengthAsCounted(s *Stock) uncertainty.Node {
	strength := c.material(uncertainty.Stock, s.Name, strengthOfStock, s.Unit.Name, s.Strength)
	t, found := equipment.FindStock(c.prep.Solute.Name)
	if !found || t.AlsoAs == "" || !s.Unit.CountsMass() {
		return strength
	}
	if s.As == "" {
		form, other := t.As, t.AlsoAs
		if c.prep.Solute.As == t.AlsoAs {
			form, other = other, form
		}
		c.notes.Assume("read-as", s.Name, form, other, t.Holds(other)/t.Holds(form))
	}
	if by := c.prep.counts(t, s); by != 1 {
		c.notes.Assume("counted-as", s.Name, s.As, by, cmp.Or(c.prep.Solute.As, t.As))
		return c.model.Multiply(strength, c.fixed(by, countedOfForm, s.Name, "", uncertainty.Ground{By: byStocks, Of: t.Name, Trust: t.Trust}))
	}
	return strength
}

// concentrate appends the concentration of a stock.
func (c *compiler) concentrate(l *liquid, s *Stock, strength uncertainty.Node) error {
	if s.Unit.Basis.Traits().InMass && c.byOwnDensity(l, s, strength) {
		return nil
	}
	concentration, err := c.fromUnit(strength, s.Unit, l.medium)
	if err != nil {
		return err
	}
	if l.concentration = c.oftenPoured(c.aged(concentration, s), s, l.medium); s.Density.Known {
		l.density, l.hasDensity = c.statedDensity(s), true
	}
	return nil
}

// byOwnDensity appends the concentration of a stock by mass of which the density ρ is known:
//
//	γ = w ρ
//
// with ρ as stated, or as the table of stocks has it for its strength: then
//
//	ρ = ρ_table + ρ' (w - w_stated)
//
// where ρ_table lies within its limit. It is false where nothing is known of the density, so
// that it follows from the apparent specific volume of the solute. The density says nothing
// about the strength, which two solutions of one density may differ in (acetic acid), or
// many (sulphuric acid).
func (c *compiler) byOwnDensity(l *liquid, s *Stock, strength uncertainty.Node) bool {
	m := c.model
	w := m.Multiply(strength, c.converted(s.Unit, true))
	t, found := c.prep.stockTable(s)
	switch {
	case s.Density.Known:
		l.density = c.statedDensity(s)
		if found {
			c.compareDensity(t, s)
		}
	case found && c.prep.fractionInTable(t, s) <= t.Most()*(1+1e-9):
		l.density = c.tabledDensity(t, s, w)
	default:
		return false
	}
	l.hasDensity, l.hasFraction = true, true
	l.fraction = c.oftenPoured(c.aged(w, s), s, l.medium)
	l.concentration = m.Multiply(l.fraction, l.density)
	return true
}

// statedDensity appends the density that is stated of a stock.
func (c *compiler) statedDensity(s *Stock) uncertainty.Node {
	if s.Density.Distribution == nil {
		c.notes.LeaveOut("uncertainty-of-density", s.Name)
	}
	return c.material(uncertainty.Stock, s.Name, density, "g/mL", s.Density)
}

// tabledDensity appends the density that the table has for the mass fraction of a stock.
func (c *compiler) tabledDensity(t *equipment.StockSubstance, s *Stock, w uncertainty.Node) uncertainty.Node {
	m, at := c.model, t.At(math.Min(1, c.prep.fractionInTable(t, s)))
	c.notes.Assume("density-of-stock", s.Name, quantity.Decimal(at.Density, 4), quantity.Decimal(at.Limit, 2), t.Name, at.Trust)
	if at.Recalled() {
		c.notes.Remember("density-from-memory", s.Name, quantity.Decimal(at.Density, 4))
	}
	ground := uncertainty.Ground{By: byStocks, Of: t.Name, Trust: at.Trust}
	known := c.materialBy(uncertainty.Stock, s.Name, density, "g/mL", Between(at.Density-at.Limit, at.Density+at.Limit), ground, true)
	if s.Strength.Distribution == nil || c.exact {
		return known
	}
	slope := at.Slope * t.Holds(c.prep.Solute.As)
	return m.Add(known, m.Multiply(c.fixed(slope, slopeOfTable, s.Name, "g/mL", ground), m.Subtract(w, m.Constant(m.Intended(w)))))
}

// compareDensity warns where the density that is stated of a stock is not one that the table
// has for its strength. Which of the two is wrong it cannot say.
func (c *compiler) compareDensity(t *equipment.StockSubstance, s *Stock) {
	w := c.prep.fractionInTable(t, s)
	if !(w <= t.Most()) {
		return
	}
	at := t.At(w)
	off := 2 * (s.Density.u() + float64(math.Abs(at.Slope)*w/s.Strength.Value*s.Strength.u()))
	if math.Abs(s.Density.Value-at.Density) > 0.005+at.Limit+off {
		c.notes.Warn("density-unlike-table", s.Name, quantity.Number(s.Density.Value), quantity.Decimal(at.Density, 4), t.Name)
	}
}

// aged takes from a strength what a stock may have lost with age.
func (c *compiler) aged(x uncertainty.Node, s *Stock) uncertainty.Node {
	if s.Loss == 0 {
		return x
	}
	return c.lose(x, -s.Loss, uncertainty.Influence{
		Code:  lossWithAge,
		Owner: uncertainty.Owner{Kind: uncertainty.Stock, Name: s.Name}, Group: uncertainty.Group{Kind: uncertainty.Stock, Name: s.Name},
	})
}

// asStated is the strength in the unit of the target, at its least and at most, of a stock by
// mass as any other strength in its unit is converted, such as one from which hazard words
// hold: whatever density its bottle has. Without one it is as given.
func (c *compiler) asStated(l *liquid, s *Stock, coverage, lower, upper float64) (least, most float64) {
	if !l.hasFraction || !l.hasDensity {
		return lower, upper
	}
	a, err := c.mixed(l.fraction, coverage)
	if err != nil {
		return 0, math.Inf(1)
	}
	low, high := c.model.Range(l.fraction)
	stated := func(w float64) float64 {
		return c.prep.InTargetUnit(strengths.Strength{Value: math.Min(1, math.Max(0, w)) * s.Unit.Per, Unit: s.Unit})
	}
	return math.Min(lower, stated(math.Max(low, a.Lower()))), math.Max(upper, stated(math.Min(high, a.Upper())))
}

// errVolumes is the error of a strength in volumes of anything but hydrogen peroxide.
func (p *Prep) errVolumes(s strengths.Strength) error {
	if t, found := equipment.FindStock(p.Solute.Name); s.Unit.Name != strengths.Volumes || found && t.As == "H2O2" {
		return nil
	}
	return &quantity.Error{Found: s.Text, Message: fmt.Sprintf("%s are volumes of oxygen that hydrogen peroxide gives off", s.Unit.Name),
		Hint: "name the solute hydrogen peroxide, or state its strength in another unit"}
}
