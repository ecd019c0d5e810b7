package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
	"minim/uncertainty/rounding"
)

// Cause says why the analytic and the simulated interval differ.
type Cause string

// The causes of a failed cross-check.
const (
	// noCause: the intervals agree.
	noCause Cause = ""
	// shaped: a large influence is not normal but symmetric, a dominant
	// rectangle or triangle.
	shaped Cause = "shape"
	// fewReadings: a large influence is known from few readings, so that it has wide tails.
	fewReadings Cause = "few-readings"
	// skewed: a large influence is lopsided.
	skewed Cause = "skew"
	// curved: the model is not linear over the spread of its influences.
	curved Cause = "curvature"
)

// CheckedDigits is the number of significant digits of u to which the two intervals are
// compared.
const CheckedDigits = 1

// CrossCheck compares the two coverage intervals (JCGM 101, clause 8.1, with
// one significant digit of u).
type CrossCheck struct {
	// Agrees: both ends differ by no more than the tolerance.
	Agrees bool
	// Tolerance δ = ½ 10^l for u = c 10^l with an integer c of one digit; not
	// less than what floating point numbers resolve.
	Tolerance float64
	// DLow and DHigh are the differences of the lower and the upper ends.
	DLow, DHigh float64
	// DU is the difference between u and the standard deviation of the simulation, NaN where
	// that has none.
	DU float64
	// OfExpanded is the larger difference over U; 0 when U is 0.
	OfExpanded float64
	// Cause of the difference when it does not agree or is more than 5 % of U,
	// and the influence that makes most of it. Curvature may come from two
	// together: With is the other, or the same where it is the square of one.
	Cause           Cause
	Influence, With *Influence
}

// CrossCheck compares the results of [Model.Propagate] and [Model.Simulate] for
// one node. Where they differ it finds the cause by the law of the linear part of the
// model, which is known without drawing: what that part
// shows is shape or skew, what only the full model shows is curvature, whose
// largest term of second order names the influences. Where the interval of the linear part
// agrees, and that of the simulation is off it by no more than chance, it is the former that is
// compared: nothing is made of noise.
func (m *Model) CrossCheck(out Node, a Analytic, mc *MonteCarlo) (CrossCheck, error) {
	c := CrossCheck{
		Tolerance: math.Max(rounding.Tolerance(a.StandardUncertainty, CheckedDigits), 10*negligible*math.Abs(a.Value)),
		DU:        math.Abs(a.StandardUncertainty - mc.StandardDeviation),
	}
	c.compare(a, interval{mc.Lower, mc.Upper})
	switch {
	case !portable.IsFinite(c.OfExpanded):
		return CrossCheck{}, ErrNotFinite
	case c.isClose():
		return c, nil
	}
	linear := m.linearInterval(out, a)
	if ofLinear := c; mc.maybe(linear) {
		if ofLinear.compare(a, linear); ofLinear.isClose() {
			return ofLinear, nil
		}
	}
	c.Cause, c.Influence = causeOf(a, linear, interval{mc.Lower, mc.Upper})
	if c.Cause == curved {
		second, err := m.PropagateSecondOrder(out)
		if err != nil {
			return CrossCheck{}, err
		}
		c.Influence, c.With = second.First, second.Second
		if hasNoKurtosis(second.First) { // it is their tails that reach where the model bends
			c.Cause = fewReadings
		}
	}
	return c, nil
}

// compare fills in by how much the analytic interval differs from another.
func (c *CrossCheck) compare(a Analytic, with interval) {
	c.DLow, c.DHigh = math.Abs(a.Lower()-with.low), math.Abs(a.Upper()-with.high)
	c.Agrees = c.DLow <= c.Tolerance && c.DHigh <= c.Tolerance
	if a.ExpandedUncertainty > 0 {
		c.OfExpanded = max(c.DLow, c.DHigh) / a.ExpandedUncertainty
	}
}

// isClose: nothing is to be explained.
func (c *CrossCheck) isClose() bool { return c.Agrees && c.OfExpanded <= QuoteWithin }

// byChance is how many standard errors an end may be off by chance.
const byChance = 3.5

// maybe reports whether the ends may be those of an interval but for chance.
func (mc *MonteCarlo) maybe(i interval) bool {
	return math.Abs(mc.Lower-i.low) <= float64(byChance*mc.LowerError) && math.Abs(mc.Upper-i.high) <= float64(byChance*mc.UpperError)
}

