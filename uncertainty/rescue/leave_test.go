package rescue

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/words/note"
	"minim/uncertainty/near"
)

// asked is a prep of 1 g/L, of which so many mL are wanted; strong is a stock that all but a few of these tests have.
func asked(mL int, lines string) string {
	return fmt.Sprintf("target = \"1 g/L\"\nvolume = \"%d mL\"\n%s\n[solute]\nname = \"exemplate\"\nspecific-volume = \"0 mL/g\"\n[solvent]\nname = \"water\"\n", mL, lines)
}

const strongStock = "[[stock]]\nname = \"strong\"\nstrength = \"20 g/L\"\n"

// finePipette has lines every 0.01 mL, coarseCylinder every 5 mL.
const (
	finePipette    = "[[pipette]]\nname = \"pipette\"\nkind = \"graduated\"\ncapacity = \"1 mL\"\ndivision = \"0.01 mL\"\ntolerance = \"0.005 mL\"\nretained = \"0 mL\"\n"
	coarseCylinder = "[[cylinder]]\nname = \"cylinder\"\ncapacity = \"50 mL\"\ndivision = \"5 mL\"\ntolerance = \"2 mL\"\nretained = \"0 mL\"\nclinging = \"0 mL\"\n"
)

// Invented: a bottle that is inside is left as it is, however far from the target and however much of it there is;
// where it is too little, that is what is found, unless a way makes enough of it.
func TestWhatIsInsideIsLeft(t *testing.T) {
	for bottle, want := range map[string]string{
		"0.5 g/L, 20 mL":                      "LEAVE IT", // nothing weighs or measures better
		"0.5 g/L, 200 mL":                     "LEAVE IT", // what is not needed stays in it
		"1 g/L, 20 mL":                        "LEAVE IT",
		"0.5 g/L, 18 mL":                      "LEAVE IT, BUT IT IS LESS THAN THE 20 mL WANTED",
		"1 g/L, 18 mL":                        "LEAVE IT, BUT IT IS LESS THAN THE 20 mL WANTED",
		"1.6 g/L, 18 mL":                      "TO 1 g/L", // diluted it is enough
		"1 g/L, give or take 0.5 g/L, 20 mL":  "LEAVE IT", // 3.2 standard deviations
		"4 g/L, give or take 0.01 g/L, 20 mL": "TO 1 g/L",
	} {
		found, err := bottleRescue(t, coarseCylinder, asked(20, `tolerance = "80 % of target"`), bottle)
		if assert.NoError(t, err, bottle) {
			assert.Equal(t, want, found.Finding().String(), bottle)
			assert.Equal(t, found.LeavesIt(), found.used().Route.Name == "as it is", bottle)
			if found.LeavesIt() {
				near.Absolute(t, "set aside", 0, found.SetAside(found.Verdict.Use), 0)
			}
		}
	}
}

// Invented: diluted to 20 mL in a cylinder that is right within 2 mL, a bottle that is inside would hardly be.
func TestTooLittleThatIsInsideIsLeft(t *testing.T) {
	found, err := bottleRescue(t, coarseCylinder, asked(20, `tolerance = "10 % of target"`), "1.05 g/L, 18 mL")
	require.NoError(t, err)
	assert.Equal(t, "LEAVE IT, BUT IT IS LESS THAN THE 20 mL WANTED", found.Finding().String())
	assert.Contains(t, found.Kinds, note.Of(string(fillUp), ""), "which stands beside it")
}

// Constructed: with a chance between what is asked for and half of its risk, a way that halves it goes first, as it does among
// routes; where none does, the bottle is left.
func TestLeavingIsJudgedAsAnyWay(t *testing.T) {
	const inside96 = "1.5 g/L, give or take 0.34 g/L, 40 mL" // Φ((1.8 - 1.5)/0.17) = 0.961
	found, err := bottleRescue(t, coarseCylinder, asked(20, `tolerance = "80 % of target"`), inside96)
	require.NoError(t, err)
	assert.False(t, found.LeavesIt())
	assert.Greater(t, found.used().Chance(), 0.975)
	assert.Contains(t, found.Kinds, note.Of(string(leave), ""), "and stands beside it")
	near.Absolute(t, "inside as it is", 0.961, found.Batch.Chance(), 0.001)
	found, err = bottleRescue(t, finePipette, asked(20, `tolerance = "80 % of target"`), inside96)
	require.NoError(t, err)
	assert.True(t, found.LeavesIt(), "the pipette dilutes next to nothing")
}

