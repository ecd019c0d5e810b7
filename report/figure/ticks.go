package figure

import (
	"math"
	"strconv"
	"strings"
)

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
