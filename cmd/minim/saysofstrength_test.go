package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

const strengthKit = `
balance = [{ name = "scale", capacity = "200 g", readability = "0.01 g" }]
pipette = [{ name = "pipette", kind = "one-mark", capacity = "5 mL", class = "A", standard = "ISO" }, { name = "graduated", kind = "graduated", capacity = "5 mL", class = "B", standard = "ISO" }]
cylinder = [{ name = "cylinder", capacity = "50 mL", class = "B", standard = "ISO" }]
flask = [{ name = "flask", capacity = "50 mL", class = "A", standard = "ISO" }]
`

// A name alone does not say how strong 10 % of formalin is: what the strength counts stands
// wherever the solution is named, and what is sold dissolved is never taken for pure in silence.
func TestWhatTheStrengthCountsIsOnEveryPaper(t *testing.T) {
	inFolder(t, map[string]string{
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
	})
	for _, command := range [][]string{{"compare", "--format", "markdown"}, {"label"}, {"sheet"}, {"report"}} {
		command = append(command, "--trials", "10000")
		assert.Contains(t, output(t, append(command, "counted.toml")...), "formaldehyde (counted as formalin) in water", command)
		assert.Contains(t, output(t, append(command, "pure.toml")...), "counts as pure", command)
	}
}

// A solution of lye shrinks as measured water is added to it: 3.2 mL of 50 % w/w (1.525 g/mL) and
// 44.75 mL of water, which a cylinder of 45 mL pours out, are 49.55 g of 4.92 % w/w, or at 1.053 g/mL
// (CRC, 5 %: 1.0538) 47.06 mL in place of 47.95, 1.8 % less. And 10 g of caustic soda in 25 mL of
// water need a cold bath, whatever is stated of it.
func TestWhatShrinksAndWarmsIsSaid(t *testing.T) {
	inFolder(t, map[string]string{
		"bench.toml": strengthKit,
		"lye.toml": `
kit = "bench.toml"
target = "5 % w/v"
volume = "45 mL"
solute = { name = "sodium hydroxide" }
solvent = { name = "water" }
stock = [{ name = "bottle", strength = "50 % w/w" }]
route = [{ name = "added", steps = [{ start = "bottle" }, { take = "3.2 mL", with = "graduated" }, { add = "45 mL", with = "cylinder" }] }]
`,
		"solid.toml": `
kit = "bench.toml"
target = "20 % w/v"
volume = "50 mL"
solute = { name = "caustic soda" }
solvent = { name = "water" }
route = [{ name = "weighed", steps = [{ weigh = "10.00 g", on = "scale" }, { make-up-to = "50 mL", in = "flask" }] }]
`,
	})
	for command, want := range map[string]string{ // 3.2 mL of 0.7625 g/mL in 47.06 mL are 5.185 % w/v
		"compare": "the solution of sodium hydroxide takes up 1.8 % less", "report": "the solution of sodium hydroxide takes up 1.8 % less",
		"label": "(5.19", "sheet": "by what sodium hydroxide takes up less when it is mixed +1.9 %",
	} {
		said := strings.Join(strings.Fields(output(t, command, "lye.toml", "--trials", "10000")), " ")
		assert.Contains(t, said, want, command)
	}
	for _, command := range []string{"compare", "sheet", "report"} {
		assert.Contains(t, strings.Join(strings.Fields(output(t, command, "solid.toml", "--trials", "10000")), " "), "in a cold bath", command)
	}
}
