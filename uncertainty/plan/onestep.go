package plan

import (
	"math"
	"slices"
)

// everything is a span that holds every ratio.
var everything = span{0, math.Inf(1)}

// oneFromStocks reports whether the only routes by volume are one dilution of a stock, of
// which the ratio follows from the target.
func (b *bench) oneFromStocks(o Options) bool {
	return o.Steps == 1 && len(b.sources) > 0 && !slices.ContainsFunc(b.sources, func(s source) bool { return !s.isStock() })
}

// nearTarget is what one dilution of a stock must multiply its strength by, to be worth
// listing by the chance of being inside, or to come as near to the target as a route
// must that is listed for its tightness.
func (b *bench) nearTarget(taken, contained []measurement) span {
	size := func(m *measurement) span { return span{m.size(), m.size()} }
	j := newJudge(b.prep, b.coverage, tooLittle, enough)
	j.mostU = b.known(b.unit.size() + around(b.sources, func(s *source) span { return span{s.size(), s.size()} }).high +
		around(taken, size).high + max(around(taken, size).high, around(contained, size).high))
	chance, tight := j.strengthsWorth(j.floor), tightness(b.prep, b.coverage).strengths
	begins := around(b.sources, func(s *source) span { return span{s.mean * b.unit.mean, s.mean * b.unit.mean} })
	return span{min(chance.low, tight.low) / begins.high, max(chance.high, tight.high) / begins.low}
}