// Invented: without a tolerance a bottle is left that is about as near as any way comes, and none is advised
// where there is no way.
func TestLeavingWithoutATolerance(t *testing.T) {
	found, err := bottleRescue(t, coarseCylinder, asked(19, ""), "1.02 g/L, 19.6 mL")
	require.NoError(t, err)
	assert.True(t, found.LeavesIt(), "its line at 20 mL is right within 2 mL")
	found, err = bottleRescue(t, finePipette+coarseCylinder, asked(19, ""), "1.02 g/L, 19.6 mL")
	require.NoError(t, err)
	assert.Equal(t, "all + 0.39 mL", found.used().Route.Name)
	found, err = bottleRescue(t, coarseCylinder, asked(20, ""), "2 g/L, 20 mL")
	require.NoError(t, err)
	assert.False(t, found.LeavesIt())
	assert.NotContains(t, found.Kinds, note.Of(string(leave), ""))
	_, err = bottleRescue(t, coarseCylinder, asked(20, ""), "0.5 g/L, 20 mL")
	assert.ErrorContains(t, err, "it is too weak")
}

// Invented: that what is asked for is not reached is said before that it is too little.
func TestFindingSaysTheChanceFirst(t *testing.T) {
	coarseScale := "[[balance]]\nname = \"scale\"\ncapacity = \"100 g\"\nreadability = \"0.01 g\"\n"
	found, err := bottleRescue(t, coarseScale, asked(20, `tolerance = "10 % of target"`), "0.5 g/L, 18 mL")
	require.NoError(t, err)
	assert.Equal(t, "TO 1 g/L, NEAREST (none reaches 95 in 100), TOO LITTLE", found.Finding().String())
	assert.False(t, found.Inherits(found.Verdict.Use), "the bottle is exact")
	found, err = bottleRescue(t, coarseCylinder, asked(20, `tolerance = "5 % of target"`), "1.9 g/L, give or take 0.2 g/L, 20 mL")
	require.NoError(t, err)
	assert.Equal(t, "TO 1 g/L, NEAREST (none reaches 95 in 100)", found.Finding().String())
	found, err = bottleRescue(t, finePipette, asked(30, `tolerance = "8 % of target"`)+strongStock, "0.9 g/L, 20 mL")
	require.NoError(t, err)
	assert.Equal(t, "TO 1 g/L, BUT LESS THAN THE 30 mL WANTED", found.Finding().String())
}

// Constructed: of 20 g/L, 20 mL at 0.1 g/L want 18/19 = 0.947 mL. With 0.9 mL they come to 20/20.9 = 0.957 g/L,
// more than a quarter of the way to a limit at 0.92; 0.95 mL is the roundest reading that is not. Where the pipette has
// lines every 0.1 mL alone, 0.9 mL must do.
func TestCorrectionsAreNotRoundedAwayFromTheTarget(t *testing.T) {
	prep := asked(20, `tolerance = "8 % of target"`) + strongStock
	found, err := bottleRescue(t, finePipette, prep, "0.1 g/L, 20 mL")
	require.NoError(t, err)
	assert.Equal(t, "all + 0.95 mL", found.used().Route.Name)
	found, err = bottleRescue(t, strings.Replace(finePipette, "0.01 mL", "0.05 mL", 1)+"reading = \"careful\"\n", prep, "0.1 g/L, 20 mL")
	require.NoError(t, err)
	assert.Equal(t, "all + 0.95 mL", found.used().Route.Name, "though 0.9 mL is worked out first, and rounder")
	coarse := "[[pipette]]\nname = \"pipette\"\nkind = \"graduated\"\ncapacity = \"1 mL\"\ndivision = \"0.1 mL\"\ntolerance = \"0.005 mL\"\nreading = \"careful\"\nretained = \"0 mL\"\n"
	found, err = bottleRescue(t, coarse, prep, "0.1 g/L, 20 mL")
	require.NoError(t, err)
	assert.Equal(t, "all + 0.9 mL", found.used().Route.Name)
	assert.True(t, found.Verdict.Meets)
}
