package words

import (
	"fmt"
	"strings"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

// doubtOf says why the strength of what a result's route handles cannot be gone by; "" where
// it can.
func doubtOf(p *route.Prep, r *route.Result, h *route.Handled) string {
	switch {
	case h.Stock != nil:
		return h.Uninformative.String()
	case !h.Uninformative.None():
		return "its strength is not known"
	case h.Last && isOutside(p, r):
		return "its strength is outside what is wanted"
	}
	return ""
}

// saidOf reports whether a liquid has to be spoken of: water has only where words are stated
// for it.
func saidOf(c *route.Contained) bool { return len(c.Hazards) > 0 || !equipment.IsWater(c.Name) }

// straddled says on which side of strengths, from which words hold, a solution was taken to
// lie; "" where there is no doubt.
func straddled(h *route.Handled) string {
	texts := clause.Each(h.Hazards.Straddled, func(s strengths.Strength) string { return s.Text })
	return when(len(texts) > 0, fmt.Sprintf("the strength could be on either side of %s: the words are those of the stricter", quantity.Series(texts, "and")))
}

func capital(s string) string {
	if s == "" {
		return s
	}
	first := []rune(s)[0]
	return strings.ToUpper(string(first)) + s[len(string(first)):]
}
