package words

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty/route"
)

// unnamed reports whether the strength counts a substance that the prep does not name: it
// states a form factor, and one name for what is weighed and what is meant.
func unnamed(p *route.Prep) bool { return p.Solute.Converted() && p.Solute.WeighedAs == "" }

// Meant names what the strength counts, so that it never passes for what is weighed.
func Meant(p *route.Prep) string {
	if !unnamed(p) {
		return soluteNamed(p)
	}
	return fmt.Sprintf("the substance of which 1 %s of %s holds %s %[1]s", dose(p), p.Solute.Name, quantity.Decimal(p.Solute.FormFactor, 4))
}

// soluteNamed is the solute with what its strengths count of it where labels count either and the
// prep says which: "formaldehyde (counted as formalin)".
func soluteNamed(p *route.Prep) string {
	return p.Solute.Name + when(p.Solute.As != "", fmt.Sprintf(" (counted as %s)", p.Solute.As))
}

// dose is the unit in which what is weighed or measured brings in solute.
func dose(p *route.Prep) string { return either(p.CountsMass(), "g", "mL") }

// countedAs is a clause to put behind a strength where it does not count what is weighed;
// "" where it does.
func countedAs(p *route.Prep) string {
	switch s := &p.Solute; {
	case unnamed(p):
		return "counted as " + Meant(p)
	case s.WeighedAs != "" && s.WeighedAs != s.Name:
		return "weighed as " + s.WeighedAs
	}
	return ""
}

// solution is what a bottle holds, without its strength: "dye in water".
func solution(p *route.Prep) string { return soluteNamed(p) + " in " + p.Solvent.Name }

// labelled is what is to be written on a bottle before its strength.
func labelled(p *route.Prep) string {
	return solution(p) + when(unnamed(p), fmt.Sprintf(" (strength %s)", countedAs(p)))
}

// bringsIn reports whether a route weighs solute, or measures it as a liquid.
func bringsIn(r *route.Route) bool {
	return slices.ContainsFunc(r.Steps, func(s route.Step) bool {
		return s.Verb.Traits().BringsSolute
	})
}

// countedFacts say by how much an assay and a form factor turn what is weighed into what
// the strength counts, if they do.
func countedFacts(p *route.Prep, r *route.Result) []fact {
	content, s := p.SoluteContent(), &p.Solute
	if !bringsIn(r.Route) || content == 1 && !s.Converted() {
		return nil
	}
	name := Meant(p)
	switch {
	case unnamed(p):
		name = "the substance meant"
	case s.Name == s.Weighed():
		name = "pure " + name
	}
	text := fmt.Sprintf("1 %s of %s as %s %[1]s of %[4]s (%s)", dose(p), s.Weighed(), quantity.Decimal(content, 4), name, strings.Join(conversions(p), ", "))
	return []fact{{"Counted", text + when(unnamed(p), "; to name it, write its name as name, and what is weighed as weighed-as")}}
}

// conversions are what turns what is weighed into what the strength counts.
func conversions(p *route.Prep) (list clauses) {
	s := &p.Solute
	list.Put("", assayWords(p))
	list.Add(s.Converted(), "form factor %s", quantity.Decimal(s.FormFactor, 4))
	if s.WeighedMolarMass.Known {
		list[len(list)-1] += fmt.Sprintf(" = %s/%s", quantity.Number(s.MolarMass.Value), quantity.Number(s.WeighedMolarMass.Value))
	}
	return list
}

// soluteUsed is what a route takes of the solute, with its unit: g, or mmol, mL or U where
// the prep does not say what turns its strengths into grams.
func soluteUsed(p *route.Prep, r *route.Result) (amount float64, unit string) {
	switch unit = p.SoluteUnit(); unit {
	case "g":
		return r.SoluteGrams, unit
	case "mol":
		return 1000 * r.SoluteUsed, "mmol"
	}
	return r.SoluteUsed, unit
}

// soluteTaken words it with the name of what is taken.
func soluteTaken(p *route.Prep, r *route.Result) string {
	amount, unit := soluteUsed(p, r)
	name := either(bringsIn(r.Route), p.Solute.Weighed(), soluteNamed(p))
	return fmt.Sprintf("%s %s of %s", quantity.Decimal(amount, 3), unit, name)
}
