package distribution

import (
	"sync"
	"unique"

	"minim/uncertainty/posterior"
)

// toldLately are those that were asked for last, since some hundred quantiles of Student's t take milliseconds.
var toldLately struct {
	sync.Mutex
	known map[toldKey]*posterior.Told
}

type toldKey struct {
	table unique.Handle[posterior.Table]
	nu    float64
}

const mostPosteriors = 100

// ToldOf is what a posterior of readings with degrees of freedom is drawn by.
func ToldOf(d Tabulated, nu float64) *posterior.Told {
	of := toldKey{d.table, nu}
	toldLately.Lock()
	defer toldLately.Unlock()
	t := toldLately.known[of]
	if t == nil {
		if len(toldLately.known)%mostPosteriors == 0 {
			toldLately.known = make(map[toldKey]*posterior.Told)
		}
		t = posterior.NewTold(d.table.Value(), nu)
		toldLately.known[of] = t
	}
	return t
}

// OfSet reports whether it is drawn with the scale of the set of its readings.
func (d Tabulated) OfSet() bool { return d.ofSet }

// Deviation is its standard deviation, which is not its u where it is one of a set of readings.
func (d Tabulated) Deviation() float64 { return d.spread }

// Quantile is the inverse of its distribution function at 0 < p < 1.
func (d Tabulated) Quantile(p float64) float64 {
	t := d.table.Value()
	return t.Quantile(p)
}
