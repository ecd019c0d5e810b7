package rounding

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRoundExpanded(t *testing.T) {
	justUnder := 10.1010101010101 // 1000/99 is the least U above 10 whose cut is 1 % of it
	for _, c := range []struct {
		value, expanded float64
		v, u            string
	}{
		// JCGM 100, 7.2.6: 10.47 mΩ becomes 11, 28.05 kHz becomes 28.
		{0, 10.47, "0", "11"}, {0, 28.05, "0", "28"},
		// JCGM 100, 7.2.6: y = 10.057 62 Ω with u = 27 mΩ is stated as 10.058 Ω.
		{10.05762, 0.027, "10.058", "0.027"},
		// H.1.7 of the same: l = 50.000 838 mm ± 0.000 093 mm.
		{50.000838, 0.000093, "50.000838", "0.000093"},
		// The rest constructed by the rule. One step of the double about 1 %.
		{0, justUnder, "0", "10"}, {0, math.Nextafter(justUnder, 11), "0", "11"},
		{0, 10, "0", "10"}, {0, 10.1, "0", "10"}, {0, 10.11, "0", "11"}, {0, 50.5, "0", "50"}, {0, 50.51, "0", "51"},
		{1.005, 0.0101, "1.005", "0.010"}, {1.005, 0.0102, "1.005", "0.011"},
		{5, 9.6, "5.0", "9.6"}, {5, 9.69, "5.0", "9.6"}, {5, 9.699, "5.0", "9.7"}, {5, 1, "5.0", "1.0"},
		// Above 98 the part cut off is under 1 % of U up to the next digit.
		{0, 98.98, "0", "98"}, {0, 98.99, "0", "99"}, {0, 99, "0", "99"}, {0, 99.99, "0", "99"}, {0, 100, "0", "100"},
		// Halves of the value go away from zero, in decimals.
		{0.105, 0.10, "0.11", "0.10"}, {-0.105, 0.10, "-0.11", "0.10"}, {0.1049999999999999, 0.10, "0.10", "0.10"},
		{2.675, 0.12, "2.68", "0.12"}, {1.005, 0.12, "1.01", "0.12"}, {0.5, 10, "1", "10"}, {-0.5, 10, "-1", "10"},
		{-0.4, 10, "0", "10"}, {99.96, 1.5, "100.0", "1.5"}, {-12.345, 0.013, "-12.345", "0.013"},
		// Small and large.
		{1.23456e-9, 4.5e-11, "0.000000001235", "0.000000000045"},
		{1.23456e-9, 4.51e-10, "0.00000000123", "0.00000000045"},
		{1234567890, 1.23e9, "1200000000", "1300000000"}, {1234567890, 12345, "1234568000", "13000"}, {149, 1100, "100", "1100"},
		{3, 1e9, "0", "1000000000"}, {1e-9, 1, "0.0", "1.0"},
		// Nothing uncertain: the value as it is.
		{12.5, 0, "12.5", "0"}, {-1e-9, 0, "-0.000000001", "0"},
	} {
		v, u := Expanded(c.value, c.expanded)
		assert.Equal(t, c.v+" ± "+c.u, v+" ± "+u, "%v ± %v", c.value, c.expanded)
	}
}

func TestRoundTo(t *testing.T) {
	for _, c := range []struct {
		value float64
		place int
		want  string
	}{
		{1.25, -1, "1.3"}, {-1.25, -1, "-1.3"}, {1.2499999999999998, -1, "1.2"}, {0.045, -2, "0.05"}, {7, -3, "7.000"},
		{15, 1, "20"}, {14.999999999999998, 1, "10"}, {149, 2, "100"}, {0, -2, "0.00"}, {-0.001, -2, "0.00"}, {99.995, -2, "100.00"},
	} {
		assert.Equal(t, c.want, roundTo(c.value, c.place), "%v to 10^%d", c.value, c.place)
	}
}

func TestRoundPanics(t *testing.T) {
	for _, c := range []struct {
		value, expanded float64
		message         string
	}{
		{1, -1, "rounding: cannot round 1 ± -1"},
		{math.NaN(), 1, "rounding: cannot round NaN ± 1"},
		{1, math.NaN(), "rounding: cannot round 1 ± NaN"},
		{math.Inf(1), 1, "rounding: cannot round +Inf ± 1"},
		{1, math.Inf(1), "rounding: cannot round 1 ± +Inf"},
	} {
		assert.PanicsWithValue(t, c.message, func() { Expanded(c.value, c.expanded) })
	}
}

// TestRoundProperties states the rule in exact fractions for random numbers of
// 1 to 17 digits and any size.
func TestRoundProperties(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	number := func() (float64, *big.Rat) {
		digits := strconv.FormatInt(random.Int64N(int64(math.Pow(10, float64(1+random.IntN(17))))), 10)
		text := fmt.Sprintf("%se%d", digits, random.IntN(40)-30)
		x, _ := strconv.ParseFloat(text, 64)
		exact, _ := new(big.Rat).SetString(strconv.FormatFloat(x, 'g', -1, 64))
		return x, exact
	}
	for range 5_000 {
		x, value := number()
		if random.IntN(2) == 0 {
			x, value = -x, value.Neg(value)
		}
		e, expanded := number()
		if e == 0 {
			continue
		}
		v, u := Expanded(x, e)
		if fault := roundingFault(value, expanded, v, u); fault != "" {
			t.Errorf("%v ± %v printed as %s ± %s: %s", x, e, v, u, fault)
		}
	}
}

// roundingFault says what is wrong with a printed result, if anything is.
func roundingFault(value, expanded *big.Rat, v, u string) string {
	printedV, _ := new(big.Rat).SetString(v)
	printedU, _ := new(big.Rat).SetString(u)
	unit := lastOfTwo(expanded)
	cut := new(big.Rat).Sub(expanded, printedU)
	onePercent := new(big.Rat).Mul(expanded, big.NewRat(1, 100))
	atFloor := new(big.Rat).Add(cut, unit)
	off := new(big.Rat).Sub(printedV, value)
	twice := new(big.Rat).Abs(new(big.Rat).Add(off, off))
	away := new(big.Rat).Mul(off, value).Sign() >= 0
	_, decimalsV, _ := strings.Cut(v, ".")
	_, decimalsU, _ := strings.Cut(u, ".")
	switch {
	case !new(big.Rat).Quo(printedU, unit).IsInt():
		return "U has more than two digits"
	case cut.Sign() >= 0 && cut.Cmp(onePercent) >= 0:
		return "U lost 1 % or more"
	case cut.Sign() < 0 && (atFloor.Sign() <= 0 || atFloor.Cmp(onePercent) < 0):
		return "U was raised without need"
	case !new(big.Rat).Quo(printedV, unit).IsInt():
		return "the value has more places than U"
	case twice.Cmp(unit) > 0 || twice.Cmp(unit) == 0 && !away:
		return "the value is not the nearest"
	case len(decimalsV) != len(decimalsU):
		return "value and U have different places"
	}
	return ""
}

// lastOfTwo is the unit of the second significant digit of a positive number.
func lastOfTwo(x *big.Rat) *big.Rat {
	ten, unit := big.NewRat(10, 1), big.NewRat(1, 1)
	for new(big.Rat).Quo(x, unit).Cmp(ten) < 0 {
		unit.Quo(unit, ten)
	}
	for new(big.Rat).Quo(x, unit).Cmp(big.NewRat(100, 1)) >= 0 {
		unit.Mul(unit, ten)
	}
	return unit
}
