package uncertainty

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"minim/uncertainty/distribution"
	"minim/uncertainty/near"
)

// TestRisksOfMedians: constructed, closed form (Sheppard 1898, from memory): two
// normal quantities with correlation ρ lie on opposite sides of their means
// with the probability arccos(ρ)/π, here ρ² = σ²/(σ² + u²).
func TestRisksOfMedians(t *testing.T) {
	l := Limits{noLower, 7}
	for _, u := range []float64{1e-9, 1e-4, 0.03, 0.5, 1, 4, 1e3, 1e6} {
		consumer, producer := Inspection{Normal{Mu: 7, Sigma: 1}, u, l, l}.GlobalRisks()
		want := math.Atan(u) / (2 * math.Pi)
		near.Absolute(t, fmt.Sprint("consumer, u = ", u), want, consumer, 1e-13)
		near.Absolute(t, fmt.Sprint("producer, u = ", u), want, producer, 1e-13)
	}
}

// bivariate is P(X <= h, Y <= k) of standard normal quantities with correlation
// ρ (Plackett, Biometrika 41 (1954) 351, from memory, with r = sin θ):
//
//	Φ(h) Φ(k) + 1/2π ∫ exp(-(h² - 2 h k sin θ + k²)/(2 cos² θ)) dθ, 0 to arcsin ρ
func bivariate(h, k, rho float64) float64 {
	phi := distuv.UnitNormal.CDF
	if math.IsInf(h, 0) || math.IsInf(k, 0) {
		return phi(h) * phi(k)
	}
	density := func(theta float64) float64 {
		sin, cos := math.Sincos(theta)
		return math.Exp(-(h*h - 2*h*k*sin + k*k) / (2 * cos * cos))
	}
	sum, end, parts := 0.0, math.Asin(rho), 50
	for i := range parts {
		low, high := end*float64(i)/float64(parts), end*float64(i+1)/float64(parts)
		sum += quad.Fixed(density, low, high, 20, quad.Legendre{}, 0)
	}
	return phi(h)*phi(k) + sum/(2*math.Pi)
}

// TestRisksOfNormalPrior: the rectangle tolerance × acceptance of a bivariate
// normal distribution.
func TestRisksOfNormalPrior(t *testing.T) {
	for _, c := range []struct{ tolerance, acceptance Limits }{
		{Limits{8, 12}, Limits{8, 12}},
		{Limits{8, 12}, Limits{8.5, 11.2}},
		{Limits{10.5, 11}, Limits{9, 14}},
		{Limits{noLower, 12}, Limits{noLower, 11}},
		{Limits{9, noUpper}, Limits{9.3, noUpper}},
		{Limits{13, 15}, Limits{13.5, 14.5}},
	} {
		for _, u := range []float64{0.01, 0.3, 1.5, 20} {
			p := Normal{Mu: 10, Sigma: 1.5}
			score := func(x float64) float64 { return (x - p.Mu) / p.Sigma }
			spread := math.Hypot(p.Sigma, u)
			measured := func(y float64) float64 { return (y - p.Mu) / spread }
			below := func(x, y float64) float64 { return bivariate(score(x), measured(y), p.Sigma/spread) }
			both := below(c.tolerance.Upper, c.acceptance.Upper) - below(c.tolerance.Lower, c.acceptance.Upper) -
				below(c.tolerance.Upper, c.acceptance.Lower) + below(c.tolerance.Lower, c.acceptance.Lower)
			consumer, producer := Inspection{p, u, c.tolerance, c.acceptance}.GlobalRisks()
			what := fmt.Sprintf("%v, u = %v", c, u)
			accepted := chanceOf(Normal{Mu: p.Mu, Sigma: spread}, c.acceptance)
			near.Absolute(t, "consumer, "+what, accepted-both, consumer, 1e-13)
			near.Absolute(t, "producer, "+what, chanceOf(p, c.tolerance)-both, producer, 1e-13)
		}
	}
}

