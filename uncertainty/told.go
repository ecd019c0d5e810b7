package uncertainty

import (
	"math"
	"slices"
	"sync"
	"unique"

	"minim/uncertainty/portable"
)

// told is what a posterior is drawn by. It rests on the same unknown standard deviation σ as the
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
type told struct {
	nu float64
	of table
	t  [tableCells + 1]float64 // the Student t of each node
}

// isTold reports a posterior that is drawn with the scale of its set.
func (m *Model) isTold(influence int) bool {
	d, posterior := m.influences[influence].Distribution.(Tabulated)
	return posterior && d.ofSet && m.scaleOf[influence] >= 0
}

// toldLately are those that were asked for last, since some hundred quantiles of Student's t take milliseconds.
var toldLately struct {
	sync.Mutex
	known map[toldKey]*told
}

type toldKey struct {
	table unique.Handle[table]
	nu    float64
}

const mostPosteriors = 100

// toldOf is what a posterior of readings with degrees of freedom is drawn by.
func toldOf(d Tabulated, nu float64) *told {
	of := toldKey{d.table, nu}
	toldLately.Lock()
	defer toldLately.Unlock()
	t := toldLately.known[of]
	if t == nil {
		if len(toldLately.known)%mostPosteriors == 0 {
			toldLately.known = make(map[toldKey]*told)
		}
		t = newTold(d, nu)
		toldLately.known[of] = t
	}
	return t
}

func newTold(d Tabulated, nu float64) *told {
	t := &told{nu: nu, of: d.table.Value()}
	for i, p := range t.of.p {
		t.t[i] = portable.StudentQuantile(p, nu)
	}
	return t
}

// turn normal values into those of the posterior, with what the scale of the set is.
func (t *told) turn(values, scale []float64) {
	for i, z := range values {
		values[i] = t.at(float64(z * scale[i]))
	}
}

// at is the value that a Student t stands for. Between two nodes it is straight, as it is without a
// prior; next to the ends it is exact.
func (t *told) at(x float64) float64 {
	i, _ := slices.BinarySearch(t.t[1:tableCells], x)
	low, high := t.t[i], t.t[i+1]
	if i == 0 || i == tableCells-1 || !portable.IsFinite(low) || !portable.IsFinite(high) || !(low < high) {
		return t.of.quantile(min(max(portable.StudentCDF(x, t.nu), 0x1p-1000), 1-0x1p-53))
	}
	return t.of.x[i] + float64((x-low)/(high-low)*(t.of.x[i+1]-t.of.x[i]))
}

// student is the inverse: the Student t that a value stands for, infinite beyond the ends.
func (t *told) student(e float64) float64 {
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
