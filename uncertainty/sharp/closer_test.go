package sharp

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/law"
	"minim/uncertainty/near"
)

// TestLinearChance: of two normal quantities about the target, own + S and own' + r S, the second is
// smaller in size where sum and difference have one sign (constructed; the chance of that is Sheppard's,
// ½ + arcsin ρ/π), whichever of the two is narrower.
func TestLinearChance(t *testing.T) {
	normal := func(deviation float64) *Linear {
		s := new(law.Sum)
		s.Normal(deviation)
		return &Linear{Law: s.Law(), Scale: deviation}
	}
	for _, c := range []struct{ own, other, shared, r float64 }{{1, 1, 0, 0}, {1, 2, 0, 0}, {2, 1, 0, 0}, {1, 0.3, 0.8, 1}, {0.5, 1.5, 2, 0.7}, {1, 1, 3, 1.2}} {
		laws := [3]*Linear{normal(c.own), normal(c.other)}
		if c.shared > 0 {
			laws[2] = normal(c.shared)
		}
		shared := c.shared * c.shared
		first, second, both := c.own*c.own+shared, c.other*c.other+c.r*c.r*shared, c.r*shared
		rho := (first - second) / math.Sqrt((first+second)*(first+second)-4*both*both)
		near.Absolute(t, fmt.Sprintf("%+v", c), 0.5+math.Asin(rho)/math.Pi, LinearChance(laws, 0, 0, c.r), 1e-4)
	}
}

// TestRegress: constructed. What b explains is taken away, never more than all of b and never the
// opposite of it; where b is the same in all trials it counts whole unless nearly 0 or 1.
func TestRegress(t *testing.T) {
	for _, c := range []struct {
		a, b   []float64
		nearly float64
		weight float64
	}{
		{[]float64{0.2, 0.4, 0.3, 0.5}, []float64{0.2, 0.6, 0.4, 0.8}, 0, 0.5},
		{[]float64{0.2, 0.8, 0.2, 0.8}, []float64{0.4, 0.6, 0.4, 0.6}, 0, 1},
		{[]float64{0.8, 0.2, 0.8, 0.2}, []float64{0.4, 0.6, 0.4, 0.6}, 0, 0},
		{[]float64{0.1, 0.2, 0.3, 0.4}, []float64{0.5, 0.5, 0.5, 0.5}, 0.01, 1},
		{[]float64{0.1, 0.2, 0.3, 0.4}, []float64{0.001, 0.001, 0.001, 0.001}, 0.01, 0},
	} {
		what := fmt.Sprint(c.a, c.b)
		weight, gain := Regress(c.a, c.b, c.nearly)
		near.Absolute(t, what, c.weight, weight, 1e-12)
		assert.Greater(t, gain, 1.0, what)
	}
}
