package main

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const strengthKit = `
balance = [{ name = "scale", capacity = "200 g", readability = "0.01 g" }]
pipette = [{ name = "pipette", kind = "one-mark", capacity = "5 mL", class = "A", standard = "ISO" }]
flask = [{ name = "flask", capacity = "50 mL", class = "A", standard = "ISO" }]
`

// A name alone does not say how strong 10 % of formalin is: what the strength counts stands
// wherever the solution is named, and what is sold dissolved is never taken for pure in silence.
func TestWhatTheStrengthCountsIsOnEveryPaper(t *testing.T) {
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{
		"bench.toml": strengthKit,
		"counted.toml": `
kit = "bench.toml"
target = "10 % v/v"
volume = "50 mL"
solute = { name = "formaldehyde", as = "formalin" }
solvent = { name = "water" }
stock = [{ name = "bottle", strength = "100 % v/v" }]
route = [{ name = "one to ten", steps = [{ start = "bottle" }, { take = "5 mL", with = "pipette" }, { make-up-to = "50 mL", in = "flask" }] }]
`,
		"pure.toml": `
kit = "bench.toml"
target = "3 % w/v"
volume = "50 mL"
solute = { name = "hydrogen peroxide" }
solvent = { name = "water" }
route = [{ name = "weighed", steps = [{ weigh = "1.50 g", on = "scale" }, { make-up-to = "50 mL", in = "flask" }] }]
`,
	} {
		require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	}
	for _, command := range [][]string{{"compare", "--format", "markdown"}, {"label"}, {"sheet"}, {"report"}} {
		command = append(command, "--trials", "10000")
		assert.Contains(t, output(t, append(command, "counted.toml")...), "formaldehyde (counted as formalin) in water", command)
		assert.Contains(t, output(t, append(command, "pure.toml")...), "counts as pure", command)
	}
}
