package equipment

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// Readings that scatter by less than their digit: a student weighed 0.7100, 0.0700 and
// 0.0100 g with a standard deviation of 0, which is only the digit
// (ipl.org/essay/Pipetting-Techniques-Lab-Report-D9707D138281BAB3). The floor of 0.41 d is that of USP <41>.
func TestScatterOfADigit(t *testing.T) {
	s := FromReadings([]float64{0.71, 0.71, 0.71}, 0.01)
	near.Absolute(t, "s of none", 0.41*0.01, s.S, 0.002*0.01)
	assert.True(t, s.ByDigit)
	assert.Equal(t, 2.0, s.DegreesOfFreedom)
	s = FromReadings([]float64{0.70, 0.71, 0.72}, 0.01)
	near.Relative(t, "s of a digit", 0.01, s.S, 1e-12)
	assert.False(t, s.ByDigit)
	assert.Equal(t, 3.0, s.Readings())

	k := one(t, onePipette+`readings = ["0.71 mL", "0.710 mL", "0.71 mL"]`)
	near.Absolute(t, "to the finest step", 0.41*0.001, k.Repeatability.S, 0.002*0.001)
	k = one(t, onePipette+`readings = ["710 µL", "710 µL"]`)
	near.Absolute(t, "in another unit", 0.41*0.001, k.Repeatability.S, 0.002*0.001)
	u := alone()
	deliver(t, k, u, k.Capacity)
	assert.Contains(t, worded(u.Notes).Assumed, "the readings of the x scatter by less than their last digit, 0.001 mL, can tell: taken as 0.41 of it")
}

// On a balance the two roundings of a weighing are that floor: nothing else is left of
// readings that agree, however few.
func TestAgreeingWeighings(t *testing.T) {
	b := scale()
	b.Repeatability = FromReadings([]float64{1, 1}, 0)
	a := weigh(t, b, 1)
	assert.Equal(t, uncertainty.Normal{}, term(a, "repeatability, scale").Distribution)
	near.Relative(t, "u", b.Readability/math.Sqrt(6), a.StandardUncertainty, 1e-12)
	assert.True(t, math.IsInf(a.DegreesOfFreedom, 1))
}

// What rounding leaves in a mean of n readings is d/√12 however many there are when they
// scatter by less than half a digit, and part of their scatter when by more.
func TestRoundingOfAMean(t *testing.T) {
	for _, c := range []struct{ s, scatter, rounding float64 }{
		{0.004, 0.002, 0.01 / math.Sqrt(12)}, {0.005, 0.0025, 0}, {0.02, 0.01, 0},
	} {
		spread := Spread{S: c.s, DegreesOfFreedom: 3, Known: true, Digit: 0.01}
		near.Absolute(t, "rounding", c.rounding, spread.roundingOfMean(), 1e-12)
		near.Relative(t, "s/√n and rounding", math.Hypot(c.scatter, c.rounding), spread.measured(spread, 0).Scale, 1e-12)
	}
	same := FromReadings([]float64{1, 1, 1, 1}, 0.01)
	near.Relative(t, "of readings alike", 0.01/math.Sqrt(12), same.roundingOfMean(), 1e-12)
}

// One unknown standard deviation for all uses by the readings of an instrument, at each of
// its marks the one of the nearest readings; another instrument has its own.
func TestOneSetForAllUses(t *testing.T) {
	k := graduatedPipette()
	k.Repeatability = Spread{S: 0.01, DegreesOfFreedom: 3, Known: true, Mean: 2.03,
		Elsewhere: []Spread{{S: 0.02, DegreesOfFreedom: 4, Known: true, At: 5}}}
	u := alone()
	var nodes []uncertainty.Node
	for i, mark := range []float64{2, 2, 3, 5} {
		volume, err := k.Deliver(u.next(string(rune('a'+i))), mark)
		require.NoError(t, err)
		nodes = append(nodes, volume)
	}
	a := propagate(t, u, u.Model.Add(nodes[0], nodes[1:]...))
	sets, most := make(map[uncertainty.Set]int), make(map[float64]int)
	for _, line := range a.Budget {
		if line.DegreesOfFreedom > 0 {
			sets[line.Set]++
			most[line.Most]++
		}
	}
	at := func(mark float64) uncertainty.Set {
		return uncertainty.Set{Owner: uncertainty.Owner{Kind: uncertainty.Instrument, Name: "pipette"}, At: mark}
	}
	assert.Equal(t, map[uncertainty.Set]int{at(2.03): 3, at(5): 1}, sets)
	assert.Equal(t, map[float64]int{2: 2, 3: 1, 5: 1}, most)
	assert.Equal(t, []string{"the pipette scatters at 3 mL as its readings at 2.03 mL do (not measured there)"}, worded(u.Notes).Assumed)
}

// A balance repeats at a load as at the one that was weighed, and it is said where that is
// another.
func TestLoadsOfReadings(t *testing.T) {
	b := scale()
	b.Repeatability = Spread{S: 0.02, DegreesOfFreedom: 5, Known: true, Mean: 10.002}
	for load, want := range map[float64]bool{10: true, 9.5: true, 1: false, 100: false} {
		u := oneUse()
		_, err := b.Weigh(u, load, u.Step, onBoat)
		require.NoError(t, err)
		assert.Equal(t, !want, len(worded(u.Notes).Assumed) > 0, load)
	}
	b.Repeatability.DegreesOfFreedom = 0 // stated, for all loads
	u := oneUse()
	_, err := b.Weigh(u, 1, u.Step, onBoat)
	require.NoError(t, err)
	assert.Empty(t, worded(u.Notes).Assumed)
}

// Truths that are drawn without the engine: a pipette scatters by some σ, from 1e-4 to 1e-1 of
// what it measures; n readings of it are taken, and it is used once or nine times. The
// interval holds what was delivered in 95 of 100, within five standard errors of 4000.
func TestCoverageOfFewReadings(t *testing.T) {
	skipIfSlow(t)
	random := rand.New(rand.NewPCG(7, 7))
	const runs = 4000
	for n := 2; n <= 5; n++ {
		for _, uses := range []int{1, 9} {
			inside := 0
			for range runs {
				sigma := math.Pow(10, -4+3*random.Float64())
				readings := make([]float64, n)
				for i := range readings {
					readings[i] = 1 + sigma*random.NormFloat64()
				}
				truth := 0.0
				for range uses {
					truth += 1 + sigma*random.NormFloat64()
				}
				k := &Measure{Name: "pipette", Kind: "one-mark", Ex: true, Capacity: 1, Count: 1, Retained: Retained{Known: true}, Repeatability: FromReadings(readings, 0)}
				u := alone()
				sum := u.Model.Constant(0)
				for i := range uses {
					u.Step.Step = i + 1
					volume, err := k.Deliver(u, 1)
					require.NoError(t, err)
					sum = u.Model.Add(sum, volume)
				}
				if a := propagate(t, u, sum); a.Lower() <= truth && truth <= a.Upper() {
					inside++
				}
			}
			near.Absolute(t, fmt.Sprintf("%d readings, %d uses", n, uses), 95, 100*float64(inside)/runs, 5*100*math.Sqrt(0.95*0.05/runs))
		}
	}
}
