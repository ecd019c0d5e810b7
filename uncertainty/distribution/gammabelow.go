package distribution

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
)

// CutGamma is a gamma distribution of which what lies above a limit is cut off: the
// quantity cannot be more than that.
type CutGamma struct {
	Gamma
	Most float64
}

// GammaBelow is the gamma distribution with mean mu and standard deviation sigma without
// what lies above most, which must not be below mu: what stays of a volume is no more than
// the volume. Where that is next to nothing it is [Gamma] itself; else mean and standard
// deviation are less than mu and sigma.
func GammaBelow(mu, sigma, most float64) Distribution {
	d := Gamma{mu, sigma}
	if d.Above(most) < 1e-15 {
		return d
	}
	return CutGamma{d, most}
}

// Narrow is the shape from which on a gamma distribution is no wider than a thousandth of its mean.
const Narrow = 1e6

// Above is the probability of more than x. It is γ(a, x)/Γ(a) of the shape a that is taken
// from 1, both by [gammaSeries], Γ as γ(a, z) far above the mean. For narrow distributions
// it is 0, 1/2 or 1, with steps 8 standard deviations off the mean.
func (d Gamma) Above(x float64) float64 {
	a := d.Shape()
	at, far := float64(a*(x/d.Mu)), a+float64(8*math.Sqrt(a))+60
	switch {
	case !(x > 0):
		return 1
	case a > Narrow && x > d.Mu+float64(8*d.Sigma):
		return 0
	case a > Narrow && x < d.Mu-float64(8*d.Sigma):
		return 1
	case a > Narrow:
		return 0.5
	case at >= far:
		return 0
	}
	below := float64(portable.Exp(float64(a*portable.Log(at/far))+(far-at)) * (gammaSeries(a, at) / gammaSeries(a, far)))
	return min(1, max(0, 1-below))
}

// gammaSeries is the sum of x^k/(a (a+1) … (a+k)) over k from 0 on, by which the incomplete
// gamma function is
//
//	γ(a, x) = x^a e^-x Σ
//
// (Abramowitz and Stegun, Handbook of Mathematical Functions, 6.5.29, from memory).
func gammaSeries(a, x float64) float64 {
	term := 1 / a
	sum := term
	for n := a + 1; term > 1e-17*sum; n++ {
		term = float64(term * (x / n))
		sum += term
	}
	return sum
}

// Summary follows from integration by parts. With c the limit in units of the scale θ, the
// shape a, and 1/δ the series above at c, the mean is m = a - δ, and the central moments are
//
//	μ_2 = m - δ(c - m),  μ_(n+1) = (n + δ) μ_n + n m μ_(n-1) - δ (c - m)^n
func (d CutGamma) Summary() Summary {
	a := d.Shape()
	scale := d.Mu / a
	c := d.Most / scale
	cut := 1 / gammaSeries(a, c)
	m := a - cut
	rest := c - m
	second := m - float64(cut*rest)
	third := float64((2+cut)*second) - float64(cut*rest*rest)
	fourth := float64((3+cut)*third) + float64(3*m*second) - float64(cut*rest*rest*rest)
	return Summary{
		Mean: scale * m, StandardUncertainty: scale * math.Sqrt(second),
		Skewness: third / (second * math.Sqrt(second)), Kurtosis: fourth / (second * second), High: d.Most,
	}
}

func (d CutGamma) Widened(factor float64) Distribution {
	return GammaBelow(d.Mu, d.Sigma*factor, d.Most)
}

func (d CutGamma) Sound() bool {
	return d.Gamma.Sound() && d.Shape() <= Narrow && d.Most >= d.Mu && portable.IsFinite(d.Most)
}

// Fill draws again what is too much: less than half of all, since more than half of a gamma
// distribution lies below its mean.
func (d CutGamma) Fill(dst []float64, s *random.Source) {
	d.Gamma.Fill(dst, s)
	for i := range dst {
		for dst[i] > d.Most {
			d.Gamma.Fill(dst[i:i+1], s)
		}
	}
}

// Below is the distribution function, by the ratio of both series.
func (d CutGamma) Below() func(x float64) float64 {
	all := 1 - d.Above(d.Most)
	return func(x float64) float64 {
		if x <= 0 {
			return 0
		}
		return min(1, (1-d.Above(x))/all)
	}
}
