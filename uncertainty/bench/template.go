package bench

import (
	_ "embed"
	"slices"
	"strings"
	"text/template"

	"minim/equipment/benchfile"
	"minim/uncertainty/route"
)

//go:embed template.txt
var templateText string

var recordTemplate = template.Must(template.New("record").Parse(templateText))

// blankStep is a step in a record to be filled in: its entry, the key of its reading, "" where
// it reads nothing, and what is planned.
type blankStep struct {
	Number, Step int
	Key, Planned string
}

// Template is a record of a route to be filled in: an entry for each step, with a blank
// for its reading and beside it what is planned.
func Template(p *route.Prep, r *route.Route) string {
	first, steps := blankStep{Number: 2, Key: "take"}, make([]blankStep, len(r.Steps))
	for i := range steps {
		s := &r.Steps[i]
		steps[i] = blankStep{i + 2, i + 1, "", strings.Join(Written(s), ", ")}
		if s.Measure != nil || s.Balance != nil {
			steps[i].Key = s.Verb.Traits().Key
		}
	}
	if i := slices.IndexFunc(steps, func(s blankStep) bool { return s.Key != "" }); i >= 0 {
		first = steps[i]
	}
	var b strings.Builder
	err := recordTemplate.Execute(&b, struct {
		blankStep           // the first that reads something
		Solute, Route, Plan string
		Bench               route.Bench
		Steps               []blankStep
	}{first, strings.Join(strings.Fields(p.Solute.Name), " "), benchfile.Quote(r.Name), digestedPlan(p, r), p.Bench, steps})
	if err != nil {
		panic("bench: the template of a record: " + err.Error())
	}
	return b.String()
}
