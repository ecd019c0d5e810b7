package equipment

import (
	"fmt"
	"math"
	"strconv"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// Balance is a balance or scale with a digital display.
type Balance struct {
	Name string
	// Capacity and Readability d in g.
	Capacity, Readability float64
	// Repeatability is the standard deviation s of repeated weighings of one
	// load, as read: it already holds the rounding at zero and at the load.
	Repeatability Spread
	// Linearity is the limit of the error over the range, in g, and Law how it goes along the
	// range.
	Linearity Stated
	Law       Law
	// Span is the limit of the relative error of the sensitivity.
	Span float64
	// Weighing is a standard uncertainty of one weighing, from a certificate;
	// it replaces rounding, repeatability and linearity.
	Weighing Stated
	// Checks are readings of check weights: see [Balance.Judge].
	Checks []Check
	// Count is the number of pieces alike.
	Count int
	// Price of a piece.
	Price Price
}

// Shows returns a [Cannot] error when the display cannot show a reading.
func (b *Balance) Shows(reading float64) error {
	if reading > b.Capacity*(1+1e-12) {
		return Cannot("more-than-it-carries", b.Name, G(reading), G(b.Capacity))
	}
	steps := math.Round(reading / b.Readability)
	if isMultiple(reading, b.Readability) && steps > 0 {
		return nil
	}
	shown := b.Display(steps * b.Readability)
	if steps < 1 {
		return Cannot("less-than-it-shows", b.Name, G(reading), shown, b.Display(b.Readability))
	}
	return Cannot("between-two-readings", b.Name, G(reading), shown)
}

// Displayed is a number of digits of the balance in g, as it is displayed.
func (b *Balance) Displayed(digits float64) float64 { return Digits(digits, b.Readability) }

// Display prints a reading with the digits that the balance shows.
func (b *Balance) Display(reading float64) string {
	places := 0
	for scaled := b.Readability; places < 9 && math.Abs(scaled-math.Round(scaled)) > 1e-6*scaled; places++ {
		scaled *= 10
	}
	return strconv.FormatFloat(reading, 'f', places, 64) + " g"
}

// Weigh appends the mass of one weighing with display reading R, with a boat or vessel on
// the pan that was zeroed in a step, this one or an earlier one:
//
//	m = (R + e_zero + e_load + e_rep + e_lin(gross) - e_lin(tare)) (1 + e_span)
//
// Two readings from one zero have its rounding in common. It returns a [Cannot] error when
// the display cannot show R.
func (b *Balance) Weigh(u Use, reading float64, zeroedIn uncertainty.Owner, tare Pan) (uncertainty.Node, error) {
	return b.weigh(u, reading, tare, func() (gross, less []uncertainty.Node) {
		gross = []uncertainty.Node{
			b.repeatability(u, u.Step, b.Under(tare, reading).grams, reading), b.rounding(u, zeroedIn, zeroRounded), b.rounding(u, u.Step, loadRounded),
			b.linearity(u, end{b.Under(tare, reading), u.Step, linearityCode}, end{tare, zeroedIn, linearAtZero}),
		}
		return gross, nil
	})
}

// WeighBetween is [Balance.Weigh] for a mass that is the difference of a gross
// and a tare reading, each with its own scatter, roundings and linearity (EURACHEM/CITAC
// CG 4, example A2). The tare was read in tareIn: it may be the gross reading
// of the weighing before, and is then one draw with it.
func (b *Balance) WeighBetween(u Use, reading float64, tareIn uncertainty.Owner, tare Pan) (uncertainty.Node, error) {
	read := func(step uncertainty.Owner, load, amount float64) []uncertainty.Node {
		return []uncertainty.Node{b.repeatability(u, step, load, amount), b.rounding(u, step, zeroRounded), b.rounding(u, step, loadRounded)}
	}
	return b.weigh(u, reading, tare, func() (gross, less []uncertainty.Node) {
		on, load, amount := b.Under(tare, reading), tare.grams, tare.read
		if amount == 0 { // not the gross reading of a weighing
			load, amount = on.grams, reading
		}
		linear := b.linearity(u, end{on, u.Step, linearityCode}, end{tare, tareIn, linearityCode})
		return append(read(u.Step, on.grams, reading), linear), read(tareIn, load, amount)
	})
}

// weigh appends the mass of a weighing; ends appends what is wrong with its two
// ends, of which the second is taken off.
func (b *Balance) weigh(u Use, reading float64, tare Pan, ends func() (gross, less []uncertainty.Node)) (uncertainty.Node, error) {
	if err := b.Shows(reading); err != nil {
		return 0, err
	}
	m := u.Model
	mass := m.Constant(reading)
	if b.Weighing.Known {
		mass = m.Add(mass, b.error(u, u.Step, weighing, uncertainty.Normal{Sigma: b.Weighing.Value}))
	} else {
		gross, less := ends()
		mass = m.Add(mass, gross...)
		for _, e := range less {
			mass = m.Subtract(mass, e)
		}
		b.noteLinearity(u, tare)
	}
	b.tellChecks(u.Notes)
	if b.Span == 0 && !b.Weighing.Known {
		u.Notes.LeaveOut("sensitivity", b.Name)
	}
	if b.Span > 0 {
		span := b.span(u)
		if c := b.nearestCheck(b.Under(tare, reading).grams); c != nil {
			span = b.given(u, c, span, c.Weight.Mass*b.Span*b.Span/3)
		}
		mass = m.Multiply(mass, m.Add(m.Constant(1), span))
	}
	return mass, nil
}

// span appends the relative error of the sensitivity.
func (b *Balance) span(u Use) uncertainty.Node {
	return u.Model.Influence(influence(u.piece(b.Name, b.Count), sensitivity, "", uncertainty.PlusMinus(b.Span)))
}

// rounding appends the rounding of one reading to a digit.
func (b *Balance) rounding(u Use, step uncertainty.Owner, at uncertainty.Code) uncertainty.Node {
	return b.error(u, step, at, uncertainty.PlusMinus(b.Readability/2))
}

func (b *Balance) error(u Use, step uncertainty.Owner, what uncertainty.Code, d uncertainty.Distribution) uncertainty.Node {
	return u.Model.Influence(b.influence(step, what, d))
}

// influence is an error that is made in a step.
func (b *Balance) influence(step uncertainty.Owner, what uncertainty.Code, d uncertainty.Distribution) uncertainty.Influence {
	return influence(with(step, b.Name), what, "g", d)
}

// repeatability appends e_rep: the part of s that the two roundings do not
// already explain, s² - d²/6. That makes the floor of 0.41 d for s of USP <41>
// come by itself. Not stated, s = d is assumed (common practice for inexpensive
// scales, no source).
//
// It is that of the readings nearest to the load, or to the gross load of the mass where a tare
// was read, of which amount is the mass.
func (b *Balance) repeatability(u Use, step uncertainty.Owner, load, amount float64) uncertainty.Node {
	s, d := b.Repeatability.nearest(load), b.Readability
	in := s.scattering(b.influence(step, repeatability, nil), b.Name, b.pure(s.S), amount)
	if s.Known {
		s.noteReadings(u.Notes, b.Name, load, showG)
	} else {
		u.Notes.Assume("repeats-within-a-digit", b.Name, G(d))
		in.Distribution, in.Assumed = uncertainty.Normal{Sigma: b.pure(d)}, true
	}
	return u.Model.Influence(in)
}

func (b *Balance) pure(s float64) float64 {
	return math.Sqrt(math.Max(0, float64(s*s)-b.Readability*b.Readability/6))
}

// LeftBehind appends what stays of a weighed mass on the boat, rectangular from
// 0 to the given limit in g.
func (b *Balance) LeftBehind(u Use, limit float64) uncertainty.Node {
	return b.error(u, u.Step, leftOnBoat, uncertainty.Rectangular{Low: 0, High: limit})
}

// WithReadability is a balance like this one that reads to d in g: its standard
// deviation, linearity and weighing uncertainty, where the kit states them, are as
// many digits as before; what is not stated follows from d by itself. Capacity,
// sensitivity and count stay, and nothing is known of its price. It panics unless
// d is positive and finite.
func (b *Balance) WithReadability(d float64) *Balance {
	if !(d > 0) || math.IsInf(d, 1) {
		panic(fmt.Sprintf("equipment: a balance that reads to %v g", d))
	}
	other := *b
	other.Name, other.Price = "balance reading "+quantity.Grams(d), Price{}
	other.Readability = d
	other.Repeatability = b.Repeatability.scaled(d / b.Readability)
	other.Checks = nil
	for _, figure := range []*float64{&other.Linearity.Value, &other.Weighing.Value} {
		*figure *= d / b.Readability
	}
	return &other
}
