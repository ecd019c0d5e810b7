package route

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty/near"
)

// wettingKit is an invented kit of which nothing is uncertain that a test does not want.
const wettingKit = `
[[pipette]]
name = "p"
kind = "graduated"
capacity = "25 mL"
standard-uncertainty = "0.001 mL"
division = "0.1 mL"
reading = "none"
material = "borosilicate"
[[pipette]]
name = "piston"
kind = "piston"
capacity = "5 mL"
tolerance = "0 mL"
repeatability = "0 mL"
[[pipette]]
name = "direct"
kind = "piston"
form = "direct reusable"
capacity = "5 mL"
tolerance = "0 mL"
repeatability = "0 mL"
[[flask]]
name = "f50"
capacity = "50 mL"
standard-uncertainty = "0.001 mL"
reading = "none"
material = "borosilicate"
clinging = "0 mL"
[[cylinder]]
name = "c50"
capacity = "50 mL"
standard-uncertainty = "0.001 mL"
division = "1 mL"
reading = "none"
material = "borosilicate"
bore = "23 mm"
clinging = "0 mL"
[[cylinder]]
name = "own"
form = "plastic"
capacity = "50 mL"
standard-uncertainty = "0.001 mL"
division = "1 mL"
reading = "none"
material = "polypropylene"
bore = "24.1 mm"
clinging = "0 mL"
retained = "0 mL"
`

const (
	at25   = `bench = { temperature = "25 °C", within = "1 °C", vessels = "closed" }`
	half   = `{ start = "stock" }, { take = "25 mL", with = "p" }, `
	inC50  = `{ make-up-to = "50 mL", in = "c50" }, `
	inF50  = `{ make-up-to = "50 mL", in = "f50" }, `
	inOwn  = `{ make-up-to = "50 mL", in = "own" }, `
	spirit = `solvent = "ethanol"`
)

func wetted(t *testing.T, x recipe) *Result {
	t.Helper()
	if x.target == "" {
		x.target = "5 g/L"
	}
	return only(t, parse(t, wettingKit, x.text()))
}

// 25 mL of a stock in ethanol made up to 50 mL with water at 25 °C. By OIML R 22 the mixture of 50 %
// vol has 0.93014 and 0.92633 g/mL at 20 and 25 °C: it expands by 0.410 %, ethanol by 0.544 % (0.78924
// and 0.78495), glass by 0.005 %. So the strength is 0.14 % low, and not 0.43 % as by the expansion
// of water. A flask without a bore has no meniscus.
func TestSpiritMadeUpToAMarkExpandsAsSpirit(t *testing.T) {
	r := wetted(t, recipe{head: at25, more: stockOf("10 g/L", spirit), steps: half + inF50})
	expansion := (0.78495 / 0.78924) / (0.92633 / 0.93014)
	near.Absolute(t, "strength", 5*expansion, r.Analytic.Value, 5*2e-4)
	near.Absolute(t, "in per cent", -0.14, 100*(r.Analytic.Value/5-1), 0.02)
	near.Relative(t, "intended", 5, r.Intended, 1e-12)
	noted(t, note.Texts(r.Notes.Assumed), "ethanol and water", "50 % v/v of it ethanol, expands by 0.00082 /°C (OIML R 22)")
	// At 20 °C nothing expands, and with water nothing changes.
	near.Relative(t, "at 20 °C", 5, wetted(t, recipe{head: `bench = { temperature = "20 °C", within = "0 °C", vessels = "closed" }`, more: stockOf("10 g/L", spirit), steps: half + inF50}).Analytic.Value, 1e-9)
	water := wetted(t, recipe{head: at25, more: stockOf("10 g/L"), steps: half + inF50})
	near.Relative(t, "water", 5, water.Analytic.Value, 1e-9)
}

// Spirit of 50 % stands 0.224 mL low in a cylinder 23.0 mm wide (Young-Laplace, solved apart from this
// code), 0.45 % of 50 mL: so much stronger is what is made.
func TestSpiritMadeUpToAMarkHasAMeniscus(t *testing.T) {
	r := wetted(t, recipe{head: closed, more: stockOf("10 g/L", spirit), steps: half + inC50})
	near.Absolute(t, "strength", 5*50/(50-0.224), r.Analytic.Value, 5*1e-4) // the tables have a tension 2 % higher
	near.Absolute(t, "a third of it", 5*0.224/50/3, math.Abs(lineOf(t, r, "meniscus of ethanol and water").Contribution), 5*3e-5)
	// By the expansion of the mixture, and its meniscus.
	hot := wetted(t, recipe{head: at25, more: stockOf("10 g/L", spirit), steps: half + inC50})
	near.Absolute(t, "at 25 °C", 0.45-0.14, 100*(hot.Analytic.Value/5-1), 0.03)
}

