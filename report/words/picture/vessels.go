package picture

import (
	"fmt"
	"math"

	"minim/equipment/quantity"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/report/words/verb"
	"minim/uncertainty/rounding"
	"minim/uncertainty/route"
)

// Vessel is a solution that a route makes, as it is drawn.
type Vessel struct {
	// In says what goes into it beside solvent, Strength what it is, Made how much is made of it and
	// where, and Left what of it stays.
	In                   []string
	Strength, Made, Left string
	// Stays is the share of it that is left over, from 0 to 1.
	Stays float64
	// Last is the solution that is wanted.
	Last bool
}

// Row is a route as a row of vessels.
type Row struct {
	Title       Title
	Wanted, Alt string
	Vessels     []Vessel
	Notes       []string
}

// OfVessels words a route that is possible.
func OfVessels(p *route.Prep, r *route.Result) (*Row, error) {
	solutions, err := p.Solutions(r.Route)
	if err != nil {
		return nil, err
	}
	strengths, err := strengthsBy(p, r)
	if err != nil {
		return nil, err
	}
	row, most, rest, from := &Row{Wanted: supposed(p) + "To make " + wanted(p) + ". Hatched is what is left over"}, -1, r.LeftOverML, 0
	left := make([]float64, len(solutions))
	for i, s := range solutions {
		last := i == len(solutions)-1
		if left[i] = s.LeftML; last {
			left[i] = math.Max(0, s.LeftML-p.Volume)
		}
		rest -= left[i]
		if millilitres(left[i]) != "0 mL" && (most < 0 || left[i] > left[most]) {
			most = i
		}
		v := Vessel{Last: last, In: inputs(p, r.Route, from, s.Step), Strength: strengths[s.Step], Stays: share01(left[i], s.MadeML)}
		v.Made = fmt.Sprintf("%s, step %d", quantity.Millilitres(quantity.Round(s.MadeML, 4)), s.Step)
		if from = s.Step; last {
			v.Strength, from = strengths[len(r.Route.Steps)], len(r.Route.Steps)
			v.In = inputs(p, r.Route, before(solutions), from)
		}
		v.Left = leftOf(p, &s, left[i], last)
		row.Vessels = append(row.Vessels, v)
	}
	where := ""
	if most >= 0 && len(solutions) > 1 {
		where = largestPart(left[most], r.LeftOverML) + row.Vessels[most].Strength
	}
	row.Title = func(name func(string) string) string {
		return capital(name(r.Route.Name)) + ": " + leavings(r, p.Volume) + where
	}
	if millilitres(rest) != "0 mL" && rest > 0 {
		row.Notes = append(row.Notes, millilitres(rest)+" is left over of what was not made here.")
	}
	row.Alt = row.alt()
	return row, nil
}

// largestPart says how much of what is left over is of one solution.
func largestPart(part, whole float64) string {
	switch all := millilitres(part); {
	case all == millilitres(whole):
		return ", all of it at "
	case 2*part > whole:
		return ", most of it (" + all + ") at "
	default:
		return ", the largest part (" + all + ") at "
	}
}

// before is the step that finished the solution before the last, 0 where there is none.
func before(list []route.Solution) int {
	if len(list) < 2 {
		return 0
	}
	return list[len(list)-2].Step
}

// strengthsBy are the strengths of the solutions that a route makes, by the steps that finish them.
func strengthsBy(p *route.Prep, r *route.Result) (map[int]string, error) {
	all, err := p.Handled(r, r.Analytic.CoverageProbability)
	if err != nil {
		return nil, err
	}
	unit, texts := p.Target.Unit.Name, make(map[int]string)
	for i := range all {
		h := &all[i]
		if h.Bottle == 0 {
			continue
		}
		value, _ := rounding.Expanded(h.Analytic.Value, h.Analytic.ExpandedUncertainty)
		if h.Last {
			value = words.Shown(p, r).Value
		}
		texts[h.Step] = clause.Either(h.Uninformative.None(), value+" "+unit, "strength not known")
	}
	return texts, nil
}

func share01(part, whole float64) float64 {
	if !(whole > 0) {
		return 0
	}
	return math.Min(1, math.Max(0, part/whole))
}

// leftOf says what of a solution stays.
func leftOf(p *route.Prep, s *route.Solution, left float64, last bool) string {
	text := clause.Either(millilitres(left) == "0 mL", "nothing left over", millilitres(left)+" left over")
	switch {
	case !last:
		return text
	case s.LeftML < p.Volume*(1-1e-9):
		return "less than the " + quantity.Millilitres(p.Volume) + " wanted"
	}
	return text
}

// inputs are what goes into a solution by the steps after one and up to another, beside solvent.
func inputs(p *route.Prep, r *route.Route, after, to int) (list []string) {
	ready := ""
	for i := range r.Steps[:to] {
		s := &r.Steps[i]
		if s.Verb == route.Start {
			ready = s.Stock.Name
		}
		if i < after {
			continue
		}
		of := clause.When(verb.OfWhich(s) != "", " of "+verb.OfWhich(s))
		if of == "" && after == 0 && ready != "" {
			of = " of " + ready
		}
		switch t := s.Verb.Traits(); {
		case s.Verb == route.TakeAll:
			list = append(list, "all of it")
		case s.Verb == route.UsePacket:
			list = append(list, s.Packet.Name)
		case t.BringsSolute:
			list = append(list, verb.Amount(s)+" of "+p.Solute.Weighed())
		case t.FromSolution || s.Verb == route.Strengthen:
			list = append(list, verb.Amount(s)+of)
		}
	}
	return list
}

func (r *Row) alt() string {
	parts := clause.Each(r.Vessels, func(v Vessel) string {
		return quantity.Series(v.In, "and") + " gives " + v.Made + ", " + v.Strength + ", " + v.Left
	})
	return r.Title.String() + ". " + r.Wanted + ". Vessel by vessel: " + quantity.Series(parts, "then") + "."
}
