// Package beside has what belongs right beside a strength, since the result may hang on it.
package beside

import (
	"slices"
	"strings"

	"minim/report/page"
	"minim/report/words/clause"
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
	{"Not pure", []string{"only-dissolved"}, ""},
	{"Runs short", []string{"takes-nearly-all"}, ""},
	{"Dissolves", []string{"nearly-saturated"}, ""},
	{"As pure", []string{"liquid-as-pure"}, ""},
	{"In doubt", []string{"own-few-far", "check-few-far"}, ""},
}

// Facts are said below the strength of a result.
func Facts(r *route.Result) (list []page.Fact) {
	notes := slices.Concat(r.Notes.Warnings, r.Notes.Assumed, r.Notes.NotCounted)
	for _, b := range besides {
		if said := note.WithCodes(notes, b.codes); len(said) > 0 {
			list = append(list, page.Fact{Label: b.label, Text: strings.Join(append(note.Joined(said), slices.DeleteFunc([]string{b.help}, func(s string) bool { return s == "" })...), "; ")})
		}
	}
	for _, f := range []page.Fact{{Label: "Too wide", Text: tooWide(r)}, {Label: "Evaporation", Text: evaporates(r)}} {
		if f.Text != "" {
			list = append(list, f)
		}
	}
	return list
}

// tooWide says that an interval reaches where no strength is; "" where it does not.
func tooWide(r *route.Result) string {
	return clause.When(r.Quoted.Lower < 0, "the give or take reaches below nothing, where no strength is: so little can hardly be measured like this")
}

// proportional are the codes of what is not counted and would be off by as much as the strength.
var proportional = []string{"uncertainty-of-strength", "uncertainty-of-assay", "uncertainty-of-content", "uncertainty-of-density", "impurity"}

// LeftOut is what is not counted of what the strength is proportional to.
func LeftOut(r *route.Result) []string {
	return note.Joined(note.WithCodes(r.Notes.NotCounted, proportional))
}