// Of acetone and water only the ends are known: the expansion lies somewhere between, and so does
// the meniscus; both count and are named.
func TestOtherMixturesCountBetweenTheirParts(t *testing.T) {
	r := wetted(t, recipe{head: at25, more: stockOf("10 g/L", `solvent = "acetone"`), steps: half + inC50})
	water, acetone := equipment.WaterExpansion(22.5), 0.00143
	expansion := lineOf(t, r, "where the thermal expansion of acetone and water lies between those of its parts")
	near.Relative(t, "expansion", 5*(acetone-water)*5/math.Sqrt(12), math.Abs(expansion.Contribution), 0.03)
	assert.True(t, expansion.Assumed)
	less := 0.236 // mL for acetone in 23.0 mm, as above
	meniscus := lineOf(t, r, "where the meniscus of acetone and water lies between those of its parts")
	near.Relative(t, "meniscus", 5*less/50/math.Sqrt(12), math.Abs(meniscus.Contribution), 0.02)
	noted(t, note.Texts(r.Notes.Assumed), "acetone and water expands by", "somewhere between its parts")
	noted(t, note.Texts(r.Notes.Assumed), "the meniscus of acetone and water is somewhere between those of its parts")
	// A trace of it hardly counts: 0.5 mL in 50 mL.
	trace := wetted(t, recipe{target: "0.1 g/L", head: at25, more: stockOf("10 g/L", `solvent = "acetone"`), steps: `{ start = "stock" }, { take = "0.5 mL", with = "p" }, ` + inC50})
	few := lineOf(t, trace, "where the thermal expansion of acetone and water lies between those of its parts")
	near.Relative(t, "trace", 0.1*0.02*(acetone-water)*5/math.Sqrt(12), math.Abs(few.Contribution), 0.03)
	// Of a liquid that no table has, the expansion is taken to be that of the solvent, as before.
	oil := wetted(t, recipe{head: at25, more: stockOf("10 g/L", `solvent = "oil"`), steps: half + inC50})
	noted(t, note.Texts(oil.Notes.Assumed), "oil and water expands as water does")
}

// In plastic the sign turns: 0.301 mL more of spirit of 50 % by mass in 24.1 mm of polypropylene, by
// a table that was solved apart from this code; half of that, give or take that half.
func TestSpiritInPlasticStandsHigh(t *testing.T) {
	r := wetted(t, recipe{head: closed, more: stockOf("10 g/L", spirit), steps: half + inOwn})
	near.Absolute(t, "strength", 5*50/(50+0.15), r.Analytic.Value, 5*1e-4)
	near.Absolute(t, "half", 5*0.15/50/math.Sqrt(3), math.Abs(lineOf(t, r, "how far ethanol and water rises in the plastic of the own").Contribution), 5*6e-5)
}

// A piston over a cushion of air: 5 % of ethanol either way; of a mixture by its ethanol; of acetone
// none; directly displaced nothing.
func TestPistonsGoByWhatTheyTake(t *testing.T) {
	const taken = `{ start = "stock" }, { take = "5 mL", with = "piston" }, `
	x := recipe{head: closed, target: "1 g/L", more: stockOf("10 g/L", spirit), steps: taken + inF50}
	near.Relative(t, "ethanol", 0.05/math.Sqrt(3), relativeUncertainty(wetted(t, x)), 1e-3)
	x.steps = `{ start = "stock" }, { take = "5 mL", with = "direct" }, ` + inF50
	assert.Less(t, relativeUncertainty(wetted(t, x)), 1e-4, "direct")
	x.more, x.steps = stockOf("10 g/L"), taken+inF50
	assert.Less(t, relativeUncertainty(wetted(t, x)), 1e-4, "water")
	x.more, x.steps = stockOf("10 g/L", spirit), `{ start = "stock" }, { take = "5 mL", with = "p" }, `+inF50+`{ take = "5 mL", with = "piston" }, `+inF50
	x.target = "0.1 g/L"
	near.Relative(t, "10 % of it ethanol", 0.01/math.Sqrt(3), relativeUncertainty(wetted(t, x)), 0.02)
	x = recipe{head: closed, target: "1 g/L", more: stockOf("10 g/L", `solvent = "acetone"`), steps: taken + inF50}
	p := parse(t, wettingKit, x.text())
	_, err := p.compile(p.Routes[0])
	reason, no := equipment.WhyNot(err)
	assert.True(t, no)
	assert.Equal(t, "piston-refused", reason.Code)
	// One piece used twice for the same volume errs alike: what is taken and what is added cancel.
	twice := recipe{head: closed, target: "5 g/L", solvent: `name = "ethanol"`, more: stockOf("10 g/L", spirit), steps: taken + `{ add = "5 mL", with = "piston" }, `}
	assert.Less(t, relativeUncertainty(wetted(t, twice)), 1e-9)
}
