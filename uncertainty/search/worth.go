package search

import (
	"math"
	"slices"
	"sort"

	"minim/uncertainty"
	"minim/uncertainty/mixture"
	"minim/uncertainty/portable"
	"minim/uncertainty/route"
)

// A chance above enough counts as enough, and a route with a chance below
// tooLittle is not worth listing.
const (
	enough    = 0.999
	tooLittle = 0.001
)

// judge turns figures of a route into its worth: the chance of being inside the
// first tolerance; where there is none, minus what the strength may be off the target
// by, its expected difference and its expanded uncertainty, relative to the target.
type judge struct {
	coverage float64
	// limits of the strength; tolerant is false where there are none.
	limits   uncertainty.Limits
	tolerant bool
	normal   float64 // coverage factor for infinite degrees of freedom
	// enough is the worth above which all are equal, floor that below which a route
	// is not looked for.
	enough, floor float64
	// least is the relative variance above which no route is worth the floor,
	// strengths those outside of which none is.
	least     float64
	strengths span
	target    float64
	// levels are the chances that are looked for, rising; without any, each is.
	levels []float64
	// worthOnly: left over and operations do not count.
	worthOnly bool
	// spreadOnly: without a tolerance, what counts is the relative expanded uncertainty
	// alone, of a strength within a tenth of the target.
	spreadOnly bool
}

// newJudge judges by chances between two.
func newJudge(p *route.Prep, coverage, floor, enough float64) judge {
	if len(p.Tolerances) == 0 {
		return tightness(p, coverage)
	}
	j := judge{coverage: coverage, tolerant: true, limits: p.Tolerances[0].Limits, target: p.Target.Value, floor: floor, enough: enough}
	j.least, j.strengths = j.mostVariance(floor), j.strengthsWorth(floor)
	return j
}

// tightness judges by what the strength may be off the target by.
func tightness(p *route.Prep, coverage float64) judge {
	j := judge{coverage: coverage, normal: uncertainty.CoverageFactor(coverage, math.Inf(1)), target: p.Target.Value, floor: -math.MaxFloat64, least: math.Inf(1)}
	j.strengths = j.strengthsWorth(j.floor)
	return j
}

// levelled looks for the least left over at each of some levels of chance alone: what is
// asked for, half the risk of that, and enough. The chances that a search goes by differ from
// the simulated ones that are shown by less than about closeTo: the least left over that a
// simulation may find at a level lies between those at closeTo below and above it.
func levelled(p *route.Prep, coverage float64) judge {
	if len(p.Tolerances) == 0 {
		return tightness(p, coverage)
	}
	var levels []float64
	for _, chance := range levelsOf(p) {
		by := min(closeTo, (1-chance)/2)
		levels = append(levels, chance-by, chance, min(chance+by, max(chance, enough)))
	}
	return atLevels(p, coverage, levels...)
}

// levelsOf are the chances of being inside that a search tells apart: what is asked for, half
// the risk of that, and enough.
func levelsOf(p *route.Prep) []float64 {
	levels := []float64{p.LeastChance, 1 - float64((1-p.LeastChance)/2), enough}
	slices.Sort(levels)
	return slices.Compact(levels)
}

// closeTo is by how much a chance may differ from the simulated one: 0.0044 is the most that
// was seen of the routes that are recommended on testdata/benches.
const closeTo = 0.005

// atLevels judges by some chances.
func atLevels(p *route.Prep, coverage float64, levels ...float64) judge {
	slices.Sort(levels)
	levels = slices.Compact(levels)
	j := newJudge(p, coverage, levels[0], levels[len(levels)-1])
	j.levels = levels
	return j
}

// level is the highest level that a worth reaches.
func (j *judge) level(worth float64) float64 {
	if j.levels == nil {
		return worth
	}
	if at := sort.Search(len(j.levels), func(i int) bool { return j.levels[i] > worth }); at > 0 {
		return j.levels[at-1]
	}
	return math.Inf(-1)
}

// next is the level above one, which may be the same where each worth is one; false above
// the last.
func (j *judge) next(level float64) (next float64, is bool) {
	if j.levels == nil {
		return level, !j.top(level)
	}
	at := sort.Search(len(j.levels), func(i int) bool { return j.levels[i] > level })
	if at == len(j.levels) {
		return 0, false
	}
	return j.levels[at], true
}

// stair is a merit with what a route must have to be worth as much, and to be worth more.
func (j *judge) stair(m merit, c chain) stair {
	s := stair{merit: m, least: j.need(m.worth), next: need{most: math.Inf(-1)}, apart: j.levels == nil, chains: []chain{c}}
	if next, is := j.next(m.level); is {
		s.next = j.need(next)
	}
	return s
}

// need is what a route must have to be worth so much.
func (j *judge) need(worth float64) need { return need{j.mostVariance(worth), j.strengthsWorth(worth)} }

// worth of a route with a strength and its relative uncertainty, of which no part is known
// from a few readings.
func (j *judge) worth(value, u float64) float64 {
	x := mixture.New(u*u*value*value, nil)
	return j.worthOf(value, &x)
}

// worthOf is the worth of a route with a strength that is distributed like this about a value.
func (j *judge) worthOf(value float64, x *mixture.Mixture) float64 {
	switch {
	case !j.nearEnough(value):
		return math.Inf(-1)
	case j.tolerant:
		return min(x.Inside(value, j.limits.Lower, j.limits.Upper), j.enough)
	}
	expanded := x.Half(j.coverage)
	if j.spreadOnly {
		return -expanded / math.Abs(value)
	}
	return -(math.Abs(value-j.target) + expanded) / j.target
}

