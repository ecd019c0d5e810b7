package answer

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
)

// formPaper is a paper about an invented prep whose solute is stated so.
func formPaper(t *testing.T, solute, first string) *words.Paper {
	t.Helper()
	kit, err := read.ParseKit("kit.toml", []byte(`
[[balance]]
name = "scale"
capacity = "200 g"
readability = "0.01 g"
[[cylinder]]
name = "cylinder"
capacity = "50 mL"
division = "1 mL"
tolerance = "0.5 mL"
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "5 mL"
division = "0.05 mL"
tolerance = "0.04 mL"
`))
	require.NoError(t, err)
	prep, err := read.ParsePrep("prep.toml", []byte(fmt.Sprintf(`kit = "kit.toml"
target = "0.07 %% w/v"
volume = "20 mL"
tolerance = "30 %% of target"
[solute]
%s
[solvent]
name = "water"
[[stock]]
name = "strong"
strength = "0.7 %% w/v"
[[packet]]
name = "sachet"
content = "0.35 g"
[[route]]
name = "one dilution"
steps = [
  %s,
  { make-up-to = "50 mL", in = "cylinder" },
  { take = "5 mL", with = "pipette" },
  { make-up-to = "50 mL", in = "cylinder" },
]
`, solute, first)), kit)
	require.NoError(t, err)
	c, err := contest.Compare(t.Context(), prep, "", uncertainty.Settings{Trials: 10000})
	require.NoError(t, err)
	return &words.Paper{Comparison: c, Date: "2026-11-28"}
}

const weighIt = `{ weigh = "0.40 g", on = "scale" }`

// allWords are the screen and the papers.
func allWords(p *words.Paper) map[string]string {
	return map[string]string{
		"screen": comparePage(p.Comparison, nil).Text(80), "markdown": string(comparePage(p.Comparison, nil).Markdown()), "report": string(reportPage(p).Markdown()),
		"sheet": string(sheetPage(p, nil).Markdown()), "label": string(labelPage(p, words.Label{Count: 1}).Markdown()),
	}
}

// flat is a text without what wraps it.
func flat(text string) string {
	return regexp.MustCompile(`\s+`).ReplaceAllString(strings.NewReplacer("*", "", "\\", "").Replace(text), " ")
}

// With a form factor and one name alone the strength is nowhere printed as that of what is
// weighed, and everywhere it is said what it counts.
func TestStrengthNeverPassesForWhatIsWeighed(t *testing.T) {
	for name, text := range allWords(formPaper(t, "name = \"exemplate dihydrate\"\nform-factor = 0.88", weighIt)) {
		text = flat(text)
		assert.NotRegexp(t, `% w/v (of )?exemplate dihydrate`, text, name)
		assert.Contains(t, text, "the substance of which 1 g of exemplate dihydrate holds 0.88 g", name)
	}
	p := formPaper(t, "name = \"exemplate dihydrate\"\nform-factor = 0.88", weighIt)
	assert.Contains(t, flat(string(sheetPage(p, nil).Markdown())), "labelled exemplate dihydrate in water (strength counted as the substance of which")
	assert.Contains(t, flat(string(reportPage(p).Markdown())), "The strength is counted as the substance of which 1 g of exemplate dihydrate holds 0.88 g.")
	assert.Contains(t, flat(comparePage(p.Comparison, nil).Text(80)), "Counted 1 g of exemplate dihydrate as 0.88 g of the substance meant (form factor 0.88); to name it, write its name as name, and what is weighed as weighed-as")
}

// With two names each stands where it belongs: what is weighed, bought and its hazards by
// one, the strength by the other.
func TestTwoNamesStandWhereTheyBelong(t *testing.T) {
	p := formPaper(t, "name = \"exemplate\"\nweighed-as = \"exemplate dihydrate\"\nform-factor = 0.88\nassay = \"at least 98 %\"\nhazards = [\"irritant\"]", weighIt)
	all := allWords(p)
	for name, text := range all {
		assert.NotRegexp(t, `% w/v (of )?exemplate dihydrate`, flat(text), name)
		assert.NotRegexp(t, `0.40? g of exemplate( on|,|\.)`, flat(text), name)
	}
	for name, want := range map[string]string{
		"screen": "0.07 % w/v exemplate in water", "label": "exemplate in water", "report": "of exemplate in the solution", "sheet": "labelled exemplate in water",
	} {
		assert.Contains(t, flat(all[name]), want, name)
	}
	for name, want := range map[string]string{
		"screen": "weigh 0.40 g of exemplate dihydrate on the scale", "label": "weighed as exemplate dihydrate", "report": "weighing 0.40 g of exemplate dihydrate",
		"sheet": "exemplate dihydrate: 0.4 g, and some to spare, assay 98 to 100 %",
	} {
		assert.Contains(t, flat(all[name]), want, name)
	}
	assert.Contains(t, flat(all["screen"]), "Counted 1 g of exemplate dihydrate as 0.8712 g of exemplate (assay 98 to 100 %, form factor 0.88)")
	assert.Contains(t, flat(all["screen"]), "takes 0.4 g of exemplate dihydrate")
	assert.Contains(t, flat(all["screen"]), "Exemplate dihydrate, undiluted: irritant")
}

// The line is there only where something is applied: a stock states the strength itself.
func TestConversionIsSaidWhereItIsApplied(t *testing.T) {
	const form = "name = \"exemplate\"\nweighed-as = \"exemplate dihydrate\"\nform-factor = 0.88"
	for _, c := range []struct {
		solute, first string
		said          bool
	}{
		{form, weighIt, true}, {form, `{ packet = "sachet" }`, true}, {form, `{ start = "strong" }, { take = "5 mL", with = "pipette" }`, false},
		{"name = \"exemplate\"", weighIt, false}, {"name = \"exemplate\"\nassay = \"95 %\"", weighIt, true}, {"name = \"exemplate\"\nassay = \"100 %\"", weighIt, false},
		{"name = \"exemplate\"\nmolar-mass = \"310 g/mol\"\nweighed-molar-mass = \"346 g/mol\"", weighIt, true},
	} {
		p := formPaper(t, c.solute, c.first)
		assert.Equal(t, c.said, strings.Count(comparePage(p.Comparison, nil).Text(80), "\n  Counted ") == 1, "%s %s", c.solute, c.first)
		assert.Equal(t, c.said, strings.Contains(string(reportPage(p).Markdown()), "Counted: "), "%s %s", c.solute, c.first)
	}
	p := formPaper(t, "name = \"exemplate\"\nweighed-as = \"exemplate dihydrate\"\nmolar-mass = \"310 g/mol\"\nweighed-molar-mass = \"346 g/mol\"", weighIt)
	assert.Contains(t, flat(comparePage(p.Comparison, nil).Text(80)), "Counted 1 g of exemplate dihydrate as 0.896 g of exemplate (form factor 0.896 = 310/346) ")
}
