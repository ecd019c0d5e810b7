package posterior

import (
	"math"
	"slices"

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
	of Table
	t  [Cells + 1]float64 // the Student t of each node
}

// NewTold is for a table of readings with degrees of freedom. It takes milliseconds.
func NewTold(of Table, nu float64) *Told {
	t := &Told{nu: nu, of: of}
	for i, p := range t.of.p {
		t.t[i] = portable.StudentQuantile(p, nu)
	}
	return t
}

// Turn normal values into those of the posterior, with what the scale of the set is.
func (t *Told) Turn(values, scale []float64) {
	for i, z := range values {
		values[i] = t.At(float64(z * scale[i]))
	}
}

// At is the value that a Student t stands for. Between two nodes it is straight, as it is without a
// prior; next to the ends it is exact.
func (t *Told) At(x float64) float64 {
	i, _ := slices.BinarySearch(t.t[1:Cells], x)
	low, high := t.t[i], t.t[i+1]
	if i == 0 || i == Cells-1 || !portable.IsFinite(low) || !portable.IsFinite(high) || !(low < high) {
		return t.of.Quantile(min(max(portable.StudentCDF(x, t.nu), 0x1p-1000), 1-0x1p-53))
	}
	return t.of.x[i] + float64((x-low)/(high-low)*(t.of.x[i+1]-t.of.x[i]))
}

// Student is the inverse: the Student t that a value stands for, infinite beyond the ends.
func (t *Told) Student(e float64) float64 {
	switch {
	case e <= t.of.x[0]:
		return math.Inf(-1)
	case e >= t.of.x[Cells]:
		return math.Inf(1)
	}
	i, found := slices.BinarySearch(t.of.x[:], e)
	if !found {
		i--
	}
	low, high := t.t[i], t.t[i+1]
	if i == 0 || i == Cells-1 || !portable.IsFinite(low) || !portable.IsFinite(high) || !(low < high) {
		return portable.StudentQuantile(t.of.Below(e), t.nu)
	}
	return low + float64((e-t.of.x[i])/(t.of.x[i+1]-t.of.x[i])*(high-low))
}
