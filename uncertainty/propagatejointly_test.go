package uncertainty

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"minim/uncertainty/portable"
)

// Joint is the result of propagating several quantities of one model together.
type Joint struct {
	// Values of the quantities at the means of all influences.
	Values []float64
	// Covariance matrix of the quantities, in their order.
	Covariance *mat.SymDense
}

// StandardUncertainty of the quantity at index i.
func (j Joint) StandardUncertainty(i int) float64 { return math.Sqrt(j.Covariance.At(i, i)) }

// Correlation coefficient of two quantities; 0 when one of them is certain.
func (j Joint) Correlation(a, b int) float64 {
	u := j.StandardUncertainty(a) * j.StandardUncertainty(b)
	if u == 0 {
		return 0
	}
	return max(-1, min(j.Covariance.At(a, b)/u, 1))
}

// PropagateJointly evaluates several quantities of the model, first order, with
// their covariances (JCGM 100, F.1.2.3 and H.2):
//
//	u(y_k, y_l) = Σ_i Σ_j r_ij (c_ki u_i) (c_lj u_j)
//
// Errors: [ZeroDivisorError], [ErrNotFinite]. It panics without a quantity.
func (m *Model) PropagateJointly(outs ...Node) (Joint, error) {
	if err := m.checkDivisors(m.reachable(outs...)); err != nil {
		return Joint{}, err
	}
	j := Joint{Values: make([]float64, len(outs)), Covariance: mat.NewSymDense(len(outs), nil)}
	c := make([][]float64, len(outs))
	for k, out := range outs {
		v := m.values(out, mean)
		j.Values[k] = v[out]
		c[k] = m.contributions(m.gradient(out, v))
		rc := m.correlate(c[k])
		for l := range k + 1 {
			covariance := dot(rc, c[l])
			if !portable.IsFinite(j.Values[k]) || !portable.IsFinite(covariance) {
				return Joint{}, ErrNotFinite
			}
			j.Covariance.SetSym(k, l, covariance)
		}
	}
	return j, nil
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += float64(a[i] * b[i])
	}
	return sum
}
