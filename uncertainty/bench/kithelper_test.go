package bench

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty/route"
)

// Invented kits, and heads of one instrument to which a test adds keys.
const (
	statedKit = `# bench.toml
[[balance]]
name = "0.01 g scale"
capacity = "200 g"
readability = "0.01 g"
repeatability = "0.01 g"          # or readings = ["0.50 g", "0.51 g", "0.50 g", "0.49 g"]

[[pipette]]
name = "1 mL graduated"
kind = "graduated"                # one-mark, graduated
capacity = "1 mL"
class = "B"                       # tolerance and graduation from the class table
standard = "ISO"                  # or "ASTM"; never mixed silently

[[cylinder]]
name = "10 mL cylinder"
capacity = "10 mL"
class = "B"
clinging = "0.03 mL"
retained = { mean = "0.04 mL", spread = "0.02 mL" }
`
	oneBalance     = "[[balance]]\nname = \"x\"\ncapacity = \"200 g\"\nreadability = \"0.01 g\"\n"
	oneCylinder    = "[[cylinder]]\nname = \"x\"\ncapacity = \"10 mL\"\n"
	oneFlask       = "[[flask]]\nname = \"x\"\ncapacity = \"10 mL\"\n"
	onePipette     = "[[pipette]]\nname = \"x\"\nkind = \"one-mark\"\ncapacity = \"10 mL\"\ntolerance = \"0.02 mL\"\n"
	withCandidates = statedKit + `
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
)

// parseKit reads a kit that is right.
func parseKit(t testing.TB, text string) *equipment.Kit {
	t.Helper()
	kit, err := ParseKit("bench.toml", []byte(text))
	require.NoError(t, err)
	return kit
}

// loadPrep reads a prep that is right, with the kit that it names.
func loadPrep(t *testing.T, path string) *route.Prep {
	t.Helper()
	p, err := LoadPrep(context.Background(), path, "")
	require.NoError(t, err)
	return p
}
