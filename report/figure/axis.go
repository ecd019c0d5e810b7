package figure

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"minim/report/words/picture"
	"minim/uncertainty"
)

// drawTolerance shades the first tolerance.
func (s *spread) drawTolerance(on *sheet, bottom, top vg.Length) {
	if len(s.c.Prep.Tolerances) == 0 {
		return
	}
	l := limitsOf(s.c)
	from, to := s.x(l.Lower), s.x(l.Upper)
	// What is piled up beyond an edge where there is no limit is inside as well.
	if math.IsInf(l.Lower, -1) {
		from -= pileGap + pileWide
	}
	if math.IsInf(l.Upper, 1) {
		to += pileGap + pileWide
	}
	on.box(shaded, from, bottom, max(to, from+1), top)
}

// drawMarks draws the lines over the dots: limits and target. All but the limits
// of the first tolerance leave room for its name.
func (s *spread) drawMarks(on *sheet, bottom, top vg.Length) {
	mark := func(style draw.LineStyle, v float64, top vg.Length) {
		if v >= s.window.low && v <= s.window.high() {
			on.line(style, s.x(v), bottom, s.x(v), top)
		}
	}
	for _, v := range ends(limitsOf(s.c)) {
		mark(limitLine, v, top)
	}
	for i, t := range s.others() {
		for _, v := range ends(t.Limits) {
			mark(otherLine(i), v, top-keyHeight)
		}
	}
	mark(targetLine, s.c.Prep.Target.Value, top-keyHeight)
}

// ends are the finite ends of limits.
func ends(l uncertainty.Limits) (list []float64) {
	for _, v := range []float64{l.Lower, l.Upper} {
		if !math.IsInf(v, 0) {
			list = append(list, v)
		}
	}
	return list
}

// drawHeadings writes what the columns hold, above the rows.
func (s *spread) drawHeadings(on *sheet, top vg.Length) {
	y := top + 6
	on.write(smallText, right, rightTo, y+9.5, s.words.Chance[0])
	on.write(smallText, right, rightTo, y, s.words.Chance[1])
	on.write(smallText, left, namesFrom, y+9.5, s.words.Rows)
	on.write(smallText, left, namesFrom, y, s.words.Gives)
	s.drawBandName(on, top-keyHeight+4.5)
}

// drawBandName writes over the shaded band what it is, where there is room.
func (s *spread) drawBandName(on *sheet, y vg.Length) {
	if len(s.c.Prep.Tolerances) == 0 {
		return
	}
	l := limitsOf(s.c)
	from, to := s.x(l.Lower), s.x(l.Upper)
	for _, words := range []string{picture.Labels.Inside, picture.Labels.InShort} {
		if smallBold.Width(words) < to-from-4 {
			on.write(smallBold, centre, (from+to)/2, y, words)
			return
		}
	}
}

// drawAxes draws the strength in the unit of the target below, and its
// difference from the target above.
func (s *spread) drawAxes(on *sheet, bottom, top vg.Length) {
	w, p := s.window, s.c.Prep
	power, prefix := scaleOf(math.Max(math.Abs(w.low), math.Abs(w.high())))
	axis{panelFrom, panelTo, func(v float64) vg.Length { return s.x(v * power) }}.draw(on, bottom, -1,
		from(0, fitting(w.low/power, w.high()/power, panelTo-panelFrom)), picture.Labels.Strength+prefix+p.Target.Unit.Name)

	percentOf := func(v float64) float64 { return 100 * (v/p.Target.Value - 1) }
	axis{panelFrom, panelTo, func(v float64) vg.Length { return s.x(p.Target.Value * (1 + v/100)) }}.draw(on, top, 1,
		from(-100, fitting(percentOf(w.low), percentOf(w.high()), panelTo-panelFrom)), picture.Labels.Difference)
}

// axis runs between two places on the paper; at is the place of a value.
type axis struct {
	from, to vg.Length
	at       func(v float64) vg.Length
}

// draw draws the axis at the height y, labels and name below it (side -1) or
// above it (1).
func (a axis) draw(on *sheet, y, side vg.Length, ticks []tick, name string) {
	on.line(axisLine, a.from, y, a.to, y)
	base, nameBase := y+7, y+20
	if side < 0 {
		base, nameBase = y-13, y-25
	}
	for _, t := range ticks {
		x := a.at(t.value)
		on.line(axisLine, x, y, x, y+4*side)
		on.write(smallInk, centre, x, base, t.label)
	}
	on.write(smallInk, centre, (a.from+a.to)/2, nameBase, name)
}

// fitting returns as many ticks as have room for their labels.
func fitting(low, high float64, width vg.Length) []tick {
	const gap = 10
	for most := 10; ; most-- {
		ticks := ticker{most}.ticks(low, high)
		var room vg.Length
		for _, t := range ticks {
			room = max(room, smallInk.Width(t.label)+gap)
		}
		if most == 1 || len(ticks) < 2 || room <= width*vg.Length((ticks[1].value-ticks[0].value)/(high-low)) {
			return ticks
		}
	}
}

// from leaves out ticks that stand for less than nothing, where there is no strength.
func from(least float64, ticks []tick) []tick {
	return slices.DeleteFunc(ticks, func(t tick) bool { return t.value < least-1e-9 })
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
	return strings.Replace(grouped(s), "-", "−", 1)
}

// grouped puts spaces between thousands, from five digits on.
func grouped(number string) string {
	whole, rest, _ := strings.Cut(number, ".")
	sign := ""
	if strings.HasPrefix(whole, "-") {
		sign, whole = "-", whole[1:]
	}
	if len(whole) < 5 {
		return number
	}
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + " " + whole[i:]
	}
	if rest != "" {
		rest = "." + rest
	}
	return sign + whole + rest
}

// scaleOf returns the power of a thousand by which numbers of that size are
// divided to be read with ease, and how it is written before the unit: 1 and ""
// from 0.001 to 100 000.
func scaleOf(size float64) (power float64, prefix string) {
	if size >= 1e-3 && size < 1e5 {
		return 1, ""
	}
	exponent := 3 * int(math.Floor(math.Log10(size)/3))
	return math.Pow10(exponent), "10" + raisedNumber(exponent) + " "
}

// raisedNumber is an exponent as it stands above the line.
func raisedNumber(n int) string {
	up := make(map[rune]rune, len(raised))
	for high, low := range raised {
		up[low] = high
	}
	return strings.Map(func(r rune) rune { return up[r] }, strings.Replace(strconv.Itoa(n), "-", "−", 1))
}
