package record

import (
	"math"

	"minim/uncertainty/route"
)

// Room says how far off a reading still to come may be.
type Room struct {
	// Step that is still to come, from 1, and the reading planned for it.
	Step    int
	Planned float64
	// Low and High are the least and the greatest reading, of those that the instrument
	// can show, with which the batch is inside the first tolerance with the chance asked
	// for, when all else still to come goes as planned; in the unit of the amount.
	Low, High float64
	// Any is false when there is no such reading.
	Any bool
	// LowFree and HighFree: the instrument shows nothing beyond that end with which the
	// batch would be outside.
	LowFree, HighFree bool
	// Fixed: it has one mark, and nothing else can be read.
	Fixed bool
}

// PlannedRoom is the room of every reading of a route of which nothing has been done.
func PlannedRoom(p *route.Prep, r *route.Route, coverage float64) ([]Room, error) {
	result, err := p.Assess(r, coverage)
	if err != nil || !result.Possible {
		return nil, err
	}
	planned := &Record{Plan: p, Prep: p, Planned: r, Made: r}
	for range r.Steps {
		planned.Steps = append(planned.Steps, ToCome)
	}
	return planned.room(&result, coverage)
}

// room works out the room of each step still to come. The chances are those of the
// normal approximation.
func (r *Record) room(made *route.Result, coverage float64) ([]Room, error) {
	if len(r.Prep.Tolerances) == 0 {
		return nil, nil
	}
	var list []Room
	for _, n := range r.OfOrigin(ToCome) {
		s := &r.Made.Steps[n-1]
		if s.Balance == nil && s.Measure == nil {
			continue
		}
		one := Room{Step: n, Planned: s.Amount}
		scale := newReadings(r, n-1, coverage)
		if scale.digit == 0 {
			one.Fixed, one.Any = true, made.Inside[0].Normal >= r.Prep.LeastChance
			one.Low, one.High = s.Amount, s.Amount
			list = append(list, one)
			continue
		}
		scale.fill(&one)
		if scale.err != nil {
			return nil, scale.err
		}
		list = append(list, one)
	}
	return list, nil
}

// readings are what an instrument may show in a step, counted in its digits or lines.
type readings struct {
	*Record
	step     int
	digit    float64
	most     int
	coverage float64
	rising   bool // the strength rises with the reading
	known    map[int]route.Result
	err      error
}

func newReadings(r *Record, step int, coverage float64) *readings {
	s := &r.Made.Steps[step]
	l := &readings{Record: r, step: step, coverage: coverage, known: make(map[int]route.Result)}
	capacity := 0.0
	switch {
	case s.Balance != nil:
		l.digit, capacity = s.Balance.Readability, s.Balance.Capacity
	case s.Measure.Kind.Counts():
		l.digit, capacity = 1, 10000
	default:
		l.digit, capacity = s.Measure.Finest(), s.Measure.Capacity
	}
	if l.digit > 0 {
		l.most = int(capacity/l.digit + 1e-9)
	}
	switch s.Verb {
	case route.MakeUpTo, route.Add, route.DissolveIn, route.WeighUpTo:
	default:
		l.rising = true
	}
	return l
}

// reading is the amount of so many digits, as a decimal.
func (l *readings) reading(n int) float64 {
	if perUnit := math.Round(1 / l.digit); math.Abs(perUnit*l.digit-1) < 1e-9 {
		return float64(n) / perUnit
	}
	return float64(n) * l.digit
}

// at is the batch with a reading of so many digits.
func (l *readings) at(n int) *route.Result {
	if found, ok := l.known[n]; ok {
		return &found
	}
	made := route.Route{Name: l.Made.Name, Steps: append([]route.Step(nil), l.Made.Steps...)}
	made.Steps[l.step].Amount = l.reading(n)
	result, err := l.Prep.Assess(&made, l.coverage)
	if err != nil && l.err == nil {
		l.err = err
	}
	l.known[n] = result
	return &result
}

// inside reports whether the batch is good enough with a reading.
func (l *readings) inside(n int) bool {
	if n < 1 || n > l.most {
		return false
	}
	r := l.at(n)
	return r.Possible && r.Inside[0].Normal >= l.Prep.LeastChance
}

// strongerThanMeant reports whether a reading makes the batch stronger than the target;
// one that cannot be done counts as too large.
func (l *readings) strongerThanMeant(n int) bool {
	r := l.at(n)
	if !r.Possible {
		return l.rising
	}
	return r.Analytic.Value > l.Prep.Target.Value
}

// fill works the room of a reading out. The readings with which the batch is good enough
// lie side by side, the nearest to the target among them.
func (l *readings) fill(one *Room) {
	good := min(max(int(math.Round(one.Planned/l.digit)), 1), l.most)
	if !l.inside(good) {
		good = l.nearest()
	}
	if one.Any = l.inside(good); !one.Any {
		return
	}
	low, high := l.end(good, 0), l.end(good, l.most+1)
	one.Low, one.High = l.reading(low), l.reading(high)
	one.LowFree, one.HighFree = low == 1, high == l.most
}

// nearest is the number of digits with which the batch comes nearest to the target.
func (l *readings) nearest() int {
	low, high := 1, l.most // the target lies between, if anywhere
	for high-low > 1 {
		middle := (low + high) / 2
		if l.strongerThanMeant(middle) == l.rising {
			high = middle
		} else {
			low = middle
		}
	}
	if l.inside(low) {
		return low
	}
	return high
}

// end is the last number of digits, from one that is good towards a limit that is not,
// with which the batch is good enough.
func (l *readings) end(good, bad int) int {
	for good-bad > 1 || bad-good > 1 {
		middle := (good + bad) / 2
		if l.inside(middle) {
			good = middle
		} else {
			bad = middle
		}
	}
	return good
}
