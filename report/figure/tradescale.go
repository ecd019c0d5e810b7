package figure

import (
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
)

// mostLinear is the most left over in mL that is drawn in proportion. Beyond it the
// small amounts, which matter, would lie on each other; so they would when half of
// the front lies within the first crowdedShare of what is drawn.
const (
	mostLinear   = 300
	crowdedShare = 0.1
)

// leastVolume in mL is as good as nothing: 0 where words are rounded.
const leastVolume = 0.05

// leftOverScale is the scale of what is left over. Past 300 mL, and where the front
// would be crowded, it is logarithmic, with a place for 0 if there is one.
func leftOverScale(front, points []point) scale {
	const from, to = planeFrom, rightTo - 14
	least, most := math.Inf(1), 0.0
	for _, p := range points {
		most = math.Max(most, p.leftOver)
		if p.leftOver >= leastVolume {
			least = math.Min(least, p.leftOver)
		}
	}
	if most > mostLinear || most > leastVolume && crowded(front, most) {
		s := logarithmic(from, to, least, most)
		s.zero = slices.ContainsFunc(points, func(p point) bool { return p.leftOver < leastVolume })
		if s.zero {
			s.from += zeroWide
		}
		return s
	}
	if most < leastVolume {
		most = 10
	}
	return scale{from: from, to: to, low: -0.03 * most, high: 1.05 * most}
}

// crowded reports whether the front would lie on itself on a scale in proportion.
func crowded(front []point, most float64) bool {
	const few = 8
	near := 0
	for _, p := range front {
		if p.leftOver < crowdedShare*most {
			near++
		}
	}
	return len(front) >= few && 2*near > len(front)
}

// relativeScale is the scale of a relative uncertainty in percent, from bottom
// upwards to no more than 100: logarithmic when its values span more than a decade.
func relativeScale(values []float64, bottom vg.Length) scale {
	least, most := slices.Min(values), slices.Max(values)
	switch {
	case least > 0 && most > 10*least:
		s := logarithmic(bottom, bottom+planeHigh, least, most)
		s.high = math.Min(s.high, 100)
		return s
	case most == 0:
		most = 1
	}
	s := scale{from: bottom, to: bottom + planeHigh, high: math.Min(1.1*most, 100)}
	if least == 0 { // room for the ring
		s.low = -0.06 * most
	}
	return s
}

func relatives(points []point) (list []float64) {
	for _, p := range points {
		list = append(list, p.relative)
	}
	return list
}
