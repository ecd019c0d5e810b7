package bench

import (
	"errors"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// moreInPrep are stocks, packets and routes that use them.
const moreInPrep = `
[[stock]]
name = "strong"
strength = "1 % w/v"
[[stock]]
name = "weak"
strength = "0.1 % w/v"
volume = "20 mL"
[[packet]]
name = "sachet"
content = "0.5 g"
[[packet]]
name = "big sachet"
content = "1 g"
[[route]]
name = "strengthened"
steps = [
  { start = "strong" },
  { take = "1 mL", with = "2 mL pipette" },
  { add = "20 mL", with = "25 mL cylinder" },
  { strengthen = "1 mL", of = "strong", with = "2 mL pipette" },
  { take = "all" },
  { make-up-to = "25 mL", in = "25 mL cylinder" },
]
[[route]]
name = "bottle"
steps = [
  { start = "weak" },
  { take = "10 mL", with = "wide pipette" },
  { make-up-to = "25 mL", in = "25 mL cylinder" },
]
[[route]]
name = "drops"
steps = [
  { packet = "sachet" },
  { dissolve-in = "20.00 g", on = "0.01 g scale" },
  { take = "3 drops", with = "dropper" },
  { add = "15 mL", with = "25 mL cylinder" },
]
[[route]]
name = "liquid"
steps = [
  { measure = "1 mL", with = "2 mL pipette" },
  { dissolve-in = "20 mL", with = "25 mL cylinder" },
  { pour = "5 mL", from = "10 mL cylinder" },
  { strengthen = "2 drops", of = "step 2", with = "dropper" },
  { add-solute = "0.10 g", on = "0.01 g scale" },
  { add = "10 mL", with = "10 mL cylinder" },
]
`

// moreInKit are a dropper and a wide pipette.
const moreInKit = `
[[dropper]]
name = "dropper"
[[pipette]]
name = "wide pipette"
kind = "graduated"
capacity = "10 mL"
division = "0.1 mL"
tolerance = "0.05 mL"
`

// stocked is the prep of the demo with more in it, on its bench with more. Its solute has
// a density.
func stocked(t testing.TB) *route.Prep {
	t.Helper()
	kit, err := ParseKit("bench.toml", []byte(demoText(t, "bench.toml")+moreInKit))
	require.NoError(t, err)
	prep := strings.Replace(demoText(t, "dye.toml"), "[solute]\n", "[solute]\ndensity = \"1.1 g/mL\"\n", 1)
	p, err := ParsePrep("dye.toml", []byte(prep+moreInPrep), kit)
	require.NoError(t, err)
	return p
}

// demoText is the text of a file of the demo.
func demoText(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile("../../cmd/minim/demo/" + name)
	require.NoError(t, err)
	return string(text)
}

// short stands in the entries of a test: for by whom and when, and for the end of a line.
var short = strings.NewReplacer("BY", `by = "AK", at = "2026-11-28 10:05"`, " | ", "\n")

// recordOf is the text of a record of a route with entries in short.
func recordOf(route, entries string) string {
	return "route = \"" + route + "\"\n[entries]\n" + short.Replace(entries) + "\n"
}

// twoDilutions is the text of a record of the route of the demo that is called so.
func twoDilutions(entries string) string { return recordOf("two dilutions", entries) }

// parseRecord reads a record that is right.
func parseRecord(t testing.TB, p *route.Prep, text string) *record.Record {
	t.Helper()
	r, err := ParseRecord("record.toml", []byte(text), p)
	require.NoError(t, err)
	return r
}

// mistakeIn is the mistake in a record.
func mistakeIn(t testing.TB, p *route.Prep, text string) *benchfile.Mistake {
	t.Helper()
	_, err := ParseRecord("record.toml", []byte(text), p)
	return asMistake(t, err)
}

func asMistake(t testing.TB, err error) *benchfile.Mistake {
	t.Helper()
	var m *benchfile.Mistake
	require.True(t, errors.As(err, &m), "%v", err)
	return m
}

// markedText is what is marked in the line of a mistake.
func markedText(m *benchfile.Mistake) string {
	line := []rune(m.Source)
	return string(line[m.Column-1 : min(m.Column-1+m.Width, len(line))])
}