// SameU reports whether u differs from the standard deviation of the simulation by no more
// than the tolerance; it does not where that has none.
func (c *CrossCheck) SameU() bool { return c.DU <= c.Tolerance }

// linearInterval is the symmetric coverage interval of y + Σ c_i (x_i - μ_i), the value alone
// where no part of it varies.
func (m *Model) linearInterval(out Node, a Analytic) interval {
	l := m.linearPart(m.gradient(out, m.values(out, mean)), a.CoverageProbability)
	if l == nil {
		return interval{a.Value, a.Value}
	}
	tail := float64((1 - a.CoverageProbability) / 2)
	return interval{a.Value + l.Law.At(tail), a.Value + l.Law.At(1-tail)}
}

// causeOf takes the largest of three differences: of the half widths (shape)
// and of the middles (skew) between the analytic interval and that of the
// linear model, and of the ends between the linear and the full model.
func causeOf(a Analytic, linear, full interval) (Cause, *Influence) {
	shape := math.Abs(float64((linear.high-linear.low)/2) - a.ExpandedUncertainty)
	skew := math.Abs(portable.Middle(linear.low, linear.high) - a.Value)
	curvature := max(math.Abs(full.low-linear.low), math.Abs(full.high-linear.high))
	if curvature >= shape && curvature >= skew {
		return curved, nil
	}
	wide := largest(a.Budget, func(d Distribution) (float64, int) { return min(d.Summary().Kurtosis, mostKurtosis) - 3, 4 })
	if skew >= shape {
		in := largest(a.Budget, func(d Distribution) (float64, int) { return d.Summary().Skewness, 3 })
		lopsided := in != nil && portable.IsFinite(in.Distribution.Summary().Skewness) && in.Distribution.Summary().Skewness != 0
		if lopsided || !isStudent(wide) && a.widestTails() == nil { // or it is the noise of wide tails
			return skewed, in
		}
	}
	if in := a.widestTails(); in != nil && (tails(&a, in) >= shape/2 || skew >= shape) {
		return fewReadings, in
	}
	if isStudent(wide) {
		return fewReadings, wide
	}
	return shaped, wide
}

func isStudent(in *Influence) bool {
	if in == nil {
		return false
	}
	_, student := in.Distribution.(StudentT)
	return student
}

// widestTails is the influence of the set of few readings whose interval is by the most wider than
// that of a normal distribution with the same standard uncertainty; nil where there is none.
func (a *Analytic) widestTails() (in *Influence) {
	most := 0.0
	for i := range a.Budget {
		if wider := tails(a, &a.Budget[i].Influence); wider > most && hasNoKurtosis(&a.Budget[i].Influence) {
			most, in = wider, &a.Budget[i].Influence
		}
	}
	return in
}

// tails is by how much that is.
func tails(a *Analytic, in *Influence) float64 {
	half := a.ByReadings(in.Set)
	if half == 0 {
		return 0
	}
	return half * (1 - CoverageFactor(a.CoverageProbability, math.Inf(1))/CoverageFactor(a.CoverageProbability, in.DegreesOfFreedom))
}

// hasNoKurtosis reports a Student t with four degrees of freedom or fewer.
func hasNoKurtosis(in *Influence) bool {
	if in == nil {
		return false
	}
	t, student := in.Distribution.(StudentT)
	return student && t.Nu <= 4
}

// mostKurtosis stands for the infinite kurtosis of a t-distribution with 4 or
// fewer degrees of freedom, which must not outweigh any rectangle however
// large: it is that of 5.
const mostKurtosis = 9

// largest is the influence with the largest standardised moment times its
// contribution to that power; those of one set of readings contribute together. A moment that does not exist counts as 0: only a
// t-distribution lacks a skewness, and it is symmetric.
func largest(budget []Contribution, moment func(Distribution) (value float64, power int)) (in *Influence) {
	best := -1.0
	for i := range budget {
		value, power := moment(budget[i].Distribution)
		weight := math.Abs(value) * portable.Power(together(budget, i), power)
		if math.IsNaN(weight) {
			weight = 0
		}
		if weight > best {
			best, in = weight, &budget[i].Influence
		}
	}
	return in
}

// together is the size of a contribution, with those of the same set of readings.
func together(budget []Contribution, i int) float64 {
	own := math.Abs(budget[i].Contribution)
	if budget[i].Set == (Set{}) {
		return own
	}
	sum := 0.0
	for k := range budget {
		if budget[k].Set == budget[i].Set {
			sum = portable.Hypot(sum, budget[k].Contribution)
		}
	}
	return max(own, sum)
}
