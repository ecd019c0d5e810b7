// Package uncertainty is the engine of minim: it states a measurement model as
// a list of nodes over influences, and evaluates the uncertainty of any node
// by the law of propagation of uncertainty (JCGM 100) and by the propagation
// of distributions (JCGM 101), compares the two, and derives coverage
// intervals, budgets and conformance decisions (JCGM 106).
//
// The package knows no instruments, no files and no printing. It is used in
// three moves: state the model, propagate it, simulate it.
//
//	var m uncertainty.Model
//	mass := m.Influence(uncertainty.Influence{Code: "mass", Unit: "g",
//		Distribution: uncertainty.Normal{Mu: 1, Sigma: 0.01}, Nominal: 1})
//	volume := m.Influence(uncertainty.Influence{Code: "volume", Unit: "mL",
//		Distribution: uncertainty.Rectangular{Low: 24.9, High: 25.1}, Nominal: 25})
//	strength := m.Divide(mass, volume)
//
//	analytic, err := m.Propagate(strength, 0.95)
//	simulated, err := m.Simulate(ctx, strength, uncertainty.Settings{})
//	checked, err := m.CrossCheck(strength, analytic, &simulated)
//
// What two quantities share is one influence: asking for the same owner and code
// again gives the same node, and so the right correlation.
//
// The analytic side is [Model.Propagate] (first order, exact derivatives, budget,
// effective degrees of freedom) and [Model.PropagateSecondOrder] (curvature, the
// shift of the estimate). [Model.Simulate] runs a fixed number of trials, or as many
// as a number of significant digits needs, and says how far its results can be
// relied on. [CloserTo] compares quantities trial by trial. [Quote] chooses the
// interval to be stated, [rounding.Expanded] prints it. [Limits] decides whether a
// result conforms.
//
// One model serves all: value, gradient, higher derivatives, bounds and Monte
// Carlo samples are read from the same nodes, so no formula is written twice.
//
// # What no command asks for
//
// The tests hold the engine to standards and handbooks, some of whose cases need more than
// any model of minim has. What they need besides is stated in test files, on top of the same
// nodes and draws: correlation coefficients and the sine and cosine of a node
// (correlate_test.go), several quantities with their covariances (propagatejointly_test.go),
// three more distributions (arcsine_test.go, inexactrectangular_test.go, trapezoidal_test.go),
// quantiles (quantile_test.go), the global risks of an inspection (inspection_test.go), what
// is known after a measurement, and the measurement capability (given_test.go). Only these
// go through gonum, whose last digits may differ from machine to machine.
//
// The functions panic for a mistake of the programmer, such as a node of another
// model or a probability of 95, and return an error for what data can do wrong.
// They never return NaN or infinity but where the documentation says so.
package uncertainty
