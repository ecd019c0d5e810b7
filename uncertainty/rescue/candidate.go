package rescue

import (
	"cmp"
	"math"
	"slices"

	"minim/equipment"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
)

// candidate is a correction that may be worked out: what it does, with what it is judged by
// before that.
type candidate struct {
	steps []route.Step
	// operations are measurements, leftOver is in mL, times is what it aims at over the target, off how far that is from
	// one, and cost what the policy makes least of routes that are sure enough.
	operations                 int
	leftOver, times, off, cost float64
	// handling is nil until it is asked for.
	handling *policy.Figures
	// passes: it is sure enough; aims: it does not aim elsewhere than at the target.
	done, passes, aims bool
}

// mostConsidered are the corrections of a kind that are put in order, mostTried those that are worked out,
// about a second's worth.
const (
	mostConsidered = 100_000
	mostTried      = 3000
)

// A correction may aim beyond the tolerance by so much that what is known to shift it may bring it back;
// where there is one limit alone, or none, so much of the target aside.
const (
	beyond    = 1.25
	oneSided  = 0.1
	leastAway = 0.01
)

// near reports whether a strength that is so many times what is wanted may be inside the
// tolerance, and is worth working out.
func (r *rescuer) near(ratio float64) bool { return math.Abs(ratio-1) <= r.within() }

// within is by how much of the target a correction may aim aside.
func (r *rescuer) within() float64 {
	if !r.ask.Tolerant {
		return leastAway
	}
	away, sides := leastAway, 0
	limits, target := r.prep.Tolerances[0].Limits, r.prep.Target.Value
	if limits.Lower > 0 {
		away, sides = max(away, (target-limits.Lower)/target), sides+1
	}
	if !math.IsInf(limits.Upper, 1) {
		away, sides = max(away, (limits.Upper-target)/target), sides+1
	}
	if sides < 2 {
		away = max(away, oneSided)
	}
	return float64(beyond * away)
}

// consider takes in a correction that makes so many mL, of which the strength is so many times
// what is wanted, and that sets aside so much.
func (r *rescuer) consider(kind way, makes, ratio, aside float64, steps ...route.Step) {
	near := r.near(ratio)
	if r.err != nil || near && r.full(kind) || !near && !r.isSpare(kind, math.Abs(ratio-1)) {
		return
	}
	c := &candidate{steps: steps, times: ratio, off: math.Abs(ratio - 1), leftOver: max(0, makes-r.prep.Volume) + aside}
	for i := range steps {
		if v := steps[i].Verb; v != route.Start && v != route.TakeAll {
			c.operations++
		}
	}
	c.cost = r.ask.Cost(c.operations, c.leftOver)
	if makes < r.prep.Volume*(1-slack) {
		c.cost += short // what is not enough comes last
	}
	if near {
		r.considered[kind] = append(r.considered[kind], c)
		return
	}
	spare := append(r.spare[kind], c)
	slices.SortStableFunc(spare, func(a, b *candidate) int { return cmp.Compare(a.off, b.off) })
	r.spare[kind] = spare[:min(len(spare), mostSpare)]
}

// mostSpare are the corrections of a kind that aim nearest, which are worked out where none is near: no farther
// off than a part of the target.
const (
	mostSpare = 4
	mostOff   = 0.1
)

// isSpare reports whether a correction that aims so far off may be one of those.
func (r *rescuer) isSpare(kind way, off float64) bool {
	spare := r.spare[kind]
	return len(r.considered[kind]) == 0 && off <= max(mostOff, 2*r.within()) && (len(spare) < mostSpare || off < spare[mostSpare-1].off)
}

// short is more than any volume, in mL.
const short = 1e12

// full reports whether as many corrections of a kind are considered as may be, and remembers
// that some were not.
func (r *rescuer) full(kind way) bool {
	if len(r.considered[kind]) < mostConsidered {
		return false
	}
	r.isCut(kind)
	return true
}

func (r *rescuer) isCut(kind way) {
	if !slices.Contains(r.cut, kind) {
		r.cut = append(r.cut, kind)
	}
}

// handled says how a correction handles.
func (r *rescuer) handled(steps []route.Step) *policy.Figures {
	f := r.prep.Handling(&route.Route{Steps: steps})
	f.Solute = r.solute(steps)
	return &f
}

// solute is how much of it a correction takes, in g, beside what another of its kind takes.
func (r *rescuer) solute(steps []route.Step) (grams float64) {
	is, _ := r.concentrations()
	for i := range steps {
		switch s := &steps[i]; s.Verb {
		case route.AddSolute:
			grams += s.Amount
		case route.Take, route.WeighAliquot, route.Strengthen:
			if s.Stock == nil && s.From == 0 {
				grams += float64(s.Amount * is)
			}
			for _, strong := range r.stronger {
				if strong.source.Stock == s.Stock && strong.source.From == s.From {
					grams += float64(s.Amount * strong.concentration)
				}
			}
		}
	}
	return grams
}

// marks are all volumes that an instrument can be read at or set to, within two, and those next to them.
func marks(k *equipment.Measure, from, to float64) (list []float64) {
	if from > to {
		return nil
	}
	for at := max(0, from); ; at += k.Finest() {
		nearest := k.Nearest(at)
		if len(nearest) == 0 {
			if nearest = k.Nearest(k.Capacity); len(list) == 0 && len(nearest) > 0 {
				list = append(list, nearest[len(nearest)-1])
			}
			return list
		}
		if len(list) == 0 {
			list = nearest[:len(nearest)-1]
		}
		mark := nearest[len(nearest)-1]
		if len(list) == 0 || mark > list[len(list)-1] {
			list = append(list, mark)
		}
		if mark > to*(1+slack) || mark >= k.Capacity*(1-slack) {
			return list
		}
	}
}
