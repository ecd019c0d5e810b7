package report

import (
	"fmt"

	"minim/uncertainty/route"
)

// Cautions words what the prep states about hazards: of the solute and of the liquids
// undiluted, and of every solution that the route of a result handles, at its strength. The
// result is nil where there is none.
func Cautions(p *route.Prep, r *route.Result) []string {
	remind := reminding()
	list := []string{caution(p.Solute.Weighed()+", undiluted", substanceWords(p.Solute.Hazards, remind))}
	routes := p.Routes
	if r != nil {
		routes = append(routes[:len(routes):len(routes)], r.Route)
	}
	for _, c := range p.Liquids(routes...) {
		if saidOf(&c) {
			list = append(list, caution(c.Name, substanceWords(c.Hazards, remind)))
		}
	}
	if r != nil && r.Possible {
		list = append(list, solutionCautions(p, r, remind)...)
	}
	return append(list,
		"These are reminders. The safety data sheets, local rules and licensed disposal decide; nothing here says that the work is safe.")
}

// solutionCautions are those of the solutions of a route. Those of which the same is to be
// said stand together.
func solutionCautions(p *route.Prep, r *route.Result, remind func(word string) string) (list []string) {
	names, firsts := make(map[string][]string), []route.Handled(nil)
	text := func(h *route.Handled, remind func(word string) string) string {
		text := solutionWords(h, doubtOf(p, r, h), remind)
		if s := straddled(h); s != "" {
			text += "; " + s
		}
		return text
	}
	for _, h := range handled(p, r) {
		if h.Undiluted {
			continue
		}
		same := text(&h, unreminded)
		if names[same] == nil {
			firsts = append(firsts, h)
		}
		names[same] = append(names[same], solutionName(p, &h))
	}
	for i := range firsts {
		list = append(list, caution(series(names[text(&firsts[i], unreminded)], "and"), text(&firsts[i], remind)))
	}
	return list
}

// solutionName names a solution with its strength: "the stock (24 % w/v)", "the solution of
// step 2 (1.00 % w/v)".
func solutionName(p *route.Prep, h *route.Handled) string {
	unit := p.Target.Unit.Name
	switch {
	case h.Stock != nil:
		return fmt.Sprintf("%s (%s %s)", h.Name, limit(h.Stock.Strength.Value), h.Stock.Unit.Name)
	case h.Uninformative != "":
		return fmt.Sprintf("the solution of step %d (strength not known)", h.Step)
	}
	return fmt.Sprintf("the solution of step %d (%s %s)", h.Step, rounded(&h.Analytic, h.Quoted).Value, unit)
}

func caution(name, words string) string { return fmt.Sprintf("%s: %s.", capital(name), words) }

// handled is what the route of a possible result handles.
func handled(p *route.Prep, r *route.Result) []route.Handled {
	list, err := p.Handled(r, r.Analytic.CoverageProbability)
	if err != nil {
		panic("report: a result that is possible: " + err.Error())
	}
	return list
}
