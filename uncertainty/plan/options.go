package plan

import (
	"cmp"

	"minim/uncertainty"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
)

// Options of a search.
type Options struct {
	// Limits of the routes: those of the prep, or others.
	route.Limits
	// All searches as well routes in which one piece pulls both ways, so that its errors cancel: it
	// is taken with, and filled or solvent added with it. From names the route of the prep that is
	// tuned, in place of a search.
	All  bool
	From string
	// Listed shows all routes that were simulated.
	Listed bool
	// Shown: of the routes that were found no more are simulated than it takes to choose what is shown.
	Shown bool
	// Fine takes every graduation of a scale, not only the numbered marks.
	Fine bool
	// Work is the number of candidates after which all searches together stop, each with one of so many Parts, two without, of
	// what is left, and say what they have not searched; 0 means never. They are the same ones on any machine. Tried counts
	// them, those of one call where it is nil; each search tries Each at the most, where that is stated.
	Work, Parts, Each int64
	Tried             *int64
	// Settings of the simulation of the routes that are found.
	Settings uncertainty.Settings
	// Progress, when not nil, is called when a part of the search is done, with
	// how many there are.
	Progress func(done, parts int)
}

// Search are those of the options that what is searched depends on.
func (o *Options) Search() search.Options {
	return search.Options{Limits: o.Limits, All: o.All, Fine: o.Fine, Work: o.Work, Parts: cmp.Or(o.Parts, 2), Each: o.Each, Tried: o.Tried, Coverage: cmp.Or(o.Settings.Coverage, 0.95), Progress: o.Progress}
}