// inside reports whether a strength is permitted, so that whatever makes its distribution less
// sure makes it worth less: given the scales each chance is concave in χ²/ν (Jensen).
func (j *judge) inside(value float64) bool { return !j.tolerant || j.limits.Permits(value) }

// merit of a route that was assessed.
func (j *judge) merit(r *route.Result) merit {
	x := r.Analytic.Mixture()
	// to 12 digits after the point, so that what is equal but for the last digits of floating point is equal
	worth := math.Round(j.worthOf(r.Analytic.Value, &x)*1e12) / 1e12
	return j.rated(worth, Volume(r.LeftOverML), r.Operations)
}

// rated is a merit with its level.
func (j *judge) rated(worth, leftOver float64, operations int) merit {
	return merit{j.level(worth), worth, leftOver, operations}
}

// twoSided reports whether there are two limits.
func (j *judge) twoSided() bool { return j.limits.Lower > 0 && !math.IsInf(j.limits.Upper, 1) }

// Near reports whether an expected strength is near enough to the target of a prep for a route
// to be looked for. Two limits say so by the chance that they leave.
func Near(p *route.Prep, strength float64) bool {
	j := judge{target: p.Target.Value}
	if len(p.Tolerances) > 0 {
		j.tolerant, j.limits = true, p.Tolerances[0].Limits
	}
	return j.nearEnough(strength)
}

func (j *judge) nearEnough(strength float64) bool {
	return j.twoSided() || (span{strength, strength}).meets(j.near())
}

// near is where an expected strength must lie that is not kept by two limits: within a
// tenth of the target, or as far off as the one limit is.
func (j *judge) near() span {
	by := nearTarget * j.target
	if j.tolerant && j.limits.Lower > 0 {
		by = max(by, j.target-j.limits.Lower)
	}
	if j.tolerant && !math.IsInf(j.limits.Upper, 1) {
		by = max(by, j.limits.Upper-j.target)
	}
	return span{max(0, j.target-by), j.target + by}
}

// top reports whether no route is worth more.
func (j *judge) top(worth float64) bool {
	if j.tolerant {
		return worth >= j.enough
	}
	return worth >= 0
}

// mostVariance is the relative variance above which every route is worth less
// than that. Without a tolerance, a strength of x targets is worth -(|x - 1| + k u x),
// so that k u is at most 1 - (1 - w)/x or (w + 1 - x)/x for a worth of -w: w at x = 1
// where w < 1, and otherwise less than 1 + (w - 1)/x. With one limit only the chance is
// greatest for the strength that is farthest from it of those that are near enough to the
// target; at half or less the variance says nothing then.
func (j *judge) mostVariance(worth float64) float64 {
	u := math.Inf(1)
	switch {
	case !j.tolerant && (j.spreadOnly || -worth < 1):
		u = -worth / j.normal
	case !j.tolerant:
		u = (1 + (-worth-1)/(1-nearTarget)) / j.normal
	case !j.twoSided() && worth > 0.5:
		u = relativeU(sort.Search(uSteps, func(i int) bool { return j.mostChanceNear(relativeU(i)) < worth }))
	case j.twoSided():
		u = relativeU(sort.Search(uSteps, func(i int) bool { return j.mostChance(relativeU(i)) < worth }))
	}
	return u * u * (1 + slack)
}

// mostChance is the greatest chance that a strength with a relative uncertainty r
// is between two limits L < H, whatever it is. With t the inverse of the strength
// that chance is
//
//	P(t) = Φ((H t - 1)/r) - Φ((L t - 1)/r)
//
// which is greatest where (H + L) t² - 2 t = 2 r² ln(H/L)/(H - L); for limits that
// are next to equal the right side is 2 r²/L. It falls as r
// grows: there, dP/dr is -φ((H t - 1)/r) (H/L - 1)/r². With few degrees of freedom it
// is smaller still: between the limits both of its halves are, above them it falls with the
// distance, and below them it was computed for 1 to 3 degrees of freedom, limits from 0.5 to
// 60 % and r from 1e-6 to 1e4.
func (j *judge) mostChance(r float64) float64 {
	low, high := j.limits.Lower, j.limits.Upper
	slope := 1 / low
	if b := high - low; b > 0 {
		slope = portable.Log1p(b/low) / b
	}
	t := (1 + math.Sqrt(1+float64(2*r*r*slope*(high+low)))) / (high + low)
	best := uncertainty.Analytic{Value: 1 / t, StandardUncertainty: r / t}
	return best.ConformanceProbability(j.limits)
}

// mostChanceNear is the greatest chance that a strength near to the target with a relative
// uncertainty r keeps one limit: it grows with the distance from the limit, and falls as r
// grows where it is more than a half. With few degrees of freedom it is smaller still: there the
// chance is concave in the scale, of which the mean is below one.
func (j *judge) mostChanceNear(r float64) (most float64) {
	near := j.near()
	for _, y := range []float64{near.low, near.high} {
		if y > 0 {
			at := uncertainty.Analytic{Value: y, StandardUncertainty: float64(r * y)}
			most = max(most, at.ConformanceProbability(j.limits))
		}
	}
	return most
}

// The relative uncertainties that a bound is looked for among: 200 in each e-fold,
// from e^-40 to e^10.
const uSteps = 50 * 200

func relativeU(i int) float64 { return portable.Exp(float64(i)/200 - 40) }
