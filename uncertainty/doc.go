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
//	checked, err := m.CrossCheck(ctx, strength, analytic, &simulated)
//
// What two quantities share is one influence: asking for the same owner and code
// again gives the same node, and so the right correlation. Where only correlation
// coefficients are known there is [Model.Correlate].
//
// The analytic side is [Model.Propagate] (first order, exact derivatives, budget,
// effective degrees of freedom), [Model.PropagateSecondOrder] (curvature, the
// shift of the estimate) and [Model.PropagateJointly] (several quantities with
// their covariances). [Model.Simulate] runs a fixed number of trials, or as many
// as a number of significant digits needs, and says how far its results can be
// relied on. [CloserTo] compares quantities trial by trial. [Quote] chooses the
// interval to be stated, [RoundExpanded] prints it. [Limits] decides whether a
// result conforms.
//
// One model serves all: value, gradient, higher derivatives, bounds and Monte
// Carlo samples are read from the same nodes, so no formula is written twice.
//
// # What no command asks for
//
// These parts serve published cases alone: the tests hold the engine to standards and
// handbooks that need them, and no model of minim has one of them. [Model.Correlate] and
// [Model.PropagateJointly] (with [Joint]), [Model.Sine] and [Model.Cosine]; the
// distributions [Arcsine], [InexactRectangular], [Trapezoidal] and [Triangular], and
// the quantile of [Gamma]; of conformance [Inspection.GlobalRisks], [Normal.Given],
// [Limits.Guarded] and [Limits.MeasurementCapability]. The quantile
// of Gamma, the correlations, what is joint and the global risks go through gonum, whose
// last digits may differ from machine to machine: no printed figure may rest on them.
//
// The functions panic for a mistake of the programmer, such as a node of another
// model or a probability of 95, and return an error for what data can do wrong.
// They never return NaN or infinity but where the documentation says so.
package uncertainty
