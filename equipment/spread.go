package equipment

import (
	"cmp"
	"math"
	"slices"

	"minim/equipment/quantity"
	"minim/uncertainty"
	"minim/uncertainty/portable"
)

// Spread is a standard deviation of repeated use, with the degrees of freedom
// of the readings that it was computed from; 0 when it was stated as such.
type Spread struct {
	S                float64
	DegreesOfFreedom float64
	Known            bool
	// Mean of the readings, in mL or g, and At, the mark or load that they were taken at, 0
	// where that is not stated and their mean tells it.
	Mean, At float64
	// Digit is the step to which the readings are written, or which the balance shows. ByDigit:
	// they scatter by less than that explains, so that S was taken from it.
	Digit   float64
	ByDigit bool
	// Held: the readings are said to be of what was held up to a mark. They have a standard deviation
	// of their own beside those of what was delivered from the same one. Liquid numbers those that
	// are not of water, and have one as well; 0 is water.
	Held   bool
	Liquid int
	// Elsewhere are the spreads of further readings, at other marks or loads.
	Elsewhere []Spread
}

// roundingTwice is the standard deviation, in digits, of a difference of two readings that
// are rounded to a digit: 1/√6, which USP <41> has as 0.41.
var roundingTwice = 1 / math.Sqrt(6)

// FromReadings is the spread of readings that are written to a digit, 0 where that does not
// count: their standard deviation, or 0.41 d where that is greater, since what scatters by
// less than a digit may read alike.
func FromReadings(values []float64, digit float64) Spread {
	mean, s, nu := uncertainty.Readings(values)
	spread := Spread{S: s, DegreesOfFreedom: nu, Known: true, Mean: mean, Digit: digit}
	if least := roundingTwice * digit; s < least*(1-1e-9) {
		spread.S, spread.ByDigit = least, true
	}
	return spread
}

// Readings is the number of them, 0 where the spread is stated as such.
func (s *Spread) Readings() float64 {
	if s.DegreesOfFreedom == 0 {
		return 0
	}
	return s.DegreesOfFreedom + 1
}

// measured is what the mean of the readings says: with their scatter over √n, by the spread that
// it is judged by, the rounding of the mean, and the standard uncertainty of what is wrong with all
// of them alike. The degrees of freedom are those of Welch and Satterthwaite.
func (s *Spread) measured(scatter Spread, common float64) uncertainty.Measured {
	own := scatter.S / math.Sqrt(s.Readings())
	m := uncertainty.Measured{Mean: s.Mean, Scale: portable.Hypot(own, portable.Hypot(s.roundingOfMean(), common)), Nu: math.Inf(1)}
	if share := own / m.Scale; share > 0 {
		m.Nu = scatter.DegreesOfFreedom / (share * share * share * share)
	}
	return m
}

// roundingOfMean is what the rounding of each reading to its digit leaves in their mean. Where they
// scatter by half a digit or more the rounding is part of their scatter. Below, all of them may be
// rounded alike, and no number of readings makes that less.
func (s *Spread) roundingOfMean() float64 {
	if s.ByDigit || s.S < s.Digit/2 {
		return s.Digit / math.Sqrt(12)
	}
	return 0
}

// pooled is the spread by which a mean is judged: that of its own readings or, of few, that of all
// sets together, s² = Σ ν_i s_i²/Σ ν_i (JCGM 100, H.3.6).
func (s Spread) pooled(sets []Spread) (by Spread, together bool) {
	if s.DegreesOfFreedom >= leastNu || len(sets) < 2 {
		return s, false
	}
	squares, nu := 0.0, 0.0
	for i := range sets {
		squares += float64(sets[i].DegreesOfFreedom * sets[i].S * sets[i].S)
		nu += sets[i].DegreesOfFreedom
	}
	s.S, s.DegreesOfFreedom = math.Sqrt(squares/nu), nu
	return s, true
}

// Join takes in further readings, at other marks or loads.
func (s *Spread) Join(other Spread) {
	if s.Known {
		s.Elsewhere = append(s.Elsewhere, other)
	} else {
		*s = other
	}
}

// place is the mark or load that the readings were taken at.
func (s *Spread) place() float64 { return quantity.Round(cmp.Or(s.At, s.Mean), 7) }

// nearest is the spread of the readings that were taken nearest to a mark or load.
func (s Spread) nearest(at float64) Spread {
	best := s
	for _, other := range s.Elsewhere {
		if math.Abs(other.place()-at) < math.Abs(best.place()-at) {
			best = other
		}
	}
	best.Elsewhere = nil
	return best
}

// isThere reports whether the readings were taken at a mark or load: within a tenth of it.
func (s *Spread) isThere(at float64) bool {
	return s.DegreesOfFreedom == 0 || math.Abs(s.place()-at) <= 0.1*at*(1+1e-9)
}

// distribution of what scatters with sigma: Student's t with n - 1 degrees of freedom for
// n readings, normal for what is stated.
func (s Spread) distribution(sigma float64) uncertainty.Distribution {
	if s.DegreesOfFreedom > 0 && sigma > 0 {
		return uncertainty.StudentT{Sigma: sigma, Nu: s.DegreesOfFreedom}
	}
	return uncertainty.Normal{Sigma: sigma}
}

// scattering makes an influence what scatters with sigma when an instrument measures an
// amount. The readings of the instrument have one unknown standard deviation for all uses
// of it; where a divisor depends on the influence, no error takes the amount below nothing or
// beyond twice of it.
func (s Spread) scattering(in uncertainty.Influence, instrument string, sigma, amount float64) uncertainty.Influence {
	in.Distribution, in.DegreesOfFreedom, in.Assumed = s.distribution(sigma), s.DegreesOfFreedom, s.ByDigit
	if s.DegreesOfFreedom > 0 {
		in.Set, in.Most, in.Ground = s.Set(instrument), amount, s.ground()
	}
	return in
}

// Set is that of the readings of an instrument.
func (s *Spread) Set(instrument string) uncertainty.Set {
	owner := uncertainty.Owner{Kind: uncertainty.Instrument, Name: instrument, Step: 2 * s.Liquid}
	if s.Held {
		owner.Step++
	}
	return uncertainty.Set{Owner: owner, At: s.place()}
}

// noteReadings says what the use of readings at a mark or load rests on.
func (s *Spread) noteReadings(notes *Notes, instrument string, at float64, show func(float64) any) {
	if !s.isThere(at) {
		notes.Assume("not-measured-there", instrument, show(at), show(quantity.Round(s.place(), 3)))
	}
	if s.ByDigit {
		notes.Assume("scatter-of-a-digit", instrument, show(s.Digit))
	}
}

// scaled is the spread with all that is known of it, in a unit by times as large.
func (s Spread) scaled(by float64) Spread {
	s.S, s.Digit = s.S*by, s.Digit*by
	s.Elsewhere = slices.Clone(s.Elsewhere)
	for i := range s.Elsewhere {
		s.Elsewhere[i] = s.Elsewhere[i].scaled(by)
	}
	return s
}
