package route

import (
	"math"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/hazards"
)

// Comparison is a finished comparison of the routes of a prep.
type Comparison struct {
	Prep     *Prep
	Settings uncertainty.Settings
	Results  []Result
	Verdict  Verdict
	// Notes of all routes that can be done.
	Notes equipment.Notes
}

// Result is what one route gives.
type Result struct {
	Route *Route
	// Possible is false when the bench cannot do the route; Reason says why,
	// and nothing else is known.
	Possible bool
	Reason   note.Note
	// Clashes are the reason where it brings together what may not meet; Refused: the
	// reason is that solvent cannot go first where it must.
	Clashes []hazards.Clash
	Refused bool
	// Informative is false when a weighed mass, a measured volume or the strength could as well
	// be nothing; Uninformative says which.
	Informative   bool
	Uninformative note.Note
	// Dilutions and Operations (measurements) count the steps.
	Dilutions, Operations int
	// Intended strength, with every error zero, in the unit of the target as
	// all strengths below.
	Intended    float64
	Analytic    uncertainty.Analytic
	SecondOrder uncertainty.SecondOrder
	MonteCarlo  uncertainty.MonteCarlo
	CrossCheck  uncertainty.CrossCheck
	Quoted      uncertainty.Quoted
	// Elsewhere is nil for a route that is expected at the target, and where nobody asked.
	Elsewhere *Elsewhere
	// Inside holds the chance of being inside each tolerance of the prep.
	Inside []Chance
	// Closer is the chance that it comes closer to the target than the route
	// to use does, both made on this bench; ½ for that route itself, and NaN where
	// it has not been asked for.
	Closer float64
	// HoldsWithin is the half-width round the target, relative to it, that
	// holds the strength with the coverage probability.
	HoldsWithin float64
	// IfMisread is by how much the strength is off, in the unit of the target, when every reading is
	// off by a step of the display or 0.2 of a division, all the same way; 0 where it was not simulated.
	IfMisread float64
	// SoluteGrams used, MadeML of the wanted solution, and LeftOverML of all.
	SoluteGrams, MadeML, LeftOverML float64
	// SoluteUsed is in the unit of [Prep.SoluteUnit]; in any other than g SoluteGrams is 0.
	SoluteUsed float64
	// Ladder of weaker strengths made from the solution.
	Ladder []Rung
	// AssumedShare of the variance rests on defaults.
	AssumedShare float64
	Notes        equipment.Notes
}

// Chance is a probability of conformance.
type Chance struct {
	// Error is the standard error of Simulated.
	Error float64
	// Simulated is the fraction of the Monte Carlo trials, which counts;
	// Normal is the approximation of first order beside it, by the normal distribution, mixed with
	// Student's t of what is known from readings.
	Simulated, Normal float64
	// Acceptance are the strengths that are inside with the least chance asked
	// for, given the standard uncertainty of the route and its degrees of freedom (JCGM 106, 8); none of
	// them when it permits nothing.
	Acceptance uncertainty.Limits
}

// MayNotBeUsed reports whether the bench could do the route, and nobody should.
func (r *Result) MayNotBeUsed() bool { return r.Refused || len(r.Clashes) > 0 }

// ByBores is by how much the strength may be off either way, to first order, for what standards
// leave open of the bores.
func (r *Result) ByBores() (half float64) {
	for i := range r.Analytic.Budget {
		line := &r.Analytic.Budget[i]
		if line.Code == equipment.BoreCode {
			about := uncertainty.SummaryOf(line.Distribution)
			half += float64(math.Abs(line.Sensitivity) * (about.High - about.Low) / 2)
		}
	}
	return half
}

// GiveOrTake is half of the interval that is quoted, relative to the strength: what all screens
// show and go by.
func (r *Result) GiveOrTake() float64 {
	if r.Quoted == (uncertainty.Quoted{}) { // not simulated
		mixed := r.Analytic.Mixed()
		return mixed.Relative()
	}
	return r.Quoted.Relative()
}

// Enough reports whether the route makes the volume wanted.
func (r *Result) Enough(volume float64) bool { return r.MadeML >= volume*(1-1e-9) }

// Elsewhere says that a route is expected elsewhere than at the target, as it is when a form
// factor was forgotten or a mark was misread, and what would bring it there. A comparison
// ranks the route as it is stated.
type Elsewhere struct {
	// Off is by how much of the target the expected strength is off: -0.12 for 12 % too weak.
	Off float64
	// Step is the one, from 1, of which another reading brings the route to the target; 0
	// where no single reading does, of those of all steps or, in a route of very many, of
	// some: then Cut.
	Step int
	Cut  bool
	// Amended is that step with the reading. Intended is where the route then aims, in
	// the unit of the target, and Chance that of being inside the first tolerance.
	Amended          Step
	Intended, Chance float64
}

// Aim of a route: its intended strength, in the unit of the target, and what it makes and leaves over,
// in mL. It is not Possible where the bench cannot do it.
type Aim struct {
	Possible                     bool
	Strength, MadeML, LeftOverML float64
}

// Aim is where a route aims, without what it is uncertain by.
func (p *Prep) Aim(r *Route) (Aim, error) {
	c, err := p.compile(r)
	switch _, no := equipment.WhyNot(err); {
	case no:
		return Aim{}, nil
	case err != nil:
		return Aim{}, err
	}
	return Aim{true, c.model.Intended(c.strength), c.made, unlessRounding(c.leftOver)}, nil
}
