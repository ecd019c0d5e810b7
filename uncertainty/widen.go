package uncertainty

import "fmt"

// widened returns a distribution about the same mean whose standard uncertainty is
// factor times that of d, of the same shape; a gamma distribution stays one. It
// panics for a distribution of another package.
func widened(d Distribution, factor float64) Distribution {
	about := func(x float64) float64 { return d.Mean() + float64(factor*(x-d.Mean())) }
	switch d := d.(type) {
	case Normal:
		return Normal{d.Mu, d.Sigma * factor}
	case StudentT:
		return StudentT{d.Mu, d.Sigma * factor, d.Nu}
	case Gamma:
		return Gamma{d.Mu, d.Sigma * factor}
	case Rectangular:
		return Rectangular{about(d.Low), about(d.High)}
	case InexactRectangular:
		return InexactRectangular{about(d.Low), about(d.High), d.D * factor}
	case Triangular:
		return Triangular{about(d.Low), about(d.High)}
	case Trapezoidal:
		return Trapezoidal{about(d.Low), about(d.High), d.Beta}
	case Arcsine:
		return Arcsine{about(d.Low), about(d.High)}
	}
	panic(fmt.Sprintf("uncertainty: %T cannot be widened", d))
}
