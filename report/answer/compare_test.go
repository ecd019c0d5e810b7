package answer

import (
	"context"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
)

// The parts of the first screen come in the order of DEVELOPERS.md ("Habits"), and no line is
// wider than a screen.
func TestOrderOfTheFirstScreen(t *testing.T) {
	text := comparePage(compared(t, demoPrep), nil).Text(80)
	at := 0
	for _, part := range []string{"Wanted:", "USE  two dilutions", "1   weigh 1.50 g of dye", "Strength", "Inside", "Spoilt by",
		"strength  give or take", "Why not the others", "Assumed:", "From memory:", "Not counted:", "Cautions:"} {
		next := strings.Index(text[at:], part)
		if assert.GreaterOrEqual(t, next, 0, "%q is missing or out of order", part) {
			at += next
		}
	}
	for line := range strings.Lines(text) {
		assert.LessOrEqual(t, utf8.RuneCountInString(strings.TrimRight(line, "\n")), 80, line)
		assert.Equal(t, strings.TrimRight(line, " \n"), strings.TrimRight(line, "\n"), "spaces at the end of a line")
	}
}

// The picture of the budget is of the route to use, of all routes where all is asked for.
func TestBudgetOfAllRoutes(t *testing.T) {
	read := func(name string) File {
		data, err := os.ReadFile("../../cmd/minim/demo/" + name)
		require.NoError(t, err)
		return File{Name: name, Data: data}
	}
	q, err := Read(Files{Kit: read("bench.toml"), Prep: read("dye.toml")})
	require.NoError(t, err)
	q.Settings = uncertainty.Settings{Trials: 10_000, Seed: 1, Coverage: 0.95}
	for _, q.All = range []bool{false, true} {
		a, err := Ask(context.Background(), "compare", q)
		require.NoError(t, err)
		budget, err := a.pictures[1].draw()
		require.NoError(t, err)
		svg, err := budget.SVG()
		require.NoError(t, err)
		assert.Contains(t, string(svg), "Two dilutions: spoilt most by 25 mL cylinder")
		assert.Equal(t, q.All, strings.Contains(string(svg), "three dilutions"))
	}
}
