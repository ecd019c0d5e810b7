package rescue

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/near"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// bottleRescue is what can be done on a bench with a bottle, without simulating much.
func bottleRescue(t *testing.T, kit, prep, bottle string) (*Rescue, error) {
	t.Helper()
	p := smallbench.On(t, prep, kit)
	b, err := Bottle(p, bottle)
	require.NoError(t, err)
	return Find(context.Background(), p, &route.Route{Name: "bottle", Steps: []route.Step{{Verb: route.Start, Stock: b}}}, uncertainty.Settings{Trials: 10_000, Seed: 1})
}

// used names the way that is recommended.
func (r *Rescue) used() *route.Result { return &r.Results[r.Verdict.Use] }

const syringeKit = `[[syringe]]
name = "syringe"
capacity = "1 mL"
numbered = "0.1 mL"
tolerance = "0.005 mL"
retained = "0 mL"
`

// Invented: 30 mL want 0.06 mL of a strong solution, 6 % of what the only syringe holds.
func TestSmallPartsOfAScaleAreTried(t *testing.T) {
	found, err := bottleRescue(t, syringeKit, `target = "1 g/L"
volume = "30 mL"
tolerance = "3 % of target"
[solute]
name = "exemplate"
[solvent]
name = "water"
[[stock]]
name = "strong"
strength = "50 g/L"
`, "0.9 g/L, give or take 0.02 g/L, 30 mL")
	require.NoError(t, err)
	assert.Equal(t, "all + 0.06 mL", found.used().Route.Name)
	assert.True(t, found.Verdict.Meets)
	assert.Positive(t, found.Tried)
}

// Invented: what is needed of the stock is less than the pipette can measure; with more of
// it, and solvent, it goes.
func TestStrengthenBeyondAndAddSolvent(t *testing.T) {
	kit := `[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "5 mL"
division = "1 mL"
tolerance = "0.02 mL"
reading = "careful"
retained = "0 mL"
[[cylinder]]
name = "cylinder"
capacity = "100 mL"
division = "1 mL"
tolerance = "0.5 mL"
retained = "0 mL"
clinging = "0 mL"
`
	prep := `target = "1 g/L"
volume = "30 mL"
tolerance = "8 % of target"
[solute]
name = "exemplate"
[solvent]
name = "water"
[[stock]]
name = "strong"
strength = "20 g/L"
`
	found, err := bottleRescue(t, kit, prep, "0.8 g/L, 30 mL")
	require.NoError(t, err)
	require.True(t, found.Verdict.Meets)
	at := slices.IndexFunc(found.Kinds, func(n note.Note) bool { return n.Code == string(strengthenAndAdd) })
	require.GreaterOrEqual(t, at, 0)
	// 30·0.8 + 20 a = 30 + a + w, constructed
	steps := found.Results[at].Route.Steps[found.Before:]
	require.Len(t, steps, 3)
	a, w := steps[1].Amount, steps[2].Amount
	assert.InDelta(t, 1, (24+20*a)/(30+a+w), 0.02)
	assert.Equal(t, fmt.Sprintf("all + %v mL, then + %v mL", a, w), found.Results[at].Route.Name)
	// that of a stronger solution which is diluted first: c_s x/v a of it
	require.Equal(t, string(diluteFirst), found.Kinds[found.Verdict.Use].Code)
	steps = found.used().Route.Steps[found.Before:]
	require.Len(t, steps, 4)
	x, v, b := steps[0].Amount, steps[1].Amount, steps[3].Amount
	assert.InDelta(t, 1, (24+20*x/v*b)/(30+b), 0.04)
	near.Absolute(t, "set aside", 0, found.SetAside(found.Verdict.Use), 0)
}

// Invented: a part below a fifth of the scale of the only pipette, after all that is read
// better was tried.
func TestPartsBelowAFifthOfTheScaleAreTried(t *testing.T) {
	kit := `[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "10 mL"
division = "0.1 mL"
tolerance = "0.01 mL"
reading = "careful"
retained = "0 mL"
[[flask]]
name = "flask"
capacity = "250 mL"
tolerance = "0.3 mL"
`
	found, err := bottleRescue(t, kit, `target = "1 g/L"
volume = "200 mL"
tolerance = "6 % of target"
[solute]
name = "exemplate"
[solvent]
name = "water"
`, "250 g/L, 1.2 mL")
	require.NoError(t, err)
	assert.True(t, found.Verdict.Meets)
	assert.Equal(t, "1 in 250 mL", found.used().Route.Name)
}

