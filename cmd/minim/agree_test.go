package main

import (
	"encoding/json"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// routeFigures are what is printed of a route, and what that is rounded from.
type routeFigures struct {
	Name       string
	Intended   float64
	Analytic   map[string]any
	MonteCarlo map[string]any   `json:"monte_carlo"`
	CrossCheck map[string]any   `json:"cross_check"`
	Quoted     map[string]any   `json:"quoted"`
	Inside     []map[string]any `json:"inside"`
}

func figuresOf(t *testing.T, text string) (use string, routes []routeFigures) {
	t.Helper()
	var got struct {
		Use    string
		Routes []routeFigures
	}
	require.NoError(t, json.Unmarshal([]byte(text), &got))
	return got.Use, got.Routes
}

// printed are the strength, what it may be off by and the chance of the route to use, as
// they stand in the table of all routes in Markdown.
func printed(t *testing.T, markdown, use string) []string {
	t.Helper()
	for line := range strings.Lines(markdown) {
		cells := strings.Split(strings.Trim(strings.TrimSpace(line), "|"), " | ")
		if len(cells) == 6 && strings.TrimSpace(cells[0]) == "**"+use+"**" {
			return append(strings.Split(cells[2], " to "), strings.TrimSpace(cells[1]), cells[3])
		}
	}
	require.Fail(t, "no row of "+use, markdown)
	return nil
}

// A route of a prep has one result, to the printed digit, whatever prints it: the
// comparison of all and of one, in text, Markdown and JSON, a report, a label, a bench
// sheet, and a batch of which nothing has been done yet.
func TestPapersAgree(t *testing.T) {
	skipIfSlow(t)
	preps, err := filepath.Glob("../../testdata/benches/*/*.toml")
	require.NoError(t, err)
	preps = slices.DeleteFunc(preps, func(path string) bool { return filepath.Base(path) == "bench.toml" })
	for i, prep := range preps {
		prep, err := filepath.Abs(prep)
		require.NoError(t, err)
		t.Run(filepath.Base(filepath.Dir(prep)), func(t *testing.T) {
			t.Chdir(t.TempDir())
			if i == 0 {
				agree(t, prep) // which holds that all simulate as much when nothing is said of it
			} else {
				agree(t, prep, "--trials", "20000")
			}
		})
	}
}

func agree(t *testing.T, prep string, trials ...string) {
	ask := func(args ...string) string { return output(t, append(args, trials...)...) }
	ask("compare", prep, "--out", "all")
	use, all := figuresOf(t, read(t, "all/compare.json"))
	at := slices.IndexFunc(all, func(r routeFigures) bool { return r.Name == use })
	require.GreaterOrEqual(t, at, 0)
	ask("compare", prep, "--route", use, "--out", "alone")
	_, alone := figuresOf(t, read(t, "alone/compare.json"))
	assert.Equal(t, all[at], alone[0], "alone")

	output(t, "new", "--record", prep, "--route", use, "record.toml")
	ask("made", prep, "record.toml", "--out", "made")
	var batch struct{ Planned, Made routeFigures }
	require.NoError(t, json.Unmarshal([]byte(read(t, "made/made.json")), &batch))
	assert.Equal(t, all[at], batch.Planned, "planned")
	assert.Equal(t, all[at], batch.Made, "made as planned")

	papers := map[string]string{"compare": read(t, "all/compare.txt"), "compare --route": read(t, "alone/compare.txt"), "made": read(t, "made/made.txt")}
	for _, command := range []string{"report", "sheet", "label"} {
		papers[command] = ask(command, prep)
	}
	figures := printed(t, read(t, "all/compare.md"), use)
	for name, text := range papers {
		for i, figure := range figures {
			chance := i == len(figures)-1
			if chance && (name == "label" || len(all[at].Inside) == 0) {
				continue
			}
			assert.Contains(t, strings.Join(strings.Fields(text), " "), figure, name)
		}
	}
}

// What plan shows of the routes that it finds, compare shows of them when they are saved.
func TestPlanAgreesWithCompare(t *testing.T) {
	skipIfSlow(t)
	inFolder(t, map[string]string{"kit.toml": planKit, "prep.toml": planPrep})
	use, found := figuresOf(t, output(t, "plan", "prep.toml", "--steps", "1", "--format", "json", "--save", "saved.toml"))
	again, compared := figuresOf(t, output(t, "compare", "saved.toml", "--format", "json"))
	assert.Equal(t, use, again)
	require.Greater(t, len(compared), 1)
	for _, r := range compared {
		at := slices.IndexFunc(found, func(f routeFigures) bool { return f.Name == r.Name })
		require.GreaterOrEqual(t, at, 0, r.Name)
		assert.Equal(t, r, found[at], r.Name)
	}
	assert.Greater(t, len(found), len(compared), "the others are simulated with fewer trials")
	saved := output(t, "compare", "saved.toml", "--format", "markdown")
	text := strings.Join(strings.Fields(output(t, "plan", "prep.toml", "--steps", "1", "--all")), " ")
	for _, figure := range printed(t, saved, use) {
		assert.Contains(t, text, figure)
	}

	// The routes of the prep itself as well.
	var plan struct {
		Own []struct {
			Name        string
			Conformance float64 `json:"conformance_probability"`
		} `json:"own_routes"`
	}
	require.NoError(t, json.Unmarshal([]byte(output(t, "plan", "saved.toml", "--steps", "0", "--format", "json")), &plan))
	require.Len(t, plan.Own, len(compared))
	for i, own := range plan.Own {
		assert.Equal(t, compared[i].Name, own.Name)
		assert.Equal(t, compared[i].Inside[0]["conformance_probability"], own.Conformance, own.Name)
	}
}

// An invented bench, and a prep that it only just does.
const (
	planKit = `
[[balance]]
name = "scale"
capacity = "200 g"
readability = "0.01 g"

[[cylinder]]
name = "50 mL cylinder"
capacity = "50 mL"
class = "B"

[[syringe]]
name = "5 mL syringe"
capacity = "5 mL"
`
	planPrep = `
kit = "kit.toml"
target = "1.1 % w/v"
volume = "30 mL"
tolerance = "6 % of target"

[solute]
name = "citric acid"

[solvent]
name = "water"
`
)
