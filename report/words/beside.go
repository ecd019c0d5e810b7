package words

import (
	"slices"
	"strings"

	"minim/report/page"
	"minim/report/words/note"
	"minim/uncertainty/route"
)

// besides are notes that a reader must not miss, since the result may hang on them: they are
// said right below the strength, behind a label, with what would help, as well as in their list.
var besides = []struct {
	label string
	codes []string
	help  string
}{
	{"Pistons", []string{"piston-off", "piston-unknown"},
		"weigh what it delivers of that liquid and state it (readings, with liquid), or displace the liquid directly"},
	{"Mixing", []string{"shrinks-diluted", "grows-diluted", "shrinks-unknown"}, "made up to a mark it would not count"},
	{"Not pure", []string{onlyDissolved}, ""},
	{"Runs short", []string{"takes-nearly-all"}, ""},
	{"Dissolves", []string{"nearly-saturated"}, ""},
	{"In doubt", []string{"own-few-far", "check-few-far"}, ""},
}

// besideFacts are said below the strength of a result.
func besideFacts(r *route.Result) (list []fact) {
	notes := slices.Concat(r.Notes.Warnings, r.Notes.Assumed, r.Notes.NotCounted)
	for _, b := range besides {
		if said := note.WithCodes(notes, b.codes); len(said) > 0 {
			list = append(list, fact{b.label, strings.Join(append(note.Joined(said), slices.DeleteFunc([]string{b.help}, func(s string) bool { return s == "" })...), "; ")})
		}
	}
	return append(list, said(fact{"Evaporation", evaporates(r)})...)
}

// besideResult says on paper what belongs beside the result.
func besideResult(r *route.Result) (list []page.Block) {
	for _, f := range besideFacts(r) {
		list = append(list, prose(f.Label+": "+f.Text+"."))
	}
	if text := restsOn(r, "expanded uncertainty"); text != "" {
		list = append(list, prose(capital(text)+"."))
	}
	if left := leftOut(r); len(left) > 0 {
		list = append(list, prose("Not counted, however large it may be: "+strings.Join(left, "; ")+"."))
	}
	return list
}

// proportional are the codes of what is not counted and would be off by as much as the strength.
var proportional = []string{"uncertainty-of-strength", "uncertainty-of-assay", "uncertainty-of-content", "uncertainty-of-density", "impurity"}

// leftOut is what is not counted of what the strength is proportional to.
func leftOut(r *route.Result) []string {
	return note.Joined(note.WithCodes(r.Notes.NotCounted, proportional))
}
