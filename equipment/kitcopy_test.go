package equipment

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// An invented bench with candidates of both sorts.
const withCandidates = statedKit + `
[[candidate]]
kind = "balance"
name = "0.001 g scale"
capacity = "20 g"
readability = "0.001 g"
price = "240 EUR"

[[candidate]]
kind = "flask"
name = "25 mL flask"
capacity = "25 mL"
class = "A"
`

func TestWith(t *testing.T) {
	kit, same := parseKit(t, withCandidates), parseKit(t, withCandidates)
	with := kit.With("0.001 g scale")
	assert.Equal(t, []string{"0.01 g scale", "0.001 g scale", "10 mL cylinder", "1 mL graduated"}, with.Names())
	assert.Equal(t, []string{"25 mL flask"}, with.Candidates.Names())
	both := with.With("25 mL flask")
	assert.Equal(t, []string{"0.01 g scale", "0.001 g scale", "10 mL cylinder", "1 mL graduated", "25 mL flask"}, both.Names())
	assert.Equal(t, []string(nil), both.Candidates.Names())
	assert.Equal(t, "bench.toml", both.File)
	assert.Equal(t, same, kit, "the kit itself is as it was")
	assert.Equal(t, true, both.Balance("0.01 g scale") == kit.Balance("0.01 g scale"), "the instruments are the same")
	assert.PanicsWithValue(t, `equipment: no candidate is called "0.01 g scale"`, func() { kit.With("0.01 g scale") })
}

// Copies do not share the memory of their lists: what is added to one or taken out
// of one does not show in another.
func TestKitCopiesStandAlone(t *testing.T) {
	kit := parseKit(t, withCandidates)
	a, b := kit.With("25 mL flask"), kit.With("0.001 g scale")
	c, d := kit.Without(), kit.Without("1 mL graduated")
	for _, k := range []*Kit{a, b, c, d} {
		k.Balances = append(k.Balances, scale())
		k.Measures = append(k.Measures, tenCylinder())
		k.Candidates.Balances = append(k.Candidates.Balances, scale())
	}
	a.Balances[0], c.Measures[0] = nil, nil
	assert.Equal(t, parseKit(t, withCandidates), kit)
	assert.Equal(t, []string{"0.01 g scale", "0.001 g scale", "scale", "10 mL cylinder", "1 mL graduated", "cylinder"}, b.Names())
	assert.Equal(t, []string{"0.01 g scale", "scale", "10 mL cylinder", "cylinder"}, d.Names())
	assert.Equal(t, []string{"0.001 g scale", "scale", "25 mL flask"}, d.Candidates.Names())
}

func TestWithout(t *testing.T) {
	kit := parseKit(t, withCandidates)
	assert.Equal(t, kit, kit.Without())
	assert.Equal(t, []string{"10 mL cylinder"}, kit.Without("1 mL graduated", "0.01 g scale").Names())
	assert.Equal(t, kit.Candidates, kit.Without("1 mL graduated").Candidates)
	assert.Equal(t, kit.Measures, kit.Without("0.01 g scale").Measures)
	assert.Equal(t, []string(nil), kit.Without(kit.Names()...).Names())
	assert.PanicsWithValue(t, `equipment: no instrument on the bench is called "25 mL flask"`, func() { kit.Without("25 mL flask") })
	// The line of a jar stays when the measure is gone that it was set with.
	whole := parseKit(t, oneCylinder+"class = \"B\"\n[[jar]]\nname = \"jar\"\nline = \"20 mL\"\nset-with = \"x\"\n")
	assert.Equal(t, whole.Measure("jar").Line, whole.Without("x").Measure("jar").Line)
}
