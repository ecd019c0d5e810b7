package report

import (
	"fmt"
	"slices"
	"strings"

	"minim/uncertainty/route"
)

// reminders by hazard word: the usual cautions of the trade, as reminders. They
// never take the place of a safety data sheet. (Prudent Practices in the
// Laboratory and national guidance say as much; wording our own.)
var reminders = map[string]string{
	"flammable":                 "no flame or spark, ventilate, keep the amount small",
	"oxidiser":                  "keep apart from solvents, reducing agents and anything organic",
	"acid":                      "pour the acid into the water, slowly, never the reverse",
	"alkali":                    "add to water slowly and let it cool; protect the eyes",
	"corrosive":                 "protect eyes and skin",
	"gives off gas":             "close loosely or with a vent, never tightly",
	"dust":                      "weigh without raising dust",
	"sensitiser":                "no dust, no skin contact",
	"toxic":                     "gloves, and no more than is needed",
	"irritant":                  "protect eyes and skin",
	"environmentally hazardous": "nothing down the drain",
}

// Cautions words what the prep states about hazards.
func Cautions(p *route.Prep) []string {
	list := []string{caution(p.Solute.Weighed(), p.Solute.Hazards), caution(p.Solvent.Name, p.Solvent.Hazards)}
	for _, name := range otherSolvents(p, p.Routes...) {
		list = append(list, caution(name, nil))
	}
	return append(list,
		"These are reminders. The safety data sheets, local rules and licensed disposal decide; nothing here says that the work is safe.")
}

// otherSolvents are those of stocks that routes use, each once, beside that of the prep.
func otherSolvents(p *route.Prep, routes ...*route.Route) (names []string) {
	for _, r := range routes {
		for _, s := range r.Steps {
			if s.Stock == nil || s.Stock.Solvent == "" || s.Stock.Solvent == p.Solvent.Name || slices.Contains(names, s.Stock.Solvent) {
				continue
			}
			names = append(names, s.Stock.Solvent)
		}
	}
	return names
}

func caution(name string, hazards []string) string {
	if name == "water" && len(hazards) == 0 {
		return "Water: no hazard of its own."
	}
	if len(hazards) == 0 {
		return fmt.Sprintf("%s: hazards not stated, so treat them as unknown.", capital(name))
	}
	words := make([]string, len(hazards))
	for i, h := range hazards {
		words[i] = h
		if r, ok := reminders[strings.ToLower(h)]; ok {
			words[i] += " (" + r + ")"
		}
	}
	return fmt.Sprintf("%s: %s.", capital(name), strings.Join(words, ", "))
}

func capital(s string) string {
	if s == "" {
		return s
	}
	first := []rune(s)[0]
	return strings.ToUpper(string(first)) + s[len(string(first)):]
}
