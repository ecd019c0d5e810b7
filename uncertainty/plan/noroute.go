package plan

import (
	"math"
	"strings"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty/route"
)

// NoRouteError reports a bench that allows no route.
type NoRouteError struct {
	// Reason is the most likely one.
	Reason note.Note
	// NotSearched says what was left out.
	NotSearched []note.Note
}

func (e *NoRouteError) Error() string {
	if len(e.NotSearched) == 0 {
		return note.Of("no-route", "", e.Reason).String()
	}
	return note.Of("no-route-not-searched", "", e.Reason, strings.Join(note.Texts(e.NotSearched), "; ")).String()
}

// tooHeavy says why the volume wanted cannot be made by weighing, where a vessel with it is
// too much for each balance, or it is by itself: of the balance that carries most. Nothing where that is not why.
func tooHeavy(p *route.Prep) (reason note.Note) {
	if !p.Solvent.Density.Known {
		return note.Note{}
	}
	density := p.Density(1.1 * p.MassFraction(p.ConcentrationOf(p.Target.Value)))
	most := 0.0
	for _, k := range p.Kit.Balances {
		total := k.Displayed(math.Ceil(p.Volume * density / k.Readability))
		err := k.Shows(total)
		if err == nil {
			err = p.Carries(route.Step{Verb: route.WeighUpTo, Balance: k, Amount: total})
		}
		why, no := equipment.WhyNot(err)
		if !no {
			return note.Note{}
		}
		if k.Capacity > most {
			reason, most = why, k.Capacity
		}
	}
	return reason
}

// noRoute finds the most likely reason.
func noRoute(p *route.Prep, o Options, notSearched []note.Note) error {
	largest := 0.0
	for _, m := range p.Kit.Measures {
		if m.Kind.Traits().Receives {
			largest = max(largest, m.Capacity)
		}
	}
	reason, heavy, limits := note.Of("none-near", ""), tooHeavy(p), o.Search()
	switch limited := o.LeftOver+o.Volume+o.Solute+o.Strongest > 0 || len(p.Solute.Solubility) > 0 || len(o.Without) > 0; {
	case !p.CountsMass() && len(p.Stocks) == 0:
		return &NoRouteError{Reason: note.Of("no-stock", "", p.NeedsMass("a mass").Error())}
	case len(p.Stocks) == 0 && p.NotPure().Code == "is-gas":
		return &NoRouteError{Reason: p.NotPure()}
	case len(p.Kit.Balances)+len(p.Stocks)+len(p.Packets) == 0:
		reason = note.Of("no-source", "")
	case largest < p.Volume && !heavy.None() && (largest == 0 || heavy.Code != "more-than-it-carries"):
		reason = heavy
	case largest == 0:
		reason = note.Of("no-vessel", "")
	case largest < p.Volume:
		reason = note.Of("vessels-too-small", "", equipment.ML(p.Volume), equipment.ML(largest))
	case limits.Strongest(p) < p.ConcentrationOf(p.Target.Value):
		reason = note.Of("target-too-strong", "")
	case limited:
		reason = note.Of("none-within-limits", "")
	}
	return &NoRouteError{reason, notSearched}
}
