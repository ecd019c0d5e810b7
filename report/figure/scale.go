package figure

import (
	"math"
	"slices"

	"gonum.org/v1/plot/vg"
)

// scale is where values stand between two places on the paper, in proportion to
// themselves or to their logarithms.
type scale struct {
	from, to  vg.Length
	low, high float64
	log       bool
	// zero: a logarithmic scale has a place for 0, apart before its beginning.
	zero bool
}

// zeroWide is how far that place and the break after it reach.
const zeroWide = vg.Length(44)

func (s scale) at(v float64) vg.Length {
	low, high := s.low, s.high
	if s.log {
		if v < s.low {
			return s.from - zeroWide/2
		}
		v, low, high = math.Log(v), math.Log(low), math.Log(high)
	}
	return s.from + (s.to-s.from)*vg.Length((v-low)/(high-low))
}

// start is where the scale begins on the paper, with the place of 0.
func (s scale) start() vg.Length {
	if s.zero {
		return s.from - zeroWide
	}
	return s.from
}

// logarithmic is a scale that holds values from low to high, both above 0, well
// inside: its ends are 1, 2 or 5 times a power of ten.
func logarithmic(from, to vg.Length, low, high float64) scale {
	const room = 1.12
	s := scale{from: from, to: to, log: true}
	for _, v := range rungs(low/room/10, high*room*10) {
		if v <= low/room {
			s.low = v
		}
		if v >= high*room && s.high == 0 {
			s.high = v
		}
	}
	return s
}

// logarithmicOf holds a list of values.
func logarithmicOf(from, to vg.Length, values []float64) scale {
	return logarithmic(from, to, slices.Min(values), slices.Max(values))
}

// rungs are the numbers 1, 2 and 5 times a power of ten from low to high.
func rungs(low, high float64) (list []float64) {
	const slack = 1 + 1e-9
	for e := int(math.Floor(math.Log10(low))); math.Pow10(e) <= high*slack; e++ {
		for _, m := range []float64{1, 2, 5} {
			if v := m * math.Pow10(e); v >= low/slack && v <= high*slack {
				list = append(list, v)
			}
		}
	}
	return list
}

// ticks are the rungs of a logarithmic scale. All have labels where there is room
// for them, else the powers of ten, or every second of these, and so on; size is
// the room that a label needs along the scale.
func (s scale) ticks(size func(label string) vg.Length) []tick {
	values := rungs(s.low, s.high)
	for every := 0; ; every++ {
		ticks := make([]tick, len(values))
		fits, end := true, vg.Length(math.Inf(-1))
		for i, v := range values {
			ticks[i].value = v
			if !labelled(v, every) {
				continue
			}
			ticks[i].label = decimal(v, max(0, -int(math.Floor(math.Log10(v)+1e-9)))) // 0.0001, 0.5, 200
			half := size(ticks[i].label) / 2
			fits, end = fits && s.at(v)-half >= end, s.at(v)+half
		}
		if fits {
			return ticks
		}
	}
}

// labelled reports whether a rung has a label: all have where every is 0, else
// the powers of ten whose exponent it divides.
func labelled(v float64, every int) bool {
	exponent := math.Log10(v)
	whole := math.Round(exponent)
	return every == 0 || math.Abs(exponent-whole) < 1e-9 && int(whole)%every == 0
}

// onlyLabelled leaves out the ticks without a label.
func onlyLabelled(ticks []tick) []tick {
	return slices.DeleteFunc(slices.Clone(ticks), func(t tick) bool { return t.label == "" })
}

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
func leftOverScale(from, to vg.Length, front, points []point) scale {
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
