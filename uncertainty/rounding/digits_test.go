package rounding

import (
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/portable"
)

// To the nearest, constructed but for the factors: t tables of JCGM 100, G.2.
func TestThreeDigits(t *testing.T) {
	for _, c := range []struct {
		x    float64
		want string
	}{
		{0, "0"}, {1.95996, "1.96"}, {12.7062, "12.7"}, {3.18245, "3.18"}, {2, "2.00"}, {0.0014312, "0.00143"}, {0.0014350, "0.00144"},
		{9.994, "9.99"}, {9.995, "10.0"}, {99.96, "100"}, {999.5, "1000"}, {1234, "1230"}, {0.99949, "0.999"}, {0.9995, "1.00"}, {1e-9, "0.00000000100"},
	} {
		assert.Equal(t, c.want, ThreeDigits(c.x), "%v", c.x)
	}
}

// TestFactorsGiveExpanded over 10 000 random results: |U - k u| of what is printed is at most
// one unit of the last digit of U.
func TestFactorsGiveExpanded(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	three := 0
	for range 10_000 {
		standard, factor := math.Pow(10, 12*random.Float64()-8), -portable.StudentQuantile(0.25*(1-0.9998*random.Float64()), math.Pow(10, 4*random.Float64()))
		exactly := standard * factor
		u, k := Factors(standard, factor, exactly)
		_, expanded := Expanded(0, exactly)
		if fault := factorsFault(u, k, expanded, exactly); fault != "" {
			t.Errorf("u = %s, k = %s, U = %s of %v and %v: %s", u, k, expanded, standard, factor, fault)
		}
		if significant(k) == 3 {
			three++
		}
	}
	assert.Greater(t, three, 9_900, "more digits are for U just under 99")
	u, k := Factors(50.351, 1.9655, 50.351*1.9655) // 98.965: printed as 98, and 50.4 times 1.97 is 99.3
	assert.Equal(t, []string{"50.35", "1.966"}, []string{u, k})
}

func significant(number string) int {
	return len(strings.TrimLeft(strings.ReplaceAll(number, ".", ""), "0"))
}

func factorsFault(u, k, printed string, expanded float64) string {
	number := func(text string) *big.Rat { x, _ := new(big.Rat).SetString(text); return x }
	unit := lastOfTwo(new(big.Rat).SetFloat64(expanded))
	off := new(big.Rat).Sub(new(big.Rat).Mul(number(u), number(k)), number(printed))
	switch {
	case off.Abs(off).Cmp(unit) > 0:
		return "they do not give U"
	case significant(u) < 3 || significant(k) < 3:
		return "fewer than three digits"
	}
	return ""
}
