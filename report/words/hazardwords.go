package words

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/uncertainty/hazards"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

// reminders by hazard word: the usual cautions of the trade, as reminders. They
// never take the place of a safety data sheet. (Prudent Practices in the
// Laboratory and national guidance say as much; wording our own.)
var reminders = map[string]string{
	"flammable":   "no flame or spark, ventilate, keep the amount small",
	"oxidiser":    "keep apart from solvents, reducing agents and anything organic",
	"acid":        "pour the acid into the water, slowly, never the reverse",
	"alkali":      "add to water slowly and let it cool; protect the eyes",
	"corrosive":   "protect eyes and skin",
	"gas":         "close loosely or with a vent, never tightly",
	"dust":        "weigh without raising dust",
	"sensitiser":  "no dust, no skin contact",
	"toxic":       "gloves, and no more than is needed",
	"irritant":    "protect eyes and skin",
	"environment": "nothing down the drain",
}

// What stands in place of words that a file does not state: for the strength of a solution,
// and for a substance.
const (
	asUndiluted = "not stated, treat as undiluted"
	asUnknown   = "not stated, treat as unknown"
)

// substanceWords quotes the words that are stated for a substance undiluted.
func substanceWords(words []string, remind func(word string) string) string {
	return either(len(words) == 0, asUnknown, quotedWords(words, remind))
}

// solutionWords quotes the words that are stated for a solution of a strength. Where there
// is a doubt about the strength, it is to be treated as undiluted as well.
func solutionWords(h *route.Handled, doubt string, remind func(word string) string) string {
	switch {
	case len(h.Hazards.Solution) == 0:
		return asUndiluted
	case doubt != "":
		return quotedWords(h.Hazards.Solution, remind) + "; " + doubt + ", treat as undiluted as well"
	}
	return quotedWords(h.Hazards.Solution, remind)
}

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

// quotedWords are words of the user's. That no hazard is known is the user's statement, and
// said to be.
func quotedWords(words []string, remind func(word string) string) string {
	list := make([]string, len(words))
	for i, w := range words {
		list[i] = w + remind(w)
		if hazards.NoneKnown(w) {
			list[i] = "stated by the user: none known"
		}
	}
	return strings.Join(list, ", ")
}

// unreminded leaves words as they are.
func unreminded(string) string { return "" }

// reminding puts its reminder behind a word, where one is usual, the first time that it is
// said.
func reminding() func(word string) string {
	said := make(map[string]bool)
	return func(word string) string {
		var list []string
		for _, hazard := range slices.Sorted(maps.Keys(reminders)) {
			if !said[hazard] && hazards.Meant(word, hazard) {
				said[hazard] = true
				list = append(list, reminders[hazard])
			}
		}
		return when(len(list) > 0, " ("+strings.Join(list, "; ")+")")
	}
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
