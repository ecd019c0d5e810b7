package record

import (
	"context"
	"errors"
	"fmt"

	"minim/uncertainty"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
)

// Made is what follows from a record.
type Made struct {
	*Record
	// Settings of the simulations.
	Settings uncertainty.Settings
	// AsPlanned and AsMade are the results of the two routes. A probability of AsMade is
	// one about this batch, as far as it has been made. Where the plan aims elsewhere than
	// at the target, AsPlanned says what would bring it there.
	AsPlanned, AsMade route.Result
	// Effects say what made the strength differ from the plan, the greatest first.
	Effects []Effect
	// Room says of each reading still to come how far off it may be. It is empty
	// without a tolerance.
	Room []Room
}

// Evaluate works out what was made.
func Evaluate(ctx context.Context, r *Record, s uncertainty.Settings) (*Made, error) {
	m := &Made{Record: r, Settings: s.WithDefaults()}
	planned, err := m.simulate(ctx, r.Plan, r.Planned)
	if err == nil {
		err = contest.Amend(ctx, planned)
	}
	if err != nil {
		return nil, err
	}
	made, err := m.simulate(ctx, r.Prep, r.Made)
	if err != nil {
		return nil, err
	}
	m.AsPlanned, m.AsMade = planned.Results[0], made.Results[0]
	if !m.AsMade.Possible {
		return nil, fmt.Errorf("%s: %w: %s", r.File, ErrNoResult, m.AsMade.Reason)
	}
	if m.Effects, err = r.effects(s.WithDefaults().Coverage); err != nil {
		return nil, err
	}
	m.Room, err = r.room(ctx, &m.AsMade, m.Settings)
	return m, err
}

// ErrNoResult reports a batch whose strength cannot be worked out.
var ErrNoResult = errors.New("nothing can be said of the batch")

func (m *Made) simulate(ctx context.Context, p *route.Prep, r *route.Route) (*route.Comparison, error) {
	return route.Evaluate(ctx, p, []*route.Route{asMade(r)}, m.Settings)
}

// asMade is a route of which nothing is refused any more.
func asMade(r *route.Route) *route.Route {
	done := *r
	done.Made = len(done.Steps)
	return &done
}

// Difference is by how much of the expected strength of the plan the batch differs from
// it: 0.02 for 2 % more.
func (m *Made) Difference() float64 { return m.AsMade.Analytic.Value/m.AsPlanned.Analytic.Value - 1 }

// Meets reports whether the batch is inside the first tolerance with the chance that is
// asked for. Without a tolerance it is true.
func (m *Made) Meets() bool {
	return len(m.Prep.Tolerances) == 0 || m.Prep.GoodEnough(&m.AsMade)
}
