package route_test

import (
	"context"

	"minim/equipment"
	"minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
	"minim/uncertainty/tolerances"
)

func init() {
	route.Compare, route.CompareTo = contest.Compare, contest.CompareTo
	route.Cost, route.HalfWidth = plan.Cost, tolerances.HalfWidth
	route.ParseKit, route.ParsePrep, route.Changed = bench.ParseKit, bench.ParsePrep, bench.Changed
	route.SaveRoutes, route.Written = bench.SaveRoutes, bench.Written
	route.LoadKit = func(path string) (*equipment.Kit, error) { return bench.LoadKit(context.Background(), path) }
	route.LoadPrep = func(path, kitPath string) (*route.Prep, error) {
		return bench.LoadPrep(context.Background(), path, kitPath)
	}
}