// Where nothing is good enough the finding says how much was tried, and what was not.
func TestNoWayClaimsNoMoreThanWasTried(t *testing.T) {
	_, err := bottleRescue(t, strings.Replace(syringeKit, "0.005 mL", "0.2 mL", 1), `target = "1 g/L"
volume = "30 mL"
tolerance = "1 % of target"
[solute]
name = "exemplate"
[solvent]
name = "water"
[[stock]]
name = "strong"
strength = "50 g/L"
`, "0.999 g/L, give or take 0.05 g/L, 30 mL")
	var none *NoWayError
	require.ErrorAs(t, err, &none)
	for _, word := range []string{"corrections that were tried the best is inside ", "; not tried: a stronger solution that is made or diluted for it first"} {
		assert.Contains(t, none.Reason.String(), word)
	}
	assert.NotContains(t, none.Reason.String(), "as can be told")
}

// On a bench with very many instruments not all corrections are worked out; which is said,
// and every kind is tried.
func TestCutListsAreSaid(t *testing.T) {
	smallbench.SkipIfSlow(t)
	kit := ""
	for i := range 14 {
		kit += fmt.Sprintf("[[pipette]]\nname = \"pipette %d\"\nkind = \"graduated\"\ncapacity = \"%d mL\"\ndivision = \"0.2 mL\"\ntolerance = \"0.02 mL\"\nretained = \"0 mL\"\n", i, 40+i)
	}
	kit += "[[cylinder]]\nname = \"cylinder\"\ncapacity = \"200 mL\"\ndivision = \"1 mL\"\ntolerance = \"1 mL\"\nretained = \"0 mL\"\nclinging = \"0 mL\"\n"
	found, err := bottleRescue(t, kit, "target = \"1 g/L\"\nvolume = \"50 mL\"\ntolerance = \"0.5 % of target\"\n[solute]\nname = \"exemplate\"\n[solvent]\nname = \"water\"\n", "3.123 g/L, 60 mL")
	require.NoError(t, err)
	assert.Contains(t, found.Kinds, note.Of(string(addSolvent), ""))
	assert.LessOrEqual(t, found.Tried, len(ways)*mostTried)
	assert.Contains(t, note.Texts(found.NotTried), fmt.Sprintf("some of the ways with a part diluted, since no more than %d of them are worked out", mostTried))
}

// Constructed: 30 mL at 0.95 of the target, 0.001 g/mL, want 0.0015 g more and as much again
// as the solution added needs for itself: of 1 g/mL diluted 200 times that is
// 0.0015/(0.005 - 0.001) = 0.375 mL, the first that is a fifth of the pipette's 1 mL.
func TestWhatIsDilutedFirstIsNamed(t *testing.T) {
	k, err := read.ParseKit("kit", []byte("[[pipette]]\nname = \"pipette\"\nkind = \"graduated\"\ncapacity = \"1 mL\"\ndivision = \"0.1 mL\"\ntolerance = \"0.02 mL\"\n"))
	require.NoError(t, err)
	r := &rescuer{prep: &route.Prep{Kit: k}}
	r.now.MadeML = 30
	r.stronger = []strong{{route.Step{Stock: &route.Stock{Name: "strong"}}, 1, 1e9}}
	assert.Contains(t, r.dilutedFirst(0.00095, 0.001).String(), " (of strong diluted 200 times about 0.38 mL would be needed)")
	r.stronger[0].source = route.Step{From: 2}
	assert.Contains(t, r.dilutedFirst(0.00095, 0.001).String(), " (of the solution of step 2 diluted 200 times about 0.38 mL would be needed)")
	r.stronger[0].concentration = 0.03 // diluted 5 times, 0.0015/(0.006 - 0.001)
	assert.Contains(t, r.dilutedFirst(0.00095, 0.001).String(), " (of the solution of step 2 diluted 5 times about 0.3 mL would be needed)")
	r.now.MadeML = 3 // less than a fifth of the pipette at any rate: 0.00015/(0.003 - 0.001)
	assert.Contains(t, r.dilutedFirst(0.00095, 0.001).String(), " (of the solution of step 2 diluted 10 times about 0.075 mL would be needed)")
	r.stronger[0].concentration = 0.0015
	assert.Equal(t, "made-first", r.dilutedFirst(0.00095, 0.001).Code, "it is not strong enough to be diluted")
}
