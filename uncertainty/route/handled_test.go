package route

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty/near"
)

const handledKit = `
balance = [
  { name = "scale", capacity = "200 g", readability = "0.01 g", repeatability = "0.01 g", linearity = "0.02 g" },
  { name = "coarse scale", capacity = "200 g", readability = "0.5 g", repeatability = "2 g", linearity = "2 g" },
]
pipette = [{ name = "pipette", kind = "graduated", capacity = "10 mL", division = "0.1 mL", tolerance = "0.05 mL" }]
flask = [{ name = "flask", capacity = "25 mL", tolerance = "0.05 mL", count = 3 }]
cylinder = [{ name = "cylinder", capacity = "25 mL", division = "0.5 mL", tolerance = "0.2 mL" }]
`

// handledBy lists what a route with the steps handles, with lines before them in the file.
func handledBy(t *testing.T, target, more, steps string) (*Prep, *Result, []Handled) {
	t.Helper()
	text := fmt.Sprintf("target = %q\nvolume = \"5 mL\"\nsolute = { name = \"stuff\", density = \"1.2 g/mL\", molar-mass = \"100 g/mol\" }\nsolvent = { name = \"water\" }\n%s\n[[route]]\nname = \"r\"\nsteps = [%s]\n",
		target, more, steps)
	p := parse(t, handledKit, text)
	r := only(t, p)
	list, err := p.Handled(r, 0.95)
	require.NoError(t, err)
	return p, r, list
}

// said is what is handled in a line each.
func said(list []Handled) (lines []string) {
	for _, h := range list {
		var solvents []string
		for _, c := range h.Solvents {
			solvents = append(solvents, c.Name)
		}
		line := fmt.Sprintf("%d %s", h.Step, h.Name)
		if h.Bottle > 0 {
			line = fmt.Sprintf("%d bottle %d", h.Step, h.Bottle)
		}
		if !h.Undiluted {
			line += " in " + strings.Join(solvents, "+")
		}
		if len(h.Uses) > 0 {
			line += fmt.Sprintf(" for %v", h.Uses)
		}
		lines = append(lines, line)
	}
	return lines
}

// Everything that goes into a route, and every bottle that it fills, in order.
func TestHandled(t *testing.T) {
	skipIfSlow(t)
	const stock = "[[stock]]\nname = \"old\"\nstrength = \"20 % w/v\"\nsolvent = \"acetone\"\n[[packet]]\nname = \"sachet\"\ncontent = \"1 g\""
	for _, test := range []struct {
		steps string
		want  []string
	}{
		{`{ weigh = "1.00 g", on = "scale" }, { weigh = "1.00 g", on = "scale" }, { make-up-to = "25 mL", in = "flask" }`,
			[]string{"1 stuff", "3 bottle 1 in water"}},
		{`{ packet = "sachet" }, { dissolve-in = "25 mL", with = "cylinder" }, { take = "5 mL", with = "pipette" }, { add = "5 mL", with = "pipette" }, { add = "5 mL", with = "pipette" }`,
			[]string{"1 sachet", "2 bottle 1 in water for [3]", "5 bottle 2 in water"}},
		{`{ start = "old" }, { take = "5 mL", with = "pipette" }, { make-up-to = "25 mL", in = "flask" }, { take = "5 mL", with = "pipette" }, { make-up-to = "25 mL", in = "flask", piece = 2 }, { take = "all" }, { strengthen = "5 mL", of = "step 3", with = "pipette" }`,
			[]string{"1 old in acetone", "3 bottle 1 in acetone+water for [4 7]", "5 bottle 2 in acetone+water for [6]", "7 bottle 3 in acetone+water"}},
		{`{ measure = "5 mL", with = "pipette" }, { make-up-to = "25 mL", in = "flask" }, { weigh-aliquot = "5.00 g", on = "scale" }, { weigh-up-to = "20.00 g", on = "scale" }`,
			[]string{"1 stuff", "2 bottle 1 in water for [3]", "4 bottle 2 in water"}},
	} {
		p, r, list := handledBy(t, "1 % w/v", stock, test.steps)
		assert.Equal(t, test.want, said(list))
		solutions, err := p.Solutions(r.Route)
		require.NoError(t, err)
		var bottles []Handled
		for _, h := range list {
			if h.Bottle > 0 {
				bottles = append(bottles, h)
			}
		}
		require.Len(t, bottles, len(solutions))
		for i, s := range solutions {
			assert.Equal(t, s.Step, bottles[i].Step)
			near.Relative(t, test.want[len(test.want)-1], p.StrengthOf(s.Concentration), bottles[i].Analytic.Value, 1e-6)
			assert.Equal(t, i == len(solutions)-1, bottles[i].Last)
		}
		assert.Equal(t, r.Quoted, bottles[len(bottles)-1].Quoted)
	}
}

