package equipment

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// onBoat and inVessel are pans with a boat or a vessel of unknown mass.
var onBoat, inVessel = Pan{local: linearInBoat}, Pan{local: linearInVessel}

// along is the correlation of the curve at two loads, of a balance of a capacity, from that of
// its nodes: 1/2 of neighbours, 0 of others, and linear between them. (Constructed.)
func along(x, y, capacity float64) float64 {
	weights := func(load float64) (w [8]float64) {
		at := []float64{0, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1}
		for i := range 7 {
			if share := load / capacity; share >= at[i] && share <= at[i+1] {
				w = [8]float64{}
				w[i+1] = (share - at[i]) / (at[i+1] - at[i])
				w[i] = 1 - w[i+1]
			}
		}
		return w
	}
	covariance := func(a, b [8]float64) (sum float64) {
		for i := range a {
			for j := range b {
				sum += a[i] * b[j] * map[int]float64{0: 1, 1: 0.5, -1: 0.5}[i-j]
			}
		}
		return sum
	}
	a, b := weights(x), weights(y)
	return covariance(a, b) / math.Sqrt(covariance(a, a)*covariance(b, b))
}

// netVariance is the variance that linearity brings to a mass on a tare, where the limit at
// the gross load is as given: two local parts, the difference of the curve at two loads, and
// what an assumed limit has beyond two digits, of which a light tare has nothing.
func netVariance(b *Balance, tare, net, limit float64) float64 {
	digits := limit
	if !b.Linearity.Known {
		digits = 2 * b.Readability
	}
	parts := 2 + 2 - 2*along(tare, tare+net, b.Capacity)
	return digits*digits/6*parts + (limit*limit-digits*digits)/3
}

// linearOf is the root of what the influences of linearity bring to a variance.
func linearOf(a uncertainty.Analytic) float64 {
	sum := 0.0
	for _, c := range a.Budget {
		if IsLinearity(c.Code) {
			sum += c.Contribution * c.Contribution
		}
	}
	return math.Sqrt(sum)
}

// linearScale has a linearity of 0.03 g, and roundings.
func linearScale() *Balance {
	b := scale()
	b.Linearity = Stated{0.03, true}
	return b
}

// The u of a reading is that of the limit at every load, also near zero and between the
// nodes of the curve: 0.03/√3, and half of the variance is local.
func TestLinearityIsTheSameAtEveryLoad(t *testing.T) {
	b := linearScale()
	for load := 0.0; load <= 200; load += 0.37 {
		u := alone()
		p := b.Under(onBoat, load)
		local := propagate(t, u, b.ofLoad(u, p)).StandardUncertainty
		near.Relative(t, "local", 0.03/math.Sqrt(6), local, 1e-12)
		curve := 0.0
		for _, weight := range b.parts(p.grams, 1) {
			curve += weight * weight * 0.015 * 0.015 / 3
		}
		near.Relative(t, fmt.Sprint(load, " g"), 0.03/math.Sqrt(3), math.Sqrt(local*local+curve), 1e-12)
	}
}

// A net mass is a difference of two loads: its u is never below √2 local parts, which is that
// of one reading, nor above √2 readings, on the bare pan and in a vessel, down to one digit.
func TestLinearityOfANetMass(t *testing.T) {
	b := linearScale()
	one := 0.03 / math.Sqrt(3)
	for _, tare := range []float64{0, 0.5, 3, 12.34, 61, 150} {
		for _, net := range []float64{0.01, 0.02, 0.05, 0.5, 1, 4, 10, 37, 50} {
			u := alone()
			m, err := b.Weigh(u, net, u.Step, b.PanWith(Stated{tare, true}, false))
			require.NoError(t, err)
			got := linearOf(propagate(t, u, m))
			near.Relative(t, fmt.Sprint(net, " g on ", tare), math.Sqrt(netVariance(b, tare, net, 0.03)), got, 1e-9)
			assert.GreaterOrEqual(t, got, one*(1-1e-12))
			assert.LessOrEqual(t, got, one*math.Sqrt2*(1+1e-12))
		}
	}
	near.Relative(t, "1 g in a flask of 61 g is near its tare", one, math.Sqrt(netVariance(b, 61, 1, 0.03)), 0.001)
	near.Relative(t, "10 g on the pan is far from it", one*math.Sqrt2, math.Sqrt(netVariance(b, 0, 10, 0.03)), 1e-12)
}

