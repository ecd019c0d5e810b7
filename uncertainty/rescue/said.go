package rescue

import (
	"math"
	"slices"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty/portable"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
)

// noWay says why there is none.
func (r *rescuer) noWay() error {
	is, wanted := r.concentrations()
	switch {
	case is <= 0:
		return &NoWayError{Reason: note.Of("nothing-in-it", "")}
	case is > wanted:
		times := roundTo(is/wanted, 3)
		if times < 1.01 { // and never once
			times = 1 + roundTo(is/wanted-1, 2)
		}
		return r.notFound(note.Of("neither-whole-nor-part", "", quantity.Exact(times)), note.Of("larger-or-smaller", ""))
	}
	cure := note.Of("stronger-stock", "")
	if MayEvaporate(r.prep) {
		cure = note.Of("or", "", cure, note.Of("evaporating", ""))
	}
	reason := note.Of("too-weak", "")
	switch {
	case len(r.stronger) == 0 && !r.prep.CountsMass():
		reason = note.Of("too-weak-lacks", "", r.prep.NeedsMass("a mass").Error())
	case len(r.stronger) == 0 && !r.prep.NotPure().None():
		reason = note.Of("too-weak-lacks", "", search.NotTaken(r.prep))
	case len(r.stronger) > 0:
		reason = note.Of("too-weak-to-measure", "")
	}
	return r.notFound(reason, cure)
}

// inVain says how little the best of what was tried is worth, and what was not tried.
func (r *rescuer) inVain(found *Rescue) error {
	percent := func(chance float64) float64 { return math.Floor(1000*chance) / 10 }
	best := len(found.Results) - 1
	for i := range found.Results {
		if found.Kinds[i].Code != string(leave) && found.Results[i].Chance() > found.Results[best].Chance() {
			best = i
		}
	}
	reason := note.Of("in-vain", "", r.tried, percent(found.Results[best].Chance()), percent(r.now.Chance()))
	if found.Inherits(best) {
		reason = note.Of("in-vain-inherited", "", reason)
	}
	return r.notFound(reason, note.Of("surer-batch", ""))
}

// notFound adds to a reason what was not tried.
func (r *rescuer) notFound(reason, cure note.Note) error {
	if list := r.notTried(false); len(list) > 0 {
		reason = note.Of("not-tried", "", reason, strings.Join(note.Texts(list), "; "))
	}
	return &NoWayError{reason, cure}
}

// notTried says what was left out. What might be done in more steps matters only where
// nothing is good enough.
func (r *rescuer) notTried(good bool) (list []note.Note) {
	for _, kind := range r.cut {
		list = append(list, note.Of("some-of-the-ways", "", note.Of(string(kind), ""), mostTried))
	}
	list = append(list, r.notSearched...)
	is, wanted := r.concentrations()
	switch {
	case good:
	case is > wanted:
		list = append(list, note.Of("diluting-more-finely", ""))
	case len(r.found[diluteFirst]) > 0:
		list = append(list, note.Of("diluted-otherwise", ""))
	case len(r.stronger) > 0 || len(r.prep.Kit.Balances) > 0:
		list = append(list, r.dilutedFirst(is, wanted))
	}
	return list
}

// dilutedFirst says which solution can be diluted first, how many times, and how much is
// then needed of it: a fifth or more of what the smallest instrument measures, or else as
// much as can be. It stays twice as strong as what is wanted.
func (r *rescuer) dilutedFirst(is, wanted float64) note.Note {
	smallest := math.Inf(1)
	for _, k := range r.deliverers() {
		smallest = min(smallest, k.Capacity)
	}
	first, most := note.Of("made-first", ""), 0.0
	for _, s := range r.stronger {
		for _, times := range []float64{2, 5, 10, 20, 50, 100, 200, 500, 1000} {
			needed := r.now.MadeML * (wanted - is) / (s.concentration/times - wanted)
			if s.concentration < 2*times*wanted || needed <= most {
				continue
			}
			most, first = needed, note.Of("diluted-first", "", s.name(), times, quantity.Exact(roundTo(needed, 2)))
			if needed >= 0.2*smallest {
				return first
			}
		}
	}
	return first
}

// name of a stronger solution.
func (s *strong) name() any {
	if s.source.Stock != nil {
		return s.source.Stock.Name
	}
	return note.Of("solution-of-step", "", s.source.From)
}

func roundTo(x float64, digits int) float64 {
	scale := math.Pow10(digits - 1 - portable.Decade(math.Abs(x)))
	return math.Round(x*scale) / scale
}

// Finding is what is advised, and above all what is amiss with it: that what is asked for is not reached, that it is too
// little.
func (r *Rescue) Finding() note.Note {
	used, p := &r.Results[r.Verdict.Use], r.Prep
	wanted := quantity.Millilitres(p.Volume)
	short := !used.Enough(p.Volume)
	if r.LeavesIt() {
		return either(short, note.Of("leave-it-too-little", "", wanted), note.Of("leave-it", ""))
	}
	asked := quantity.Number(100 * p.LeastChance)
	smaller := slices.ContainsFunc(r.Results, func(a route.Result) bool { return a.Possible && !a.Enough(p.Volume) && p.GoodEnough(&a) })
	switch {
	case len(p.Tolerances) > 0 && !p.GoodEnough(used) && short:
		return note.Of("nearest-and-too-little", "", p.Target.Text, asked)
	case len(p.Tolerances) > 0 && !p.GoodEnough(used):
		return either(smaller, note.Of("nearest-of-enough", "", p.Target.Text, wanted, asked), note.Of("nearest", "", p.Target.Text, asked))
	case short:
		return note.Of("too-little", "", p.Target.Text, wanted)
	}
	return note.Of("to", "", p.Target.Text)
}

func either(is bool, a, b note.Note) note.Note {
	if is {
		return a
	}
	return b
}
