package data

import (
	"minim/equipment/quantity"
	"minim/report/words"
	"minim/report/words/equation"
	"minim/report/words/influence"
	"minim/uncertainty/route"
)

// setModel has the model of a route in symbols, the figures in it that are taken as exactly known,
// and its inputs.
func setModel(out *object, p *route.Prep, r *route.Result) {
	e := words.Written(p, r, quantity.Exact)
	out.set("equations", each(e.Lines, equationOf))
	out.set("constants", each(e.Constants, constantOf))
	sets := words.Sets(r.Analytic.Budget)
	budget := make([]object, len(r.Analytic.Budget))
	for i := range budget {
		line := &r.Analytic.Budget[i]
		budget[i] = contribution(line, e.Symbol(&line.Influence), p.Target.Unit.Name, sets[i])
	}
	out.set("budget", budget)
}

// equationOf is a quantity, and what it is worked out from.
func equationOf(l *equation.Line) object {
	return object{{"symbol", l.Symbol}, {"expression", l.Expression}, {"quantity", words.Named(l.Of)}, {"value", l.Value}, {"unit", l.Of.Unit}}
}

// constantOf is a figure that is taken as exactly known.
func constantOf(c *equation.Constant) object {
	return object{
		{"symbol", c.Symbol}, {"quantity", words.Named(c.Of)}, {"value", c.Value}, {"unit", c.Of.Unit}, {"source", influence.Ground(c.Of)},
	}
}
