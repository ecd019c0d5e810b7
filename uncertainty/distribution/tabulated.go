package distribution

import (
	"unique"

	"minim/uncertainty/portable"
	"minim/uncertainty/posterior"
	"minim/uncertainty/random"
)

// Tabulated is a distribution that is known by a table of its distribution function: between two
// nodes of the table the density is straight. It is a comparable value as the others are: two of
// the same table are equal. [Prior.Given] makes one.
type Tabulated struct {
	about Summary
	// spread is its standard deviation, which is not its u where it is one of a set of readings.
	spread float64
	// ofSet: it is drawn with the scale of the set of its readings.
	ofSet bool
	table unique.Handle[posterior.Table]
}

func tabulated(t *posterior.Table) Tabulated {
	var s Summary
	s.Low, s.High = t.Range()
	s.Mean, s.StandardUncertainty, s.Skewness, s.Kurtosis = t.Moments()
	return Tabulated{about: s, spread: s.StandardUncertainty, table: unique.Make(*t)}
}

func (d Tabulated) Summary() Summary { return d.about }

func (d Tabulated) Widened(factor float64) Distribution {
	t := d.table.Value()
	w := tabulated(t.Stretched(d.about.Mean, factor))
	w.about.StandardUncertainty = float64(factor * d.about.StandardUncertainty)
	w.ofSet = d.ofSet
	return w
}

func (d Tabulated) Sound() bool {
	return d != Tabulated{} && bounds(d.about.Low, d.about.High) && portable.IsFinite(d.about.Mean) && portable.IsFinite(d.about.StandardUncertainty)
}

func (d Tabulated) Fill(dst []float64, s *random.Source) {
	t := d.table.Value()
	state := s.State
	for i := range dst {
		var bits uint64
		bits, state = random.Next(state)
		dst[i] = t.Quantile(random.Uniform(bits))
	}
	s.State = state
}

// Below is the distribution function.
func (d Tabulated) Below() func(x float64) float64 {
	t := d.table.Value()
	return t.Below
}