// TestRisksOfAnyPrior integrates in parts with the distribution function F of
// gonum's distuv, by Simpson's rule over the item, P being the probability of
// acceptance:
//
//	∫ P dF = P F - ∫ F dP
func TestRisksOfAnyPrior(t *testing.T) {
	skipUnderRace(t)
	for _, c := range []struct {
		prior Distribution
		r     reference
	}{
		{Normal{Mu: 1, Sigma: 0.5}, distuv.Normal{Mu: 1, Sigma: 0.5}},
		{Rectangular{Low: 0.3, High: 1.8}, distuv.Uniform{Min: 0.3, Max: 1.8}},
		{distribution.Triangular{Low: 0.2, High: 2}, distuv.NewTriangle(0.2, 2, 1.1, nil)},
		{StudentT{Mu: 1, Sigma: 0.3, Nu: 1}, distuv.StudentsT{Mu: 1, Sigma: 0.3, Nu: 1}},
		{StudentT{Mu: 1.1, Sigma: 0.3, Nu: 5}, distuv.StudentsT{Mu: 1.1, Sigma: 0.3, Nu: 5}},
		{Gamma{Mu: 1, Sigma: 0.5}, distuv.Gamma{Alpha: 4, Beta: 4}},
		{Gamma{Mu: 1, Sigma: 0.05}, distuv.Gamma{Alpha: 400, Beta: 400}},
	} {
		for _, u := range []float64{0.02, 0.2} {
			i := Inspection{c.prior, u, Limits{0.5, 1.5}, Limits{0.55, 1.4}}
			inside := acceptedWithin(c.r, i, 0.5, 1.5)
			outside := acceptedWithin(c.r, i, -2, 0.5) + acceptedWithin(c.r, i, 1.5, 4)
			consumer, producer := i.GlobalRisks()
			what := fmt.Sprintf("%#v, u = %v", c.prior, u)
			near.Absolute(t, "consumer, "+what, outside, consumer, 1e-11)
			near.Absolute(t, "producer, "+what, c.r.CDF(1.5)-c.r.CDF(0.5)-inside, producer, 1e-11)
		}
	}
}

// acceptedWithin is the probability that an item lies between low and high and
// is accepted.
func acceptedWithin(prior reference, i Inspection, low, high float64) float64 {
	u := i.StandardUncertainty
	p := func(x float64) float64 {
		return distuv.UnitNormal.CDF((i.Acceptance.Upper-x)/u) - distuv.UnitNormal.CDF((i.Acceptance.Lower-x)/u)
	}
	slope := func(x float64) float64 {
		return (distuv.UnitNormal.Prob((i.Acceptance.Lower-x)/u) - distuv.UnitNormal.Prob((i.Acceptance.Upper-x)/u)) / u
	}
	const steps = 10_000
	h := (high - low) / steps
	sum := 0.0
	for k := range steps {
		a, b := low+float64(k)*h, low+float64(k+1)*h
		m := a + h/2
		sum += h / 6 * (slope(a)*prior.CDF(a) + 4*slope(m)*prior.CDF(m) + slope(b)*prior.CDF(b))
	}
	return p(high)*prior.CDF(high) - p(low)*prior.CDF(low) - sum
}

// TestRisksOfSquares: constructed; the square of a standard normal Z has a gamma
// distribution with mean 1 and standard deviation √2, whose density is infinite
// at 0. Within the tolerance |Z| <= 1.
func TestRisksOfSquares(t *testing.T) {
	tolerance, acceptance, u := Limits{noLower, 1}, Limits{noLower, 0.9}, 0.1
	accepted := func(z float64) float64 {
		return 2 * distuv.UnitNormal.Prob(z) * distuv.UnitNormal.CDF((0.9-z*z)/u)
	}
	rejected := func(z float64) float64 {
		return 2 * distuv.UnitNormal.Prob(z) * distuv.UnitNormal.CDF((z*z-0.9)/u)
	}
	consumer, producer := Inspection{Gamma{Mu: 1, Sigma: math.Sqrt2}, u, tolerance, acceptance}.GlobalRisks()
	near.Absolute(t, "consumer", quad.Fixed(accepted, 1, 2, 100, quad.Legendre{}, 0), consumer, 1e-11)
	near.Absolute(t, "producer", quad.Fixed(rejected, 0, 1, 100, quad.Legendre{}, 0), producer, 1e-11)
}

// TestSpecificRisksAddUp: by the law of total probability, the specific risks
// over all measured values make the global ones. The measured values spread
// normally with √(Sigma² + u²).
func TestSpecificRisksAddUp(t *testing.T) {
	prior, u := Normal{Mu: 10, Sigma: 1.5}, 0.4
	tolerance, acceptance := Limits{8, 12}, Limits{8.5, 11.2}
	all := distuv.Normal{Mu: 10, Sigma: math.Hypot(1.5, 0.4)}
	conforming := func(y float64) float64 {
		return chanceOf(given(prior, y, u), tolerance) * all.Prob(y)
	}
	add := func(low, high float64, f func(float64) float64) (sum float64) {
		for k := range 20 {
			step := (high - low) / 20
			sum += quad.Fixed(f, low+float64(k)*step, low+float64(k+1)*step, 20, quad.Legendre{}, 0)
		}
		return sum
	}
	consumer, producer := Inspection{prior, u, tolerance, acceptance}.GlobalRisks()
	accepted := add(8.5, 11.2, func(y float64) float64 { return all.Prob(y) - conforming(y) })
	near.Absolute(t, "consumer", accepted, consumer, 1e-13)
	near.Absolute(t, "producer", add(-5, 8.5, conforming)+add(11.2, 25, conforming), producer, 1e-13)
}

