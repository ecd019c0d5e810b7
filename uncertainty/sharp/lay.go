package sharp

import (
	"slices"

	"minim/uncertainty/portable"
	"minim/uncertainty/random"
	"minim/uncertainty/statistics"
)

// Where F is worked out as the trials go on: at these parts of what lies beyond an end, and nearer
// the middle.
var (
	placesInTail   = []float64{0.03, 0.15, 0.4, 0.7, 1, 1.35, 1.8, 2.5, 4}
	placesInMiddle = []float64{0.17, 0.3, 0.5}
)

// Gain is how many times less than that of sorted trials the variance of each end of the interval is.
type Gain [2]float64

// Worse is that of the worse end, and Better that of the better one.
func (g Gain) Worse() float64  { return min(g[0], g[1]) }
func (g Gain) Better() float64 { return max(g[0], g[1]) }

// Lay chooses the places from the values of a pilot, and the weights, where an interval is asked for,
// and works out what is won.
func (s *Sharpening) Lay(values []float64, rests Rests, in *Space) (gain Gain) {
	if s.Tail == 0 {
		return gain
	}
	sorted := in.Numbers(len(values))
	copy(sorted, values)
	slices.Sort(sorted)
	at := func(p float64) float64 { return sorted[int(p*float64(len(sorted)))] }
	var parts []float64
	for _, part := range placesInTail {
		if part*s.Tail < placesInMiddle[0]-0.04 {
			parts = append(parts, part*s.Tail)
		}
	}
	parts = append(parts, placesInMiddle...)
	for _, part := range parts {
		s.q = append(s.q, at(part))
		if part < 0.5 {
			s.q = append(s.q, at(1-part))
		}
	}
	slices.Sort(s.q)
	if len(slices.Compact(slices.Clone(s.q))) < len(s.q) || !portable.IsFinite(s.q[0]) || !portable.IsFinite(s.q[len(s.q)-1]) {
		return gain
	}
	for end, q := range []float64{at(s.Tail), at(1 - s.Tail)} {
		s.weight[end], gain[end] = s.weigh(len(values), rests, q, in)
		if !s.Exact { // by one trial more, since those are rare in which c is not what it is taken for
			gain[end] /= 1 + gain[end]/(float64(len(values))*s.Tail*(1-s.Tail))
		}
	}
	return gain
}

// weigh returns what L is to count at q, by the regression of A on B in the pilot, and how many
// times less than that of 0 and 1 the variance is then.
func (s *Sharpening) weigh(n int, rests Rests, q float64, in *Space) (weight, gain float64) {
	a, b := in.Numbers(n)[:0], in.Numbers(n)[:0]
	scratch := scratches.Get().(*scratch)
	defer scratches.Put(scratch)
	for at := 0; at < n; at += random.BlockSize {
		ofOutput, ofLinear := s.chancesAt(rests.From(at, at+random.BlockSize), q, scratch)
		a, b = append(a, ofOutput...), append(b, ofLinear...)
	}
	return Regress(a, b, s.Tail/10)
}

// Regress returns what b is to count beside a, between 0 and 1, and how many times less than that of
// 0 and 1 the variance is then. Where b is the same in all trials it counts whole, unless it is
// nearly 0 or 1.
func Regress(a, b []float64, nearly float64) (weight, gain float64) {
	meanA, _ := statistics.MeanAndVariance(a)
	meanB, varianceB := statistics.MeanAndVariance(b)
	together := 0.0
	for i := range a {
		together += float64((a[i] - meanA) * (b[i] - meanB))
	}
	switch {
	case varianceB <= 1e-20 && meanB > nearly && meanB < 1-nearly:
		weight = 1
	case varianceB > 0:
		weight = max(0, min(together/(varianceB*float64(len(a)-1)), 1))
	}
	for i := range a {
		a[i] -= float64(weight * b[i])
	}
	_, left := statistics.MeanAndVariance(a)
	return weight, float64(meanA*(1-meanA)) / left
}