// Same tare and same gross, same draw; more than two digits apart the local parts are
// independent, and the curve is nearly the same where the loads are near.
func TestEqualLoadsHaveOneError(t *testing.T) {
	b := linearScale()
	net := func(u Use, step string, tare Pan, g float64) uncertainty.Node {
		m, err := b.Weigh(u.next(step), g, u.next(step).Step, tare)
		require.NoError(t, err)
		return m
	}
	flask := b.PanWith(Stated{61, true}, false)
	for _, c := range []struct {
		name         string
		first, other Pan
		g            float64
		want         float64 // covariance in local variances
	}{
		{"the same", flask, flask, 5, 2 + 2*(1-along(61, 66, 200))},
		{"another load", flask, flask, 5.03, 1 + 1 + along(66, 66.03, 200) - along(61, 66, 200) - along(61, 66.03, 200)},
		{"another vessel", flask, b.PanWith(Stated{65, true}, false), 5, along(61, 65, 200) + along(66, 70, 200) - along(61, 70, 200) - along(66, 65, 200)},
		{"boats alike", onBoat, onBoat, 5, 2 + 2*(1-along(0, 5, 200))},
		{"a boat and a vessel", onBoat, inVessel, 5, 2 * (1 - along(0, 5, 200))},
		{"another piece", flask, flask, 5, 0},
	} {
		b.Count = 2
		u := alone()
		one := net(u, "one", c.first, 5)
		if c.name == "another piece" {
			u.Piece = 2
		}
		two := net(u, "two", c.other, c.g)
		sum, difference := propagate(t, u, u.Model.Add(one, two)), propagate(t, u, u.Model.Subtract(one, two))
		covariance := (math.Pow(linearOf(sum), 2) - math.Pow(linearOf(difference), 2)) / 4
		near.Absolute(t, c.name, c.want, covariance/(0.03*0.03/6), 1e-9)
	}
}

// Loads two digits apart may share the local part, loads three apart never do.
func TestLocalPartsOfNearLoads(t *testing.T) {
	b := linearScale()
	at := func(digits int) float64 { return b.Under(onBoat, float64(digits)*0.01).third }
	alike := 0
	for n := 3; n < 3000; n++ {
		for apart := 3; apart < 6; apart++ {
			require.NotEqual(t, at(n), at(n+apart))
		}
		if at(n) == at(n+1) {
			alike++
		}
	}
	assert.Equal(t, 1998, alike, "two of three neighbours")
	assert.NotEqual(t, onBoat.third, at(1), "a load and its tare")
	assert.Equal(t, at(1), at(2))
}

// A judgement is said, of both kinds of vessel; certificates and exact balances need none.
func TestLinearityIsSaid(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Balance)
		tare   Pan
		want   int
	}{
		"bare":        {func(b *Balance) {}, onBoat, 2},
		"certificate": {func(b *Balance) { b.Weighing = Stated{0.01, true} }, onBoat, 0},
		"none":        {func(b *Balance) { b.Linearity.Value = 0 }, onBoat, 0},
		"independent": {func(b *Balance) { b.Law = Independent }, onBoat, 0},
	} {
		b, u := linearScale(), alone()
		c.change(b)
		_, err := b.Weigh(u, 1, u.Step, c.tare)
		require.NoError(t, err)
		assert.Len(t, u.Notes.Assumed, c.want, name)
	}
	b, u := linearScale(), alone()
	_, err := b.Weigh(u, 1, u.Step, b.PanWith(Stated{5, true}, true))
	require.NoError(t, err)
	assert.Equal(t, []string{"the linearity of the scale errs by a curve over the range and by a part local to each load, each within the limit and equal in variance, together with the variance of a rectangle within it (so that about 8 errors in 100 lie beyond it), one and the same at equal loads (judgement)"}, worded(u.Notes).Assumed)
}

// The relative uncertainty never grows with the mass, as searches take it to do.
func TestRelativeUncertaintyFallsWithTheLoad(t *testing.T) {
	for _, capacity := range []float64{20, 200, 5000, 200_000} {
		for _, known := range []bool{true, false} {
			b := &Balance{Name: "scale", Capacity: capacity, Readability: 0.01, Repeatability: Spread{Known: true}, Linearity: Stated{0.03, known}}
			before := math.Inf(1)
			for m := 0.01; m <= capacity; m = math.Ceil(m*102) / 100 {
				relative := b.Uncertainty(b.Displayed(math.Round(m/0.01))) / m
				require.LessOrEqual(t, relative, before*(1+1e-9), "%v g of %v g", m, capacity)
				before = relative
			}
		}
	}
}