// TestRisksInTheLimit: nothing accepted; everything accepted; a measurement
// without uncertainty; items that are all alike.
func TestRisksInTheLimit(t *testing.T) {
	prior, tolerance := Normal{Mu: 10, Sigma: 1.5}, Limits{8, 12}
	conforming := math.Erf(2 / 1.5 / math.Sqrt2)
	risks := func(what string, i Inspection, wantConsumer, wantProducer float64) {
		t.Helper()
		consumer, producer := i.GlobalRisks()
		near.Absolute(t, what+", consumer", wantConsumer, consumer, 2e-15)
		near.Absolute(t, what+", producer", wantProducer, producer, 2e-15)
	}
	none, err := tolerance.guarded(3)
	assert.Equal(t, errNothingAcceptable, err)
	risks("nothing accepted", Inspection{prior, 0.4, tolerance, none}, 0, conforming)
	all := Limits{noLower, noUpper}
	risks("all accepted", Inspection{prior, 0.4, tolerance, all}, 1-conforming, 0)
	risks("no tolerance", Inspection{prior, 0.4, all, all}, 0, 0)
	risks("far guard band", Inspection{prior, 0.01, Limits{noLower, 12}, Limits{noLower, -90}}, 0, distuv.UnitNormal.CDF(2/1.5))

	risks("exact, simple", Inspection{prior, 0, tolerance, tolerance}, 0, 0)
	narrow := math.Erf(1 / 1.5 / math.Sqrt2)
	risks("exact, guarded", Inspection{prior, 0, tolerance, Limits{9, 11}}, 0, conforming-narrow)
	risks("exact, lenient", Inspection{prior, 0, Limits{9, 11}, tolerance}, conforming-narrow, 0)

	accepted := distuv.UnitNormal.CDF(1.0/0.5) - distuv.UnitNormal.CDF(-2.5/0.5)
	for _, alike := range []Distribution{Normal{Mu: 11, Sigma: 0}, Rectangular{Low: 11, High: 11}, distribution.Triangular{Low: 11, High: 11}, StudentT{Mu: 11, Sigma: 0, Nu: 5}} {
		risks("alike, conforming", Inspection{alike, 0.5, tolerance, Limits{8.5, 12}}, 0, 1-accepted)
		risks("alike, not conforming", Inspection{alike, 0.5, Limits{8, 10.5}, Limits{8.5, 12}}, accepted, 0)
	}
}

// TestGuardBandsTradeRisks: constructed; a wider guard band lowers the
// consumer's risk and raises the producer's.
func TestGuardBandsTradeRisks(t *testing.T) {
	i := Inspection{Prior: Gamma{Mu: 1, Sigma: 0.3}, StandardUncertainty: 0.1, Tolerance: Limits{0.5, 1.5}}
	lastConsumer, lastProducer := 1.0, -1.0
	for _, w := range []float64{-0.3, -0.1, 0, 0.1, 0.2, 0.4} {
		var err error
		i.Acceptance, err = i.Tolerance.guarded(w)
		assert.Equal(t, nil, err)
		consumer, producer := i.GlobalRisks()
		assert.Equal(t, true, consumer < lastConsumer && producer > lastProducer, "w = %v", w)
		lastConsumer, lastProducer = consumer, producer
	}
}

func TestInspectionPanics(t *testing.T) {
	sound := Inspection{Normal{Mu: 0, Sigma: 1}, 0.1, Limits{-1, 1}, Limits{-1, 1}}
	for _, prior := range []Distribution{
		nil, Normal{Mu: math.NaN(), Sigma: 1}, Normal{Mu: 0, Sigma: -1}, Normal{Mu: 0, Sigma: math.Inf(1)}, Gamma{Mu: 1, Sigma: 0}, StudentT{Mu: 0, Sigma: 1, Nu: 0}, Rectangular{Low: 2, High: 1},
	} {
		i := sound
		i.Prior = prior
		panics(t, fmt.Sprintf("uncertainty: prior %#v is not a distribution", prior), func() { i.GlobalRisks() })
	}
	i := sound
	i.StandardUncertainty = -1
	panics(t, "uncertainty: value 0 with u = -1 and +Inf degrees of freedom", func() { i.GlobalRisks() })
	i = sound
	i.Tolerance = Limits{1, -1}
	panics(t, "uncertainty: 1 to -1 are not tolerance limits", func() { i.GlobalRisks() })
	i = sound
	i.Acceptance = Limits{math.NaN(), 1}
	panics(t, "uncertainty: limits NaN to 1 are not numbers", func() { i.GlobalRisks() })
}
