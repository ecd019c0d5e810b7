package route

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/influence"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

// exactKit is a kit whose instruments have no error but for the balance and
// what a test states itself, so that closed forms show.
const exactKit = `
[[balance]]
name = "balance"
capacity = "200 g"
readability = "0.01 g"
repeatability = "0.01 g"
linearity = "0.02 g"
count = 2
[[flask]]
name = "flask"
capacity = "100 mL"
tolerance = "0 mL"
reading = "none"
retained = "0.5 mL"
count = 2
[[cylinder]]
name = "cylinder"
capacity = "100 mL"
division = "1 mL"
tolerance = "0 mL"
reading = "none"
clinging = "0 mL"
retained = "0 mL"
[[pipette]]
name = "pipette"
kind = "one-mark"
capacity = "1 mL"
tolerance = "0 mL"
reading = "none"
retained = "0.01 mL"
[[pipette]]
name = "10 mL pipette"
kind = "one-mark"
capacity = "10 mL"
standard-uncertainty = "0.02 mL"
reading = "none"
[[dropper]]
name = "dropper"
tolerance = "0 mL"
repeatability = "0 mL"
[[syringe]]
name = "syringe"
capacity = "10 mL"
tolerance = "0 mL"
single-use = true
`

// closed: nothing evaporates.
const closed = `bench = { vessels = "closed" }`

// recipe is a prep with one route. What is left out is not stated.
type recipe struct {
	target, head, solute, solvent, more, steps string
}

func (r recipe) text() string {
	solute, solvent, target := r.solute, r.solvent, r.target
	if solute == "" {
		solute = "name = \"urea\"\nstate = \"solid\""
	}
	if solvent == "" {
		solvent = `name = "water"`
	}
	if target == "" {
		target = "10 g/L"
	}
	return "target = \"" + target + "\"\nvolume = \"1 mL\"\n" + r.head + "\n[solute]\n" + solute + "\n[solvent]\n" + solvent + "\n" + r.more +
		"\n[[route]]\nname = \"route\"\nsteps = [\n" + r.steps + "\n]\n"
}

func (r recipe) run(t *testing.T) *Result {
	t.Helper()
	return only(t, parse(t, exactKit, r.text()))
}

// refused runs a recipe that the bench cannot do, and returns why.
func (r recipe) refused(t *testing.T) string {
	t.Helper()
	p := parse(t, exactKit, r.text())
	_, err := p.compile(p.Routes[0])
	require.Error(t, err)
	return err.Error()
}

// stockOf is a stock of some strength, or with more keys.
func stockOf(strength string, more ...string) string {
	if !strings.HasPrefix(strength, "{") {
		strength = "\"" + strength + "\""
	}
	return "[[stock]]\nname = \"stock\"\nstrength = " + strength + "\n" + strings.Join(more, "\n")
}

const (
	fromStock = `{ start = "stock" }, `
	takeTen   = `{ take = "10 mL", with = "10 mL pipette" }, `
	toMark    = `{ make-up-to = "100 mL", in = "flask" }, `
	weighTen  = `{ weigh = "10.00 g", on = "balance" }, `
)

// lineOf is the line of the budget of an influence.
func lineOf(t *testing.T, r *Result, name string) uncertainty.Contribution {
	t.Helper()
	var names []string
	for _, line := range r.Analytic.Budget {
		if influence.Name(&line.Influence) == name {
			return line
		}
		names = append(names, influence.Name(&line.Influence))
	}
	require.Fail(t, "no influence "+name, "%q", names)
	return uncertainty.Contribution{}
}

// noted requires that one of the notes holds all of some words.
func noted(t *testing.T, notes []string, words ...string) {
	t.Helper()
	for _, note := range notes {
		missing := false
		for _, word := range words {
			missing = missing || !strings.Contains(note, word)
		}
		if !missing {
			return
		}
	}
	assert.Fail(t, "no such note", "%q in %q", words, notes)
}

func relativeUncertainty(r *Result) float64 {
	return r.Analytic.StandardUncertainty / r.Analytic.Value
}

// The exact kit adds nothing of its own to a dilution.
func TestExactKit(t *testing.T) {
	r := recipe{more: stockOf("1 g/L"), steps: fromStock + `{ take = "1 mL", with = "pipette" }, ` + toMark}.run(t)
	near.Relative(t, "strength", 0.01, r.Intended, 1e-12)
	near.Relative(t, "expected", 0.01, r.Analytic.Value, 1e-12)
}
