package plan

import (
	"cmp"
	"math"

	"minim/uncertainty"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
)

// Options of a search.
type Options struct {
	// Limits of the routes: those of the prep, or others.
	route.Limits
	// All shows all routes that were simulated, and searches as well those in which one piece
	// pulls both ways, so that its errors cancel: it is taken with, and filled or solvent added
	// with it. From names the route of the prep that is tuned, in place of a search.
	All  bool
	From string
	// Fine takes every graduation of a scale, not only the numbered marks.
	Fine bool
	// Work is the number of candidates after which each search stops, and says what it
	// has not searched; 0 means never. They are the same ones on any machine.
	Work int64
	// Settings of the simulation of the routes that are found.
	Settings uncertainty.Settings
	// Progress, when not nil, is called when a part of the search is done, with
	// how many there are.
	Progress func(done, parts int)
}

func (o *Options) coverage() float64 { return cmp.Or(o.Settings.Coverage, 0.95) }

// mostLeftOver in mL, of a prep, with a little room for rounding.
func (o *Options) mostLeftOver(p *route.Prep) float64 {
	return min(limit(o.LeftOver), limit(o.Volume)-p.Volume)
}

// leftOverAllowed in mL, of a prep, as it is stated or follows; infinite without a limit.
func (o *Options) leftOverAllowed(p *route.Prep) float64 {
	return min(stated(o.LeftOver), stated(o.Volume)-p.Volume)
}

func (o *Options) mostSolute() float64 { return limit(o.Solute) }

// strongest concentration of a solution that is made, in g/mL.
func (o *Options) strongest(p *route.Prep) float64 { return contest.Strongest(p, o.Limits) }

// limit is infinite where none is stated, and a little more than what is.
func limit(x float64) float64 { return float64(stated(x) * (1 + 1e-9)) }

// stated is what is stated, infinite where nothing is.
func stated(x float64) float64 {
	if x == 0 {
		return math.Inf(1)
	}
	return x
}
