package picture

import (
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"minim/equipment/quantity"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/uncertainty/route"
)

// Title is what a figure comes to, in a sentence, with names as short as they must be.
type Title func(name func(string) string) string

// String is the title with names as they are.
func (t Title) String() string { return t(func(name string) string { return name }) }

// Finding is what a comparison comes to: "Two dilutions: 99.7 in 100 inside, 51 mL left over;
// weighed directly: 5". The other is the route with fewest measurements.
func Finding(c *route.Comparison) Title {
	use := &c.Results[c.Verdict.Use]
	return func(name func(string) string) string {
		return found(c.Prep, use, name) + beside(c.Prep, simplest(c), name)
	}
}

// Found is what one route comes to: "Two dilutions: 99.7 in 100 inside, 51 mL left over".
func Found(p *route.Prep, r *route.Result) Title {
	return func(name func(string) string) string { return found(p, r, name) }
}

// supposedly is a title on a kit that may be changed, of a figure that has no other place to say so.
func supposedly(p *route.Prep, t Title) Title {
	return func(name func(string) string) string { return supposed(p) + t(name) }
}

// FoundAll is what the one to use comes to, and then all others in their order.
func FoundAll(c *route.Comparison) Title {
	use := &c.Results[c.Verdict.Use]
	return func(name func(string) string) string {
		text := found(c.Prep, use, name)
		for i := range c.Results {
			if r := &c.Results[i]; r != use && r.Possible {
				text += beside(c.Prep, r, name)
			}
		}
		return text
	}
}

func found(p *route.Prep, r *route.Result, name func(string) string) string {
	return capital(name(r.Route.Name)) + ": " + outcome(p, r)
}

// beside is what another route comes to, beside one of which all is said; "" of none.
func beside(p *route.Prep, r *route.Result, name func(string) string) string {
	if r == nil {
		return ""
	}
	return "; " + name(r.Route.Name) + ": " + clause.Either(r.Informative, shortChance(p, r), "could be nothing at all")
}

// outcome is "99.7 in 100 inside, 51 mL left over"; without a tolerance "95 in 100 within 5 % of
// target, 51 mL left over".
func outcome(p *route.Prep, r *route.Result) string {
	left := ", " + leavings(r, p.Volume)
	switch {
	case !r.Informative:
		return "could be nothing at all" + left
	case len(r.Inside) > 0 && r.Chance() < p.LeastChance:
		few := chanceOf(p, r)
		return clause.When(!strings.HasPrefix(few, "under"), "only ") + few + " (" + hundredth(p.LeastChance) + " asked for)" + left
	}
	return chanceOf(p, r) + left
}

// chanceOf says how many of a hundred are inside, or within what.
func chanceOf(p *route.Prep, r *route.Result) string {
	if len(r.Inside) == 0 || len(p.Tolerances) == 0 {
		return hundredth(r.MonteCarlo.CoverageProbability) + " in 100 within " + quantity.Percent(r.HoldsWithin) + " of target"
	}
	return words.Shown(p, r).Inside + " in 100 " + insideWords(p.Tolerances[0])
}

// insideWords is "inside", or a limit that stands alone: "not above 0.044 % w/v".
func insideWords(t route.Tolerance) string {
	oneSided := math.IsInf(t.Limits.Upper-t.Limits.Lower, 0)
	return clause.Either(t.Stated && oneSided, t.Text, Labels.InShort)
}

// shortChance is the chance of another route, beside one of which all is said.
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

// Spoilt is what spoils a route most: "Two dilutions: 25 mL cylinder 46 % of the variance, 0.01 g
// scale 21 %".
func Spoilt(r *route.Result) Title {
	return func(name func(string) string) string {
		list := Portions(r)
		if len(list) == 0 {
			return capital(name(r.Route.Name)) + ": spoilt by " + Labels.None
		}
		text := capital(name(r.Route.Name)) + ": spoilt most by " + name(list[0].Name) + " (" + list[0].Share + " of the variance)"
		if len(list) > 1 {
			text += ", then " + name(list[1].Name) + " (" + list[1].Share + ")"
		}
		return text
	}
}

// capital begins a sentence.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

// Stated is a strength with what it may be off by, in its unit and in per cent:
// "(0.0598 ± 0.0028) % w/v, that is ± 4.7 %"; or the ends of the interval that is quoted.
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
