package figure

import (
	"math"
	"slices"
	"strconv"
	"strings"

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

// tick is a mark of an axis; its label is empty where there is none.
type tick struct {
	value float64
	label string
}

// ticker marks an axis at multiples of 1, 2, 2.5 or 5 times a power of ten, with
// just as many decimals as these need, so that no label comes twice.
type ticker struct {
	// most is the greatest number of steps.
	most int
}

// ticks returns the marks between two ends of an axis, rising.
func (t ticker) ticks(low, high float64) []tick {
	if !(high > low) || math.IsInf(high-low, 0) || t.most < 1 {
		panic("figure: an axis needs two ends, low < high, and room for a step")
	}
	step, decimals := t.step(high - low)
	const slack = 1e-9
	first, last := math.Ceil(low/step-slack), math.Floor(high/step+slack)
	var ticks []tick
	for i := 0.0; i <= last-first; i++ {
		v := (first + i) * step
		ticks = append(ticks, tick{value: v, label: decimal(v, decimals)})
	}
	return ticks
}

// step is the least step that divides a range into at most t.most parts, and the
// number of decimals that its multiples need.
func (t ticker) step(size float64) (step float64, decimals int) {
	least := size / float64(t.most) * (1 - 1e-9)
	exponent := int(math.Floor(math.Log10(least)))
	for {
		for _, m := range []struct {
			factor float64
			more   int
		}{{1, 0}, {2, 0}, {2.5, 1}, {5, 0}} {
			step = m.factor * math.Pow10(exponent)
			if step >= least {
				return step, max(0, m.more-exponent)
			}
		}
		exponent++
	}
}

// decimal prints a number with a true minus sign, and zero without one.
func decimal(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	return strings.Replace(s, "-", "−", 1)
}

// scaleOf returns the power of a thousand by which numbers of that size are
// divided to be read with ease, and how it is written before the unit: 1 and ""
// from 0.001 to 100 000.
func scaleOf(size float64) (power float64, prefix string) {
	if size >= 1e-3 && size < 1e5 {
		return 1, ""
	}
	exponent := 3 * int(math.Floor(math.Log10(size)/3))
	return math.Pow10(exponent), "1e" + strconv.Itoa(exponent) + " "
}
