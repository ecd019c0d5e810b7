package picture

import (
	"fmt"
	"math"
	"unicode"
	"unicode/utf8"

	"minim/equipment/quantity"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// Finding is what a comparison comes to, in a sentence: "Two dilutions: 99.7 in 100 inside,
// 51 mL left over; weighed directly: 5". The other is the route with fewest measurements.
func Finding(c *route.Comparison) string {
	if c.Verdict.Use < 0 {
		return "No route can be done"
	}
	r := &c.Results[c.Verdict.Use]
	text := Found(c.Prep, r)
	if o := simplest(c); o != nil {
		text += "; " + o.Route.Name + ": " + clause.Either(!o.Informative, "could be nothing at all", shortChance(c.Prep, o))
	}
	return text
}

// Found is what one route comes to: "Two dilutions: 99.7 in 100 inside, 51 mL left over".
func Found(p *route.Prep, r *route.Result) string {
	return capital(r.Route.Name) + ": " + outcome(p, r)
}

// outcome is "99.7 in 100 inside, 51 mL left over"; without a tolerance "95 in 100 within 5 % of
// target, 51 mL left over".
func outcome(p *route.Prep, r *route.Result) string {
	if !r.Informative {
		return "could be nothing at all, " + leavings(r, p.Volume)
	}
	if len(r.Inside) > 0 && r.Chance() < p.LeastChance {
		return "only " + chanceOf(p, r) + " (" + hundredth(p.LeastChance) + " asked for), " + leavings(r, p.Volume)
	}
	return chanceOf(p, r) + ", " + leavings(r, p.Volume)
}

// chanceOf says how many of a hundred are inside, or within what.
func chanceOf(p *route.Prep, r *route.Result) string {
	if len(r.Inside) == 0 {
		return hundredth(r.MonteCarlo.CoverageProbability) + " in 100 within " + quantity.Percent(r.HoldsWithin) + " of target"
	}
	return words.Shown(p, r).Inside + " in 100 " + insideWords(p.Tolerances[0])
}

// insideWords is "inside", or a limit that stands alone: "not above 0.044 % w/v".
func insideWords(t route.Tolerance) string {
	oneSided := math.IsInf(t.Limits.Upper-t.Limits.Lower, 0)
	return clause.Either(t.Stated && oneSided, t.Text, Labels.InShort)
}

// shortChance is the same of another route, beside one of which all is said.
func shortChance(p *route.Prep, r *route.Result) string {
	f := words.Shown(p, r)
	return clause.Either(f.Inside == "", "within "+f.HoldsWithin, f.Inside)
}

// hundredth is a probability in a hundred, as it was asked for.
func hundredth(p float64) string { return quantity.Number(100 * p) }

// simplest is the route with fewest measurements beside the one to use, of several the one with
// the best chance; nil where there is none that can be done.
func simplest(c *route.Comparison) (least *route.Result) {
	for i := range c.Results {
		r := &c.Results[i]
		if i == c.Verdict.Use || !r.Possible {
			continue
		}
		if least == nil || r.Operations < least.Operations || r.Operations == least.Operations && r.Chance() > least.Chance() {
			least = r
		}
	}
	return least
}

// capital begins a sentence.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

// Stated is a strength with what it may be off by, in its unit and in per cent:
// "0.0598 ± 0.0028 % w/v (± 4.7 %)"; or the ends of the interval that is quoted.
func Stated(p *route.Prep, r *route.Result) string {
	f, unit := words.Shown(p, r), p.Target.Unit.Name
	if !r.Informative {
		return "could be nothing at all"
	}
	if f.GiveOrTake == "" {
		return fmt.Sprintf("%s %s, %s to %s, that is ± %s", f.Value, unit, f.Lower, f.Upper, f.Relative)
	}
	return fmt.Sprintf("(%s ± %s) %s, that is ± %s", f.Value, f.GiveOrTake, unit, f.Relative)
}
