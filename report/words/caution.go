package words

import (
	"fmt"
	"math"
	"strconv"

	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/reminder"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// Cautions words what the prep states about hazards: of the solute and of the liquids
// undiluted, and of every solution that the route of a result handles, at its strength. The
// result is nil where there is none.
func Cautions(p *route.Prep, r *route.Result) []string { return cautions(p, r, nil, true) }

// CautionsInShort are those without the strengths of solutions; then is how a batch is to be corrected,
// nil for none.
func CautionsInShort(p *route.Prep, r *route.Result, then *rescue.Rescue) []string {
	return cautions(p, r, then, false)
}

// Cautions are those of a batch, where it is to be corrected with those of the way that is
// recommended.
func (b *Batch) Cautions() []string {
	return cautions(b.Prep, WithoutLadder(&b.AsMade), b.Rescue, true)
}

// WithoutLadder is a result where no rungs are made, nil for none: papers and batches, searches,
// purchases and corrections tell of none.
func WithoutLadder(r *route.Result) *route.Result {
	if r == nil {
		return nil
	}
	alone := *r
	alone.Ladder = nil
	return &alone
}

func cautions(p *route.Prep, r *route.Result, then *rescue.Rescue, whole bool) []string {
	remind := reminder.Once()
	list := []string{caution(p.Solute.Weighed()+", undiluted", reminder.Substance(p.Solute.Hazards, remind)+givenOff(p))}
	routes := p.Routes
	if r != nil {
		routes = append(routes[:len(routes):len(routes)], r.Route)
	}
	if then != nil {
		routes = append(routes[:len(routes):len(routes)], then.Results[then.Verdict.Use].Route)
	}
	for _, c := range p.Liquids(routes...) {
		if saidOf(&c) {
			list = append(list, caution(c.Name, reminder.Substance(c.Hazards, remind)))
		}
	}
	var made []madeOf
	if r != nil && r.Possible {
		made = solutions(p, r, 0)
	}
	if then != nil {
		made = append(made, solutions(then.Prep, WithoutLadder(&then.Results[then.Verdict.Use]), then.Before)...)
	}
	list = append(list, solutionCautions(made, whole, remind)...)
	return append(list,
		either(whole, "These are reminders. The safety data sheets, local rules and licensed disposal decide; nothing here says that the work is safe.", "Safety data sheets and local rules decide."))
}

// givenOff is what the solute gives off that is taken out by its assay, and so a solution.
func givenOff(p *route.Prep) string {
	h := p.HazardsAt(math.Inf(1), math.Inf(1))
	return when(p.Solute.Assay.Known, reminder.Vapour(h.Vapour))
}

// madeOf is a solution that is handled in a route of a prep.
type madeOf struct {
	prep *route.Prep
	by   *route.Result
	route.Handled
}

// solutions are those that a route handles after a step, from 1.
func solutions(p *route.Prep, r *route.Result, after int) (list []madeOf) {
	for _, h := range handled(p, r) {
		if !h.Undiluted && h.Step > after {
			list = append(list, madeOf{p, r, h})
		}
	}
	return list
}

// solutionCautions are those of solutions. Those of which the same is to be said stand together.
func solutionCautions(made []madeOf, whole bool, remind func(word string) string) (list []string) {
	alike, texts := make(map[string][]madeOf), []string(nil)
	for _, m := range made {
		text := m.text(reminder.None)
		if alike[text] == nil {
			texts = append(texts, text)
		}
		alike[text] = append(alike[text], m)
	}
	for _, text := range texts {
		same := alike[text]
		list = append(list, caution(solutionNames(same, whole), same[0].text(remind)))
	}
	return list
}

// text is what is to be said of a solution, with the doubt that there is.
func (m *madeOf) text(remind func(word string) string) string {
	side := straddled(&m.Handled)
	return reminder.Solution(&m.Handled, doubtOf(m.prep, m.by, &m.Handled), remind) + when(side != "", "; "+side)
}

// solutionNames names solutions, with their strengths or without: "bought acid (24 % w/v) and the
// solutions of steps 2 (1.00 % w/v) and 4 (0.10 % w/v)".
func solutionNames(list []madeOf, strengths bool) string {
	var names, steps, rungs []string
	for i := range list {
		switch h := &list[i]; {
		case h.Stock != nil:
			names = append(names, h.Name+when(strengths, fmt.Sprintf(" (%s %s)", quantity.Number(h.Stock.Strength.Value), h.Stock.Unit.Name)))
		case h.Rung != "":
			rungs = append(rungs, h.Rung)
		case !h.Uninformative.None():
			steps = append(steps, fmt.Sprintf("%d (strength not known)", h.Step))
		default:
			steps = append(steps, strconv.Itoa(h.Step)+when(strengths, fmt.Sprintf(" (%s %s)", rounded(&h.Analytic, h.Quoted).Value, h.prep.Target.Unit.Name)))
		}
	}
	if len(steps) > 0 {
		names = append(names, plural(steps, "the solution of step ", "the solutions of steps ")+quantity.Series(steps, "and"))
	}
	if len(rungs) > 0 {
		names = append(names, plural(rungs, "the rung ", "the rungs ")+quantity.Series(rungs, "and"))
	}
	return quantity.Series(names, "and")
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

// Stops are sentences about what may not meet of all that a prep names; none where nothing
// is known, which says nothing.
func Stops(p *route.Prep) []string { return reminder.Stops(p.Clashes(nil)) }

// stopBars stand above a page.
func stopBars(p *route.Prep) (bars []page.Block) {
	for _, text := range Stops(p) {
		bars = append(bars, bar(text), page.Gap{})
	}
	return bars
}

// NotPossible says in a word that a route cannot be done, or must not.
func NotPossible(r *route.Result) string {
	return either(r.MayNotBeUsed(), "STOP: not to be used", "not possible")
}
