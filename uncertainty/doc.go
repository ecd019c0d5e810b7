// Package uncertainty is the engine of minim: it states a measurement model as
// a list of nodes over influences, and evaluates the uncertainty of any node
// by the law of propagation of uncertainty (JCGM 100) and by the propagation
// of distributions (JCGM 101), compares the two, and derives coverage
// intervals, budgets and conformance probabilities (JCGM 106).
//
// The package knows no instruments, no files and no printing. It is used in
// three moves:
//
//	var m uncertainty.Model
//	mass := m.Influence(uncertainty.Influence{Name: "mass", Unit: "g",
//		Distribution: uncertainty.Normal{Mu: 1, Sigma: 0.01}, Nominal: 1})
//	volume := m.Influence(uncertainty.Influence{Name: "volume", Unit: "mL",
//		Distribution: uncertainty.Rectangular{Low: 24.9, High: 25.1}, Nominal: 25})
//	strength := m.Divide(mass, volume)
//
//	analytic, err := m.Propagate(strength, 0.95)
//	simulated, err := m.Simulate(ctx, strength, uncertainty.Settings{})
//
// One model serves all: value, gradient, bounds and Monte Carlo samples are
// read from the same nodes, so no formula is written twice.
package uncertainty
