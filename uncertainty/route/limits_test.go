package route

import (
	"context"
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/uncertainty/near"
)

func TestLimits(t *testing.T) {
	x := recipe{target: "10 g/L", steps: weighTen + toMark}
	assert.Equal(t, Limits{Steps: DefaultSteps, Prefer: Usual}, parse(t, exactKit, x.text()).Limits)

	x.more = `[plan]
steps = 0
left-over = "40 mL"
volume = "0.05 L"
solute = "250 mg"
strongest = "20 % w/v"
without = ["pipette", "balance"]
prefer = "tightest"
`
	l := parse(t, exactKit, x.text()).Limits
	near.Relative(t, "strongest", 0.2, l.Strongest, 1e-12)
	l.Strongest = 0
	assert.Equal(t, Limits{LeftOver: 40, Volume: 50, Solute: 0.25, Without: []string{"pipette", "balance"}, Prefer: "tightest"}, l)

	// What is asked for may be all that is permitted, and one name needs no list.
	x.more = "[plan]\nvolume = \"1000 µL\"\nstrongest = \"1 % w/v\"\nwithout = \"flask\"\nsteps = 5\n"
	l = parse(t, exactKit, x.text()).Limits
	assert.Equal(t, Limits{Steps: 5, Volume: 1, Strongest: 0.01, Without: []string{"flask"}, Prefer: Usual}, l)
}

func TestEveryPreferenceIsTaken(t *testing.T) {
	for _, word := range []string{Usual, LeastLeftOver, Tightest, Fewest, LeastSolute, Cheapest} {
		x := recipe{solute: "name = \"urea\"\nprice = \"1 EUR/g\"", more: "[plan]\nprefer = \"" + word + "\"\n", steps: weighTen + toMark}
		assert.Equal(t, word, parse(t, exactKit, x.text()).Limits.Prefer)
	}
}

func TestPlanMistakes(t *testing.T) {
	kit, err := ParseKit("bench.toml", []byte(exactKit+"[[candidate]]\nkind = \"balance\"\nname = \"better\"\ncapacity = \"9 g\"\nreadability = \"1 mg\"\nprice = \"90 EUR\"\n"))
	require.NoError(t, err)
	for _, c := range []struct{ plan, solute, solvent, place, message, hint string }{
		{`steps = 6`, "", "", "10:9", "steps: no more than 5 dilutions are searched, found 6", ""},
		{`steps = -1`, "", "", "10:9", "steps: must be a whole number of at least 0, found -1", ""},
		{`left-over = "0 mL"`, "", "", "10:13", `left-over: must be above 0, found "0 mL"`, ""},
		{`volume = "0.9 mL"`, "", "", "10:10", "volume: is less than the volume wanted, 1 mL", "it is the most that may be made in all"},
		{`solute = "1 mL"`, "", "", "10:10", `solute: "1 mL" is a volume, not a mass`, "a mass is written in g, mg, µg or kg"},
		{`strongest = "1 mol/L"`, "", "", "10:13", "strongest: mol/L needs the molar mass of the solute", `state it in the table [solute]: molar-mass = "58.44 g/mol"`},
		{`strongest = "9 g/L"`, "", "", "10:13", "strongest: is weaker than the target, 10 g/L", ""},
		{`without = ["pipete"]`, "", "", "10:11", `without: there is no instrument in the kit called "pipete"`, `perhaps "pipette" is meant`},
		{`without = ["pipette", "spoon"]`, "", "", "10:11", `without: there is no instrument in the kit called "spoon"`,
			"choose from balance, cylinder, flask, pipette, 10 mL pipette, syringe, dropper"},
		{`without = "better"`, "", "", "10:11", "without: the better is a candidate and not on the bench", "leave it out of the list"},
		{`prefer = "tighest"`, "", "", "10:10", `prefer: "tighest" is not one of usual, least-left-over, tightest, fewest, least-solute, cheapest`, `write "tightest"`},
		{`prefer = "cheapest"`, "", "", "10:10", "prefer: neither the solute nor the solvent has a price", `state one in its table: price = "3.20 EUR/g"`},
		{`prefer = "cheapest"`, "price = 3", "", "4:9", "price: found the number 3, expected a text in quotes", `put quotes round it: "3"`},
		{`time = "10 s"`, "", "", "10:1", "unknown key `time` in the plan", "the keys of the plan are steps, left-over, volume, solute, strongest, without, prefer"},
		{``, `price = "3 EUR"`, "", "4:9", `price: "3 EUR" does not say for how much`, `write an amount, a currency and for how much, as in "3.20 EUR/g"`},
		{``, "", `price = "3 EUR/g"`, "7:9", `price: "g" is not a unit of volume`, `write an amount, a currency and for how much, as in "3.20 EUR/mL"`},
		{``, `price = "3 USD/g"`, "", "4:9", "price: is in USD, where a price of the kit is in EUR", "state all prices in one currency"},
		{``, "", `price = "3 USD/L"`, "7:9", "price: is in USD, where a price of the kit is in EUR", "state all prices in one currency"},
	} {
		text := "target = \"10 g/L\"\nvolume = \"1 mL\"\n[solute]\n" + c.solute + "\nname = \"urea\"\n[solvent]\n" + c.solvent + "\nname = \"water\"\n[plan]\n" + c.plan + "\n"
		_, err := ParsePrep("p", []byte(text), kit)
		var m *benchfile.Mistake
		if !assert.True(t, errors.As(err, &m), "%v: %s", err, text) {
			continue
		}
		assert.Equal(t, "p:"+c.place, m.String(), m.Message)
		assert.Equal(t, c.message, m.Message)
		assert.Equal(t, c.hint, m.Hint, m.Message)
	}
}

// A prep without routes is right, and has nothing to compare.
func TestPrepWithoutRoutes(t *testing.T) {
	kit, err := ParseKit("bench.toml", []byte(exactKit))
	require.NoError(t, err)
	const text = "target = \"10 g/L\"\nvolume = \"1 mL\"\nsolute = { name = \"urea\" }\nsolvent = { name = \"water\" }\n"
	for _, more := range []string{"", "route = []\n"} {
		p, err := ParsePrep("urea.toml", []byte(text+more), kit)
		require.NoError(t, err)
		for _, name := range []string{"", "one"} {
			_, err = Compare(context.Background(), p, name, quick)
			assert.EqualError(t, err, "urea.toml: the prep has no route to compare")
			var unknown *UnknownRouteError
			assert.True(t, errors.As(err, &unknown) && len(unknown.Names) == 0)
		}
	}
}