// A stock is labelled for the strength that it had when it was new, though it may have lost
// some: constructed, 10 % w/v within 1, of which a fifth may be gone. Limits are limits.
func TestHazardsOfAStockAreOfItsGreatestStrength(t *testing.T) {
	steps := `{ start = "old" }, { take = "5 mL", with = "pipette" }, { make-up-to = "25 mL", in = "flask" }`
	at := func(from string, replaces bool) string {
		return fmt.Sprintf("[[hazard]]\nfrom = \"%s %% w/v\"\nwords = [\"from %s\"]\nreplaces = %v\n", from, from, replaces)
	}
	hazards := at("7", false) + at("8.8", true) + at("10.9", false) + at("11.1", false)
	for strength, upTo := range map[string]string{
		`{ from = "9 % w/v", to = "11 % w/v" }`:               "from 10.9",
		`{ value = "10 % w/v", expanded = "1 % w/v", k = 2 }`: "from 10.9",
		`"10.9 % w/v"`: "from 10.9",
	} {
		_, _, list := handledBy(t, "2 % w/v", "[[stock]]\nname = \"old\"\nloss = \"20 % of strength\"\nstrength = "+strength+"\n"+hazards, steps)
		words := list[0].Hazards.Solution
		assert.Equal(t, upTo, words[len(words)-1], strength)
		assert.Contains(t, words, "from 7", "%s: it may have lost so much that the words from 8.8 on do not take the place of those", strength)
		assert.NotEmpty(t, list[0].Hazards.Straddled, strength)
	}
}

// A solution before a weighing that says nothing has a strength; those after it have none.
func TestHandledAfterAWeighingThatSaysNothing(t *testing.T) {
	steps := `{ weigh = "2.50 g", on = "scale" }, { make-up-to = "25 mL", in = "flask" }, { weigh-aliquot = "2.0 g", on = "coarse scale" }, { weigh-up-to = "20.0 g", on = "coarse scale" }, { take = "5 mL", with = "pipette" }, { make-up-to = "25 mL", in = "flask", piece = 2 }`
	_, _, list := handledBy(t, "1 % w/v", "", steps)
	require.Len(t, list, 4)
	assert.Empty(t, list[1].Uninformative)
	assert.NotEmpty(t, list[2].Uninformative)
	assert.NotEmpty(t, list[3].Uninformative)
}

// A stock whose strength cannot be said in the unit of the target could have any.
func TestHazardsOfAStockOfUnknownDensity(t *testing.T) {
	more := "[[stock]]\nname = \"old\"\nstrength = \"10 % w/v\"\nsolvent = \"some oil\"\n[[hazard]]\nfrom = \"90 % w/w\"\nwords = [\"explosive\"]\n"
	_, _, list := handledBy(t, "1 % w/w", more, `{ start = "old" }, { take = "5 mL", with = "pipette" }, { make-up-to = "25 mL", in = "flask" }`)
	assert.NotEmpty(t, list[0].Uninformative)
	assert.Equal(t, []string{"explosive"}, list[0].Hazards.Solution)
	assert.Len(t, list[0].Hazards.Straddled, 1)
}

func TestOneLiquidUnderItsNames(t *testing.T) {
	for _, name := range []string{"water", "Water", "deionised water", " DEIONISED  water"} {
		assert.True(t, equipment.IsWater(name), name)
	}
	assert.False(t, equipment.IsWater("heavy water"))
	assert.True(t, equipment.SameLiquid("Linseed  oil", "linseed oil"))
	assert.False(t, equipment.SameLiquid("linseed oil", "oil"))
}
