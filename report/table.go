package report

import (
	"fmt"
	"strings"

	"minim/uncertainty/route"
)

// table lists all routes in the order of the prep.
func table(b *strings.Builder, c *route.Comparison) {
	rows := [][]string{
		{"", "strength", "give or take", insideHead(c), "left over", "solute"},
		{"  route", c.Prep.Target.Unit.Name, "(" + percent(c.Settings.Coverage) + ")", insideUnit(c), "mL", "g"},
	}
	for i := range c.Results {
		rows = append(rows, tableRow(c, i))
	}
	b.WriteString("\n")
	for _, line := range grid(rows) {
		b.WriteString(line + "\n")
	}
}

func insideHead(c *route.Comparison) string {
	if len(c.Prep.Tolerances) == 0 {
		return "holds"
	}
	return "inside"
}

func insideUnit(c *route.Comparison) string {
	if len(c.Prep.Tolerances) == 0 {
		return "within"
	}
	return "in 100"
}

func tableRow(c *route.Comparison, i int) []string {
	r := &c.Results[i]
	name := "  " + shorten(r.Route.Name, 30)
	if i == c.Verdict.Use {
		name = "* " + shorten(r.Route.Name, 30)
	}
	switch {
	case !r.Possible:
		return []string{name, "not possible"}
	case !r.Informative:
		return []string{name, "says almost nothing about the amount"}
	}
	s := State(r)
	inside := percent(r.HoldsWithin)
	if len(r.Inside) > 0 {
		inside = InHundred(r.Chance(), c.Prep.LeastChance)
	}
	return []string{name, s.Value, s.spread(), inside,
		limit(roundSignificant(r.LeftOverML, 3)), limit(roundSignificant(r.SoluteGrams, 3))}
}

// shorten cuts a long name.
func shorten(s string, most int) string {
	if runes(s) <= most {
		return s
	}
	return string([]rune(s)[:most-1]) + "…"
}

// otherTolerances lists the chances for all tolerances but the first.
func otherTolerances(b *strings.Builder, c *route.Comparison) {
	for t := 1; t < len(c.Prep.Tolerances); t++ {
		var parts []string
		for i := range c.Results {
			if r := &c.Results[i]; r.Possible && r.Informative {
				parts = append(parts, fmt.Sprintf("%s %s", r.Route.Name, InHundred(r.Inside[t].Simulated, c.Prep.LeastChance)))
			}
		}
		hang(b, "  also:", fmt.Sprintf("%s, in 100: %s", tolerance(c.Prep.Tolerances[t]), strings.Join(parts, "; ")), 9)
	}
}

// others says of each other route why it is not the one to use.
func others(b *strings.Builder, c *route.Comparison) {
	if len(c.Results) < 2 {
		return
	}
	b.WriteString("\nWhy not the others\n")
	for i := range c.Results {
		if r := &c.Results[i]; i != c.Verdict.Use {
			hang(b, "  "+shorten(r.Route.Name, 30)+":", whyNot(c, r), 4+longestName(c))
		}
	}
}

func longestName(c *route.Comparison) int {
	longest := 0
	for i := range c.Results {
		longest = max(longest, min(30, runes(c.Results[i].Route.Name)))
	}
	return longest
}

func whyNot(c *route.Comparison, r *route.Result) string {
	used := &c.Results[c.Verdict.Use]
	spoilt := "; spoilt by " + spoilers(r)
	switch {
	case !r.Possible:
		return "not possible: " + r.Reason
	case !r.Informative:
		return r.Uninformative
	case !r.Enough(c.Prep.Volume):
		return fmt.Sprintf("makes only %s%s", volume(r.MadeML), spoilt)
	case len(r.Inside) == 0:
		return fmt.Sprintf("holds within %s%s", percent(r.HoldsWithin), spoilt)
	case r.Chance() < c.Prep.LeastChance:
		return fmt.Sprintf("%s in %s of 100, asked for are %s%s", insideWords(c.Prep.Tolerances[0]), InHundred(r.Chance(), c.Prep.LeastChance), Asked(c.Prep.LeastChance), spoilt)
	case r.LeftOverML > used.LeftOverML:
		return fmt.Sprintf("good enough, but leaves %s instead of %s%s", volume(r.LeftOverML), volume(used.LeftOverML), spoilt)
	default:
		return fmt.Sprintf("good enough, with %d measurements instead of %d%s", r.Operations, used.Operations, spoilt)
	}
}

// footing: what the figures rest on, cautions, and what to type next.
func footing(b *strings.Builder, c *route.Comparison) {
	b.WriteString("\n")
	for _, part := range []struct {
		label string
		list  []string
	}{
		{"Mind", c.Notes.Warnings},
		{"Assumed", c.Notes.Assumed},
		{"From memory", c.Notes.FromMemory},
		{"Not counted", c.Notes.NotCounted},
	} {
		if len(part.list) > 0 {
			hang(b, part.label+":", strings.Join(part.list, "; "), 13)
		}
	}
	hang(b, "Cautions:", strings.Join(Cautions(c.Prep), " "), 13)
}
