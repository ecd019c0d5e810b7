package distribution

import (
	"math"
	"slices"
	"sync"
	"unique"

	"minim/uncertainty/portable"
)

// Told is what a posterior is drawn by. It rests on the same unknown standard deviation σ as the
// uses of the instrument, where both are by the readings of one set. So it is drawn with the scale of the
// set: the error of the mean is first drawn as it is without a prior, as a normal value times σ/s, which
// is Student's t, and the value of the posterior is the one below which as much of it lies:
//
//	F(e) = T_ν(z σ/s)
//
// Without a prior that is e = mean + z σ/√n (JCGM 101, 6.4.9): mean and uses together are Student's t
// again. With one, the table stays the distribution of e, σ stays told by the scatter of the readings
// alone, with ν degrees of freedom, and far values of e go with a large σ (constructed; what a
// prior tells of σ is left out, which is on the safe side).
type Told struct {
	nu float64
	of table
	t  [tableCells + 1]float64 // the Student t of each node
}

// toldLately are those that were asked for last, since some hundred quantiles of Student's t take milliseconds.
var toldLately struct {
	sync.Mutex
	known map[toldKey]*Told
}

type toldKey struct {
	table unique.Handle[table]
	nu    float64
}

const mostPosteriors = 100

// ToldOf is what a posterior of readings with degrees of freedom is drawn by.
func ToldOf(d Tabulated, nu float64) *Told {
	of := toldKey{d.table, nu}
	toldLately.Lock()
	defer toldLately.Unlock()
	t := toldLately.known[of]
	if t == nil {
		if len(toldLately.known)%mostPosteriors == 0 {
			toldLately.known = make(map[toldKey]*Told)
		}
		t = newTold(d, nu)
		toldLately.known[of] = t
	}
	return t
}

func newTold(d Tabulated, nu float64) *Told {
	t := &Told{nu: nu, of: d.table.Value()}
	for i, p := range t.of.p {
		t.t[i] = portable.StudentQuantile(p, nu)
	}
	return t
}

// Turn turns normal values into those of the posterior, with what the scale of the set is.
func (t *Told) Turn(values, scale []float64) {
	for i, z := range values {
		values[i] = t.At(float64(z * scale[i]))
	}
}

// At is the value that a Student t stands for. Between two nodes it is straight, as it is without a
// prior; next to the ends it is exact.
func (t *Told) At(x float64) float64 {
	i, _ := slices.BinarySearch(t.t[1:tableCells], x)
	low, high := t.t[i], t.t[i+1]
	if i == 0 || i == tableCells-1 || !portable.IsFinite(low) || !portable.IsFinite(high) || !(low < high) {
		return t.of.quantile(min(max(portable.StudentCDF(x, t.nu), 0x1p-1000), 1-0x1p-53))
	}
	return t.of.x[i] + float64((x-low)/(high-low)*(t.of.x[i+1]-t.of.x[i]))
}

// Student is the inverse: the Student t that a value stands for, infinite beyond the ends.
func (t *Told) Student(e float64) float64 {
	switch {
	case e <= t.of.x[0]:
		return math.Inf(-1)
	case e >= t.of.x[tableCells]:
		return math.Inf(1)
	}
	i, found := slices.BinarySearch(t.of.x[:], e)
	if !found {
		i--
	}
	low, high := t.t[i], t.t[i+1]
	if i == 0 || i == tableCells-1 || !portable.IsFinite(low) || !portable.IsFinite(high) || !(low < high) {
		return portable.StudentQuantile(t.of.below(e), t.nu)
	}
	return low + float64((e-t.of.x[i])/(t.of.x[i+1]-t.of.x[i])*(high-low))
}

// OfSet reports whether it is drawn with the scale of the set of its readings.
func (d Tabulated) OfSet() bool { return d.ofSet }

// Deviation is its standard deviation, which is not its u where it is one of a set of readings.
func (d Tabulated) Deviation() float64 { return d.spread }

// Quantile is the inverse of its distribution function at 0 < p < 1.
func (d Tabulated) Quantile(p float64) float64 {
	t := d.table.Value()
	return t.quantile(p)
}
