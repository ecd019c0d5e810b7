package record

import (
	"context"
	"math"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// Room says how far off a reading still to come may be.
type Room struct {
	// Step that is still to come, from 1, and the reading planned for it.
	Step    int
	Planned float64
	// Low and High are the ends of the readings, of those that the instrument can show,
	// with which the batch is inside the first tolerance with the chance asked for, when
	// all else still to come goes as planned; in the unit of the amount. Where the batch
	// is inside as planned, the planned reading lies between them. With all of them there is
	// room for what is in a vessel already, and as much is made as is wanted, where that is
	// planned.
	Low, High float64
	// Any is false when there is no such reading.
	Any bool
	// LowFree and HighFree: the instrument shows nothing beyond that end with which the
	// batch would be outside.
	LowFree, HighFree bool
	// Fixed: it has one mark, and nothing else can be read.
	Fixed bool
}

// PlannedRoom is the room of every reading of a route of which nothing has been done,
// and of which the result is known as [route.Evaluate] gives it with these settings.
func PlannedRoom(ctx context.Context, p *route.Prep, result *route.Result, s uncertainty.Settings) ([]Room, error) {
	if !result.Possible {
		return nil, nil
	}
	planned := &Record{Plan: p, Prep: p, Planned: result.Route, Made: asMade(result.Route)}
	for range result.Route.Steps {
		planned.Steps = append(planned.Steps, ToCome)
	}
	return planned.room(ctx, result, s)
}

// room works out the room of each step still to come. Whether the batch is inside as it
// stands is what its result says; with another reading it is simulated anew, but on a long
// route.
func (r *Record) room(ctx context.Context, made *route.Result, settings uncertainty.Settings) ([]Room, error) {
	if len(r.Prep.Tolerances) == 0 {
		return nil, nil
	}
	var list []Room
	for _, n := range r.OfOrigin(ToCome) {
		s := &r.Made.Steps[n-1]
		if s.Balance == nil && s.Measure == nil {
			continue
		}
		one := Room{Step: n, Planned: s.Amount, Low: s.Amount, High: s.Amount, Any: r.Prep.GoodEnough(made)}
		scale := newReadings(ctx, r, n-1, made, settings)
		if one.Fixed = scale.digit == 0; !one.Fixed {
			scale.fill(&one)
		}
		if scale.err != nil {
			return nil, scale.err
		}
		list = append(list, one)
	}
	return list, nil
}

// fill works the room of a reading out: from the planned one, or from the nearest with
// which the batch may be inside. The readings with which it is lie side by side.
func (l *readings) fill(one *Room) {
	planned := one.Planned / l.digit
	below, above := int(math.Floor(planned+1e-9)), int(math.Ceil(planned-1e-9))
	if one.Any && below == above {
		l.sure[below] = true
	}
	if !one.Any {
		best := l.best()
		if one.Any = l.confirm(best); !one.Any {
			return
		}
		below, above = best, best
		one.Low, one.High = l.reading(best), l.reading(best)
	}
	if low, ok := l.end(below, 0); ok {
		one.Low = l.reading(low)
		below = low
	}
	if high, ok := l.end(above, l.most+1); ok {
		one.High = l.reading(high)
		above = high
	}
	one.LowFree, one.HighFree = below <= 1, above >= l.most
}

// end is the last number of digits, from one on towards a limit that is not inside, with
// which the batch is inside; ok is false where that one itself is not.
func (l *readings) end(from, limit int) (n int, ok bool) {
	if !l.confirm(from) {
		return 0, false
	}
	good, bad := from, limit
	for good-bad > 1 || bad-good > 1 {
		middle := (good + bad) / 2
		if l.likely(middle) {
			good = middle
		} else {
			bad = middle
		}
	}
	for back := 1; !l.confirm(good); back *= 2 { // ends at from
		good += max(-back, min(back, from-good))
	}
	return good, true
}

// best is the number of digits with which the batch comes nearest to a strength that is
// surely permitted.
func (l *readings) best() int {
	planned := l.Made.Steps[l.step].Amount / l.digit
	low, high := equipment.Crossing(planned, l.most, l.rising, func(n int) (strong, possible bool) {
		r := l.at(n)
		return r.Analytic.Value > l.permitted(), l.possible(n)
	})
	if l.chance(low) >= l.chance(high) {
		return low
	}
	return high
}
