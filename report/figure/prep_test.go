package figure

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
)

// An invented bench and invented recipes.
const bench = `
[[balance]]
name = "rough scale"
capacity = "200 g"
readability = "0.01 g"
repeatability = "0.01 g"
linearity = "0.02 g"

[[balance]]
name = "fine scale"
capacity = "200 g"
readability = "0.0001 g"
repeatability = "0.0001 g"
linearity = "0.0002 g"

[[pipette]]
name = "1 mL pipette"
kind = "graduated"
capacity = "1 mL"
class = "B"
standard = "ISO"
material = "borosilicate"

[[flask]]
name = "25 mL flask"
capacity = "25 mL"
class = "A"
standard = "ISO"
material = "borosilicate"
`

const (
	// direct says nothing, since 0.01 g on the rough scale may be none at all.
	direct   = `{ weigh = "0.01 g", on = "rough scale" }, { make-up-to = "25 mL", in = "25 mL flask" }`
	rough    = `{ weigh = "0.25 g", on = "rough scale" }, { make-up-to = "25 mL", in = "25 mL flask" }, { take = "1 mL", with = "1 mL pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`
	fine     = `{ weigh = "0.2500 g", on = "fine scale" }, { make-up-to = "25 mL", in = "25 mL flask" }, { take = "1 mL", with = "1 mL pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`
	straight = `{ weigh = "0.0100 g", on = "fine scale" }, { make-up-to = "25 mL", in = "25 mL flask" }`
	// cannot be done: the scale does not show 0.004 g.
	cannot = `{ weigh = "0.004 g", on = "rough scale" }, { make-up-to = "25 mL", in = "25 mL flask" }`
)

type way struct{ name, steps string }

var usual = []way{{"direct", direct}, {"fine, diluted", fine}, {"too little", cannot}, {"rough, diluted", rough}}

// recipe is the text of a prep; head holds target and tolerance.
func recipe(head string, ways ...way) string {
	text := "title = \"An invented recipe\"\nnote = \"invented for a test\"\nvolume = \"15 mL\"\n" + head + `
[solute]
name = "dye"
assay = { from = "99 %", to = "100 %" }
molar-mass = "100 g/mol"

[solvent]
name = "water"
`
	for _, w := range ways {
		text += fmt.Sprintf("\n[[route]]\nname = %q\nsteps = [%s]\n", w.name, w.steps)
	}
	return text
}

func compare(t *testing.T, prep string) *route.Comparison {
	t.Helper()
	kit, err := read.ParseKit("bench.toml", []byte(bench))
	require.NoError(t, err)
	p, err := read.ParsePrep("dye.toml", []byte(prep), kit)
	require.NoError(t, err)
	c, err := contest.Compare(context.Background(), p, "", uncertainty.Settings{Trials: 10_000, Seed: 1, Coverage: 0.95})
	require.NoError(t, err)
	return c
}

// many returns n ways with long names.
func many(n int) (ways []way) {
	for i := range n {
		name := fmt.Sprintf("route %d %s", i, strings.Repeat("by way of the old pipette ", i))
		ways = append(ways, way{strings.TrimSpace(name), usual[i%len(usual)].steps})
	}
	return ways
}

const within8 = "target = \"0.04 % w/v\"\ntolerance = \"8 % of target\""

// cases are recipes that a figure must stand.
var cases = map[string]string{
	"usual":         recipe(within8, usual...),
	"one route":     recipe(within8, usual[1]),
	"uninformative": recipe(within8, usual[0]),
	"fifteen":       recipe(within8, many(15)...),
	"no tolerance":  recipe(`target = "0.04 % w/v"`, usual...),
	"not above":     recipe("target = \"0.04 % w/v\"\nnot-above = \"0.044 % w/v\"", usual...),
	"not below":     recipe("target = \"0.04 % w/v\"\nnot-below = \"0.038 % w/v\"", usual...),
	"uneven":        recipe("target = \"0.04 % w/v\"\nnot-below = \"0.039 % w/v\"\nnot-above = \"0.05 % w/v\"", usual...),
	"at the target": recipe("target = \"0.04 % w/v\"\nnot-above = \"0.04 % w/v\"", usual...),
	"several":       recipe("target = \"0.04 % w/v\"\ntolerance = [\"5 % of target\", \"10 % of target\", \"2 % of target\"]", usual...),
	"all narrow":    recipe("target = \"0.04 % w/v\"\ntolerance = \"30 % of target\"", way{"a", fine}, way{"b", straight}),
	"all wide":      recipe("target = \"0.04 % w/v\"\ntolerance = \"0.1 % of target\"", usual...),
	"far off":       recipe("target = \"0.4 % w/v\"\ntolerance = \"8 % of target\"", usual...),
	"molar":         recipe("target = \"0.004 mol/L\"\ntolerance = \"8 % of target\"", usual...),
	"minute":        recipe("target = \"0.0000000004 mol/L\"\ntolerance = \"8 % of target\"", usual...),
	"large":         recipe("target = \"400 µg/mL\"\ntolerance = \"0.01 % of target\"", usual...),
}

// hostile puts words into a comparison that no file would let through.
func hostile(c *route.Comparison) *route.Comparison {
	c.Prep.Title = "<title>&amp; \u202e " + strings.Repeat("long ", 80)
	c.Prep.Note = "]]>\x00\x1b[31m <script>"
	c.Prep.Solute.Name = "dye\n\"<!--\""
	c.Results[0].Route.Name = "<b>&\"'\u202e\u200f\u05d0\n \u2603 \u207b\xff </text>"
	c.Results[1].Route.Name = strings.Repeat("W", 300)
	c.Results[2].Reason = note.Of("property-lacking", "", "<no> & "+strings.Repeat("never ", 60))
	c.Results[3].Route.Name = "\u200b"
	for i := range c.Results {
		for j := range c.Results[i].Analytic.Budget {
			l := &c.Results[i].Analytic.Budget[j]
			l.Code = uncertainty.Code("</text>\n& " + strings.Repeat("of the pipette ", 20))
			l.Owner = uncertainty.Owner{Name: fmt.Sprintf("step %d %s", j, strings.Repeat("W", 200))}
			l.Uses, l.Assumed = 2, true
		}
	}
	return c
}
