package answer

import (
	"context"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/report/words/note"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
)

// comparedWith compares the demo on its kit with changes.
func comparedWith(t *testing.T, changes ...string) *route.Comparison {
	t.Helper()
	var list []benchfile.Change
	for _, text := range changes {
		c, err := benchfile.ParseChange("--change", text)
		require.NoError(t, err)
		list = append(list, c)
	}
	p, err := read.LoadPrep(context.Background(), demoPrep, "")
	require.NoError(t, err)
	p, err = read.Changed(p, list)
	require.NoError(t, err)
	c, err := contest.Compare(context.Background(), p, "", uncertainty.Settings{Trials: 20_000, Seed: 7, Coverage: 0.95})
	require.NoError(t, err)
	return c
}

// section is the part of the first screen that says what a change does.
func section(t *testing.T, text string) string {
	t.Helper()
	_, rest, ok := strings.Cut(text, "\nWhat the change")
	require.True(t, ok, text)
	part, _, ok := strings.Cut(rest, "\n\n")
	require.True(t, ok)
	return part
}

// The demo on scales that have lost or gained a digit (constructed): one route is
// possible no more, one begins to be, and the rest gives the same.
func TestChangedDemo(t *testing.T) {
	skipIfSlow(t)
	before := compared(t, demoPrep)
	c := comparedWith(t, "0.001 g scale: readability = 0.01 g", "0.1 g scale:readability=0.001 g")
	text := comparePage(c, before).Text(80)
	assert.True(t, strings.HasPrefix(text, "Changed: 0.001 g scale: readability = 0.01 g; 0.1 g scale: readability = 0.001 g\n"+
		"         (../../cmd/minim/demo/bench.toml stays as it is); of the 0.001 g"), text)
	assert.Contains(t, strings.Join(strings.Fields(text), " "), "of the 0.001 g scale, repeatability and linearity stay as stated; of the 0.1 g scale, repeatability and linearity stay as stated")
	for line := range strings.Lines(text) {
		assert.LessOrEqual(t, utf8.RuneCountInString(strings.TrimRight(line, "\n")), 80, line)
		assert.Equal(t, strings.TrimRight(line, " \n"), strings.TrimRight(line, "\n"), "spaces at the end of a line")
	}
	part := section(t, text)
	assert.Contains(t, part, "  0.1 g scale, direct    before  not possible\n                         now     says almost nothing about the amount\n")
	assert.Contains(t, part, "\n                         now     not possible\n")
	assert.Contains(t, part, "\n  Verdict    as before: USE two dilutions\n  No change  0.01 g scale, direct; 0.25 g, one dilution; ")
}

// figures gives a route the figures that the section shows.
func figures(r *route.Result, value, u, chance float64) {
	r.Possible, r.Informative = true, true
	r.Analytic.Value, r.Analytic.ExpandedUncertainty = value, u
	r.Quoted.Simulated = false
	r.Inside = []route.Chance{{Simulated: chance}}
}

// Two comparisons of two routes (constructed): 90.04 against 95.56 in 100 is a
// difference of 5.52, so that another route reaches what is asked for.
func constructed(t *testing.T) (c, before *route.Comparison) {
	c, before = comparedWith(t, "25 mL flask: count = 2"), new(route.Comparison)
	*before = *c
	before.Results = slices.Clone(c.Results)
	for _, of := range []*route.Comparison{c, before} {
		of.Results = of.Results[4:6]
		figures(&of.Results[0], 0.0594, 0.0015, 0.9004)
		figures(&of.Results[1], 0.0601, 0.0021, 0.981)
		of.Verdict = route.Verdict{Use: 1, Meets: true}
	}
	figures(&c.Results[0], 0.0596, 0.0011, 0.9556)
	c.Verdict.Use = 0
	return c, before
}

func TestEffectOfAChange(t *testing.T) {
	c, before := constructed(t)
	assert.Equal(t, ` does
                                strength  give or take  inside  change
  route                            % w/v        (95 %)  in 100  in 100
* 0.75 g, one dilution  before    0.0594        0.0015    90.0
                        now       0.0596        0.0011    95.6    +5.5
  Verdict    before: USE two dilutions; now: USE 0.75 g, one dilution
  No change  two dilutions`, section(t, comparePage(c, before).Text(80)))
	assert.Contains(t, string(comparePage(c, before).Markdown()), `
## What the change does

| route |  | strength % w/v | give or take (95 %) | inside in 100 | change in 100 |
| --- | --- | --: | --: | --: | --: |
| **0.75 g, one dilution** | before | 0.0594 | 0.0015 | 90.0 |  |
|  | now | 0.0596 | 0.0011 | 95.6 | \+5.5 |

- **Verdict:** before: USE two dilutions; now: USE 0.75 g, one dilution
- **No change:** two dilutions

## What spoils 0.75 g, one dilution
`)
	assert.Contains(t, string(comparePage(c, before).Markdown()), "\nChanged: 25 mL flask: count = 2 (")
}

// What was not possible at all has no figures, and no difference.
func TestEffectWhereNothingWasPossible(t *testing.T) {
	c, before := constructed(t)
	before.Verdict = route.Verdict{Use: -1}
	for i := range before.Results {
		before.Results[i] = route.Result{Route: before.Results[i].Route, Reason: note.Of("property-lacking", "", "the bench is empty")}
	}
	part := section(t, comparePage(c, before).Text(80))
	assert.Contains(t, part, "before  not possible\n                        now       0.0596        0.0011    95.6\n")
	assert.Contains(t, part, "\n  Verdict    before: no route is possible; now: USE 0.75 g, one dilution")
	assert.NotContains(t, part, "No change")
}

// Without a tolerance there is no chance, but how well the target is held.
func TestEffectWithoutTolerance(t *testing.T) {
	c, before := constructed(t)
	for _, of := range []*route.Comparison{c, before} {
		of.Prep.Tolerances, of.Verdict.Meets = nil, false
		for i := range of.Results {
			of.Results[i].Inside, of.Results[i].HoldsWithin = nil, 0.05
		}
	}
	assert.Contains(t, section(t, comparePage(c, before).Text(80)), `
                                strength  give or take   holds
  route                            % w/v        (95 %)  within
* 0.75 g, one dilution  before    0.0594        0.0015     5 %
                        now       0.0596        0.0011     5 %
`)
}

func TestChangeWithoutEffect(t *testing.T) {
	skipIfSlow(t)
	before, c := compared(t, demoPrep), comparedWith(t, "25 mL flask: price = 12 EUR", "10 mL cylinder: clinging = 0.02 mL")
	assert.Equal(t, "s do\n  Verdict    as before: USE two dilutions\n  No change  in any route, to the digits shown", section(t, comparePage(c, before).Text(80)))
	assert.Contains(t, string(comparePage(c, before).Markdown()), "\n## What the changes do\n\n- **Verdict:** as before: USE two dilutions\n- **No change:** in any route")
}
