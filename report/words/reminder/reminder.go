// Package reminder quotes hazard words as they are stated, with the usual cautions behind them.
package reminder

import (
	"maps"
	"slices"
	"strings"

	"minim/report/words/clause"
	"minim/uncertainty/hazards"
	"minim/uncertainty/route"
)

// reminders by hazard word: the usual cautions of the trade, as reminders. They
// never take the place of a safety data sheet. (Prudent Practices in the
// Laboratory and national guidance say as much; wording our own.)
var reminders = map[string]string{
	"flammable":   "no flame or spark, ventilate, keep the amount small",
	"oxidiser":    "keep apart from solvents, reducing agents and anything organic",
	"acid":        "the acid slowly into the solvent, never water into the acid",
	"alkali":      "into the solvent slowly, and let it cool; protect the eyes",
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
	AsUndiluted = "not stated, treat as undiluted"
	AsUnknown   = "not stated, treat as unknown"
)

// Substance quotes the words that are stated for a substance undiluted.
func Substance(words []string, remind func(word string) string) string {
	return clause.Either(len(words) == 0, AsUnknown, Quoted(words, remind))
}

// Solution quotes the words that are stated for a solution of a strength. Where there
// is a doubt about the strength, it is to be treated as undiluted as well.
func Solution(h *route.Handled, doubt string, remind func(word string) string) string {
	text := Quoted(h.Hazards.Solution, remind)
	switch {
	case len(h.Hazards.Solution) == 0:
		text = AsUndiluted
	case doubt != "":
		text += "; " + doubt + ", treat as undiluted as well"
	}
	return text + Vapour(h.Hazards.Vapour)
}

// Quoted are words of the user's. That no hazard is known is the user's statement, and
// said to be.
func Quoted(words []string, remind func(word string) string) string {
	list := make([]string, len(words))
	for i, w := range words {
		list[i] = w + remind(w)
		if hazards.NoneKnown(w) {
			list[i] = "stated by the user: none known"
		}
	}
	return strings.Join(list, ", ")
}

// None leaves words as they are.
func None(string) string { return "" }

// Once puts its reminder behind a word, where one is usual, the first time that it is
// said.
func Once() func(word string) string {
	said := make(map[string]bool)
	return func(word string) string {
		var list []string
		for _, hazard := range slices.Sorted(maps.Keys(reminders)) {
			if !said[hazard] && hazards.Meant(word, hazard) {
				said[hazard] = true
				list = append(list, reminders[hazard])
			}
		}
		return clause.When(len(list) > 0, " ("+strings.Join(list, "; ")+")")
	}
}
