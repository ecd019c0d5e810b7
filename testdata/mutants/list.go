package main

// mutant is a place in a file, which holds the old text once; the tests of its own package
// that run names must fail with the new one. Where a text has moved, look for the function.
type mutant struct{ file, function, old, new, run string }

var mutants = []mutant{
	{"uncertainty/route/bymass.go", "weighAliquot", "c.evaporate(i, c.current)", "", "Evaporation"},
	{"uncertainty/route/dilute.go", "evaporate", "l.hasFraction, l.evaporated = false, true", "l.evaporated = true", "Evaporation"},
	{"uncertainty/route/dilute.go", "evaporate", "Constant(1), -limit", "Constant(1), limit", "Evaporation"},
	{"uncertainty/route/standsopen.go", "evaporated", "c.lose(amount, -most,", "c.lose(amount, most,", "StandsOpen"},
	{"uncertainty/route/bymass.go", "weighUpTo", "c.leftOf(i, total, true)", "c.leftOf(i, total, false)", "StandsOpen"},
	{"uncertainty/route/bymass.go", "weighAliquot", "s.Lost/c.model.Intended(density)", "s.Lost", "Lost"},
	{"uncertainty/route/dilute.go", "becomeByMass", "c.leftOver += c.route.Steps[c.at].Lost / c.model.Intended(density)", "", "Lost"},
	{"uncertainty/route/startwith.go", "weighSolute", "c.soluteUsed += s.Amount + s.Lost", "c.soluteUsed += s.Amount", "Lost"},
	{"uncertainty/route/startwith.go", "packet", "k.Content.Value + s.Lost", "k.Content.Value", "Lost"},
	{"uncertainty/route/dilute.go", "dissolve", "c.leftOver += m.Intended(volume) * s.Lost / s.Amount", "", "Lost"},
	{"uncertainty/route/dilute.go", "makeUpTo", "c.leftOver += s.Lost", "", "Lost"},
	{"uncertainty/route/dilute.go", "draw", "(intended + lost) * c.model.Intended", "intended * c.model.Intended", "Lost|Loss|Spoilt"},
	{"uncertainty/route/dilute.go", "dissolve", "m.Add(volume, m.Multiply(c.mass, c.phi()))", "m.Subtract(volume, m.Multiply(c.mass, c.phi()))", ""},
	{"uncertainty/route/dilute.go", "carry", "m.Subtract(before, now)", "m.Subtract(now, before)", ""},
	{"uncertainty/route/buoyancy.go", "inAir", "(1 - 0.0012/8.0)", "(1 + 0.0012/8.0)", ""},
	{"uncertainty/route/stockdensity.go", "aged", "c.lose(x, -s.Loss", "c.lose(x, s.Loss", ""},
	{"uncertainty/route/bymass.go", "densities", "m.Subtract(m.Constant(1), m.Multiply(c.phiIn(", "m.Add(m.Constant(1), m.Multiply(c.phiIn(", ""},
	{"uncertainty/route/bymass.go", "weighUpTo", "c.model.Divide(amount, total), total", "c.model.Divide(amount, c.model.Add(total, total)), total", ""},
	{"uncertainty/plan/cost.go", "Cost", "min(p.Volume, r.MadeML) + r.LeftOverML", "r.MadeML + r.LeftOverML", "Cost"},
	{"uncertainty/secondorder.go", "sumTerms", "(a.kurtosis-1)/4", "(a.kurtosis-2)/4", "Kurtosis|SecondOrder"},
	{"uncertainty/secondorder.go", "sumTerms", "a.kurtosis/3", "a.kurtosis/2", "Kurtosis|SecondOrder"},
	{"uncertainty/axis.go", "axes", "= s.Skewness, s.Kurtosis", "= s.Skewness, 3", "Kurtosis|SecondOrder"},
	{"uncertainty/distribution/triangular.go", "summary", "Kurtosis: 2.4", "Kurtosis: 2.5", "Kurtosis|Distribution"},
	{"uncertainty/distribution/rectangular.go", "summary", "Kurtosis: 1.8", "Kurtosis: 1.9", "Kurtosis|Distribution"},
	{"report/words/benchneeds.go", "solventNeeded", "mL -= b.solutions[n-1].MadeML", "mL -= 0", "SolventNeeded"},
	{"report/words/benchneeds.go", "solventNeeded", "mL -= s.Amount / max", "mL += s.Amount / max", "SolventNeeded"},
	{"report/words/benchneeds.go", "solventNeeded", "mL += s.MadeML", "mL += s.MadeML / 2", "SolventNeeded"},
	{"report/words/benchorder.go", "enough", "1.2*need", "1.0*need", "Enough"},
	{"report/words/benchorder.go", "enough", "need = s.Measure.Capacity", "need = s.Amount", "Enough"},
}
