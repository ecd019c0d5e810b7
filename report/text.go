package report

import (
	"fmt"
	"strconv"
	"strings"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// Text is the first screen: what is wanted, which route to use, all routes,
// why the others are not used, what the figures rest on, cautions, and what to
// type next.
func Text(c *route.Comparison) string {
	b := new(strings.Builder)
	heading(b, c.Prep)
	use(b, c)
	table(b, c)
	otherTolerances(b, c)
	others(b, c)
	footing(b, c)
	return b.String()
}

func heading(b *strings.Builder, p *route.Prep) {
	if p.Title != "" {
		title := p.Title
		if p.Note != "" {
			title += " (" + p.Note + ")"
		}
		hang(b, "", title, 0)
	}
	text := Wanted(p)
	if len(p.Tolerances) > 0 {
		text += ", " + tolerance(p.Tolerances[0])
	}
	hang(b, "Wanted:", text, 8)
}

// use shows the route to use as numbered steps, and what it gives.
func use(b *strings.Builder, c *route.Comparison) {
	r := &c.Results[c.Verdict.Use]
	b.WriteString("\n")
	hang(b, verdictWord(c), r.Route.Name, runes(verdictWord(c))+2)
	for i, line := range Instructions(c.Prep, r.Route) {
		hang(b, right(strconv.Itoa(i+1), 4)+"  ", line, 6)
	}
	b.WriteString("\n")
	fact := func(label, text string) { hang(b, "  "+label, text, 14) }
	if !r.Informative {
		fact("Mind", r.Uninformative)
	}
	fact("Strength", fmt.Sprintf("%s (k = %.2f, about %s)", State(r).sentence(c.Prep.Target.Unit.Name), r.Analytic.CoverageFactor, percent(c.Settings.Coverage)))
	fact("Aim", aim(c, r))
	fact("Inside", chance(c, r))
	fact("Spoilt by", spoilers(r)+" of the variance")
	fact("Makes", fmt.Sprintf("%s; left over in all %s; takes %s of %s",
		volume(r.MadeML), volume(r.LeftOverML), grams(r.SoluteGrams), c.Prep.Solute.Name))
	fact("Checked", checked(r))
	if r.AssumedShare >= 0.005 {
		fact("Assumed", fmt.Sprintf("%s of its variance rests on assumed values", wholePercent(r.AssumedShare)))
	}
}

// verdictWord says how far the route can be recommended.
func verdictWord(c *route.Comparison) string {
	switch {
	case c.Verdict.Meets:
		return "USE"
	case !c.Results[c.Verdict.Use].Enough(c.Prep.Volume):
		return fmt.Sprintf("NEAREST (none makes %s)", equipment.Millilitres(c.Prep.Volume))
	case !c.Results[c.Verdict.Use].Informative:
		return "NEAREST (none says much about the amount)"
	case len(c.Prep.Tolerances) == 0:
		return "TIGHTEST (no tolerance given)"
	default:
		return fmt.Sprintf("NEAREST (none reaches %s in 100)", Asked(c.Prep.LeastChance))
	}
}

// aim compares what the steps are meant to give with the target.
func aim(c *route.Comparison, r *route.Result) string {
	off := r.Intended/c.Prep.Target.Value - 1
	text := "the steps aim at " + limit(roundSignificant(r.Intended, 3))
	switch {
	case off > 0.0005:
		return fmt.Sprintf("%s, %s above the target", text, percent(off))
	case off < -0.0005:
		return fmt.Sprintf("%s, %s below the target", text, percent(-off))
	default:
		return text + ", the target"
	}
}

func chance(c *route.Comparison, r *route.Result) string {
	if len(r.Inside) == 0 {
		return fmt.Sprintf("would hold within %s of the target in %s of 100 batches", percent(r.HoldsWithin), Asked(c.Settings.Coverage))
	}
	return fmt.Sprintf("predicted chance of being %s: %s in 100", insideWords(c.Prep.Tolerances[0]), InHundred(r.Chance(), c.Prep.LeastChance))
}

func checked(r *route.Result) string {
	text := fmt.Sprintf("by %s simulated batches (seed %d): ", Grouped(r.MonteCarlo.Trials), r.MonteCarlo.Seed)
	if r.CrossCheck.Cause == uncertainty.NoCause {
		return text + "agrees"
	}
	text += fmt.Sprintf("an end differs by %s of the give or take, because of %s", percent(r.CrossCheck.OfExpanded), cause(r))
	if r.Quoted.Simulated {
		text += "; the simulated interval is quoted"
	}
	return text
}

func cause(r *route.Result) string {
	if r.CrossCheck.Influence == "" {
		return string(r.CrossCheck.Cause)
	}
	return fmt.Sprintf("%s (%s)", r.CrossCheck.Cause, r.CrossCheck.Influence)
}

func volume(mL float64) string { return equipment.Millilitres(roundSignificant(mL, 3)) }

func grams(g float64) string { return equipment.Grams(roundSignificant(g, 3)) }

func roundSignificant(x float64, digits int) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64)
	if err != nil {
		return x
	}
	return rounded
}

// Grouped prints a count with spaces between thousands.
func Grouped(n int) string {
	s := strconv.Itoa(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + " " + s[i:]
	}
	return s
}
