package record

import (
	"context"
	"math"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// readings are what an instrument may show in a step, counted in its digits or lines.
type readings struct {
	*Record
	ctx      context.Context
	settings uncertainty.Settings
	made     *route.Result
	step     int
	digit    float64
	most     int
	rising   bool // the strength rises with the reading
	orders   []*route.Order
	known    map[int]route.Result
	sure     map[int]bool
	err      error
}

func newReadings(ctx context.Context, r *Record, step int, made *route.Result, settings uncertainty.Settings) *readings {
	s := &r.Made.Steps[step]
	l := &readings{
		Record: r, ctx: ctx, settings: settings.WithDefaults(), made: made, step: step,
		rising: s.Rises(), known: make(map[int]route.Result), sure: make(map[int]bool),
	}
	capacity := 0.0
	l.digit, capacity = s.Scale()
	if l.digit > 0 {
		l.most = int(capacity/l.digit + 1e-9)
	}
	l.orders, l.err = r.Prep.Orders(r.Made)
	return l
}

// reading is the amount of so many digits, as a decimal.
func (l *readings) reading(n int) float64 { return equipment.Digits(float64(n), l.digit) }

// route is the batch with a reading of so many digits.
func (l *readings) route(n int) *route.Route { return l.Made.With(l.step, l.reading(n)) }

// at is the batch with a reading of so many digits, not simulated.
func (l *readings) at(n int) *route.Result {
	if found, ok := l.known[n]; ok {
		return &found
	}
	result, err := l.Prep.Assess(l.route(n), l.settings.Coverage)
	if err != nil && l.err == nil {
		l.err = err
	}
	l.known[n] = result
	return &result
}

// possible reports whether a reading of so many digits can be gone on from: what is in a vessel
// already goes into it, and the batch is as large as is wanted where it would be as it stands.
func (l *readings) possible(n int) bool {
	r, volume := l.at(n), l.Prep.Volume
	return r.Possible && (r.Enough(volume) || !l.made.Enough(volume)) && l.Prep.Holds(r.Route, l.orders)
}

// chance is about that of being inside with a reading: the simulated spread of the batch
// as it stands is moved to the strength that it then has, and made as wide as that is.
func (l *readings) chance(n int) float64 {
	if n < 1 || n > l.most {
		return 0
	}
	r := l.at(n)
	if !r.Informative || !l.possible(n) {
		return 0
	}
	limits, is, was := l.Prep.Tolerances[0].Limits, &r.Analytic, &l.made.Analytic
	if is.StandardUncertainty == 0 || was.StandardUncertainty == 0 {
		return is.ConformanceProbability(limits)
	}
	back := func(x float64) float64 {
		return was.Value + (x-is.Value)*was.StandardUncertainty/is.StandardUncertainty
	}
	return l.made.MonteCarlo.ConformanceProbability(uncertainty.Limits{Lower: back(limits.Lower), Upper: back(limits.Upper)})
}

// likely reports whether the batch seems to be good enough with a reading.
func (l *readings) likely(n int) bool {
	if sure, ok := l.sure[n]; ok {
		return sure
	}
	return l.chance(n) >= l.Prep.LeastChance
}

// mostSimulated is how many steps a route may have for each end of the room of each of its
// readings to be simulated: the work grows with the square of their number.
const mostSimulated = 16

// confirm reports whether it is, by a simulation like that of the batch as it stands; on a
// longer route, whether it seems to be.
func (l *readings) confirm(n int) bool {
	if sure, ok := l.sure[n]; ok {
		return sure
	}
	if len(l.Made.Steps) > mostSimulated {
		return l.likely(n)
	}
	good := false
	if n >= 1 && n <= l.most && l.err == nil && l.at(n).Informative && l.possible(n) {
		chance, err := l.Prep.ChanceOf(l.ctx, l.route(n), l.settings)
		l.err, good = err, chance >= l.Prep.LeastChance
	}
	l.sure[n] = good
	return good
}

// permitted is a strength that is surely permitted: the middle between two limits, and
// well away from one.
func (l *readings) permitted() float64 {
	limits, away := l.Prep.Tolerances[0].Limits, float64(4*l.made.Analytic.StandardUncertainty)
	switch {
	case math.IsInf(limits.Lower, -1):
		return max(limits.Upper-away, limits.Upper/2)
	case math.IsInf(limits.Upper, 1):
		return limits.Lower + away
	}
	return (limits.Lower + limits.Upper) / 2
}
