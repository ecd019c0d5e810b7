package uncertainty

import (
	"encoding/csv"
	"maps"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
)

// conformanceFigures works out each figure of testdata/published/conformance.csv
// from the data that stand in its note, under "example: quantity".
var conformanceFigures = map[string]func() float64{
	"table 1: z for p = 0.80":  func() float64 { return guardBand(0.80, 1, infinitely) },
	"table 1: z for p = 0.90":  func() float64 { return guardBand(0.90, 1, infinitely) },
	"table 1: z for p = 0.95":  func() float64 { return guardBand(0.95, 1, infinitely) },
	"table 1: z for p = 0.99":  func() float64 { return guardBand(0.99, 1, infinitely) },
	"table 1: z for p = 0.999": func() float64 { return guardBand(0.999, 1, infinitely) },

	"Zener diode: z":                              func() float64 { return scoreOf(zener, Limits{noLower, -5.40}) },
	"Zener diode: conformance probability":        func() float64 { return chanceOf(zener, Limits{noLower, -5.40}) },
	"pressure container: z":                       func() float64 { return scoreOf(container, Limits{490, noUpper}) },
	"pressure container: conformance probability": func() float64 { return chanceOf(container, Limits{490, noUpper}) },

	"motor oil: z of the upper limit":                     func() float64 { return scoreOf(oil, Limits{noLower, 16.3}) },
	"motor oil: z of the lower limit":                     func() float64 { return scoreOf(oil, Limits{noLower, 12.5}) },
	"motor oil: below the upper limit":                    func() float64 { return chanceOf(oil, Limits{noLower, 16.3}) },
	"motor oil: below the lower limit":                    func() float64 { return chanceOf(oil, Limits{noLower, 12.5}) },
	"motor oil: conformance probability":                  func() float64 { return chanceOf(oil, Limits{12.5, 16.3}) },
	"motor oil: conformance probability with z rounded":   func() float64 { return chanceOf(Normal{Mu: 0, Sigma: 1}, Limits{-0.6, 1.5}) },
	"capability 1: C_m = T/(4 u)":                         func() float64 { return capability(Limits{0, 1}, 0.25) },
	"capability 1: C_m = T/(2 U)":                         func() float64 { return capability(Limits{0, 1}, 0.5/2) },
	"capability 1: least value for p = 0.95":              func() float64 { return acceptance(Limits{0, 1}, 0.95, 0.25, infinitely).Lower },
	"capability 1: greatest value for p = 0.95":           func() float64 { return acceptance(Limits{0, 1}, 0.95, 0.25, infinitely).Upper },
	"capability 1: conformance probability in the middle": func() float64 { return chanceOf(Normal{Mu: 0.5, Sigma: 0.25}, Limits{0, 1}) },
	"error within a third: C_m":                           func() float64 { return capability(Limits{-1, 1}, 1.0/3/2) },

	"coverage: within 1 u": func() float64 { return chanceOf(Normal{Mu: 0, Sigma: 1}, Limits{-1, 1}) },
	"coverage: within 2 u": func() float64 { return chanceOf(Normal{Mu: 0, Sigma: 1}, Limits{-2, 2}) },
	"coverage: within 3 u": func() float64 { return chanceOf(Normal{Mu: 0, Sigma: 1}, Limits{-3, 3}) },

	"simple acceptance: risk at the limit":                         func() float64 { return riskAtTheLimit(0) },
	"guarded acceptance: risk at the limit for w = 2 u":            func() float64 { return riskAtTheLimit(2) },
	"guarded acceptance: risk at the limit for w = U and k = 2":    func() float64 { return riskAtTheLimit(2) },
	"guarded acceptance: risk at the limit for w = U and k = 1.96": func() float64 { return riskAtTheLimit(1.96) },
	"guarded acceptance: risk at the limit for w = 1.645 u":        func() float64 { return riskAtTheLimit(1.645) },
	"guarded acceptance: w/u for a risk of 5 % at the limit":       func() float64 { return guardBand(0.95, 1, infinitely) },
	"guarded rejection: risk at the limit for w = -2 u":            func() float64 { return riskAtTheLimit(-2) },
	"speed limit: greatest speed not fined with z rounded":         func() float64 { return speedNotFined(3.09) },
	"speed limit: greatest speed not fined":                        func() float64 { return speedNotFined(-guardBand(0.001, 1, infinitely)) },
	"nandrolone: t":                                                func() float64 { return guardBand(0.95, 1, 9) },
	"nandrolone: guard band":                                       func() float64 { return guardBand(0.95, 0.20, 9) },
	"nandrolone: acceptance limit":                                 func() float64 { return acceptance(Limits{noLower, 2.00}, 0.05, 0.20, 9).Upper },
	"resistors: conformance without inspection":                    func() float64 { return chanceOf(resistor, Limits{1499.8, 1500.2}) },
	"resistors: global consumer's risk":                            func() float64 { c, _ := resistorRisks(); return c },
	"resistors: global producer's risk":                            func() float64 { _, p := resistorRisks(); return p },
}

var (
	zener     = Normal{Mu: -5.47, Sigma: 0.05}
	container = Normal{Mu: 509.7, Sigma: 8.6}
	oil       = Normal{Mu: 13.6, Sigma: 1.8}
	resistor  = Normal{Mu: 1500, Sigma: 0.12}
)

// acceptance panics where nothing can be accepted.
func acceptance(l Limits, p, u, degreesOfFreedom float64) Limits {
	a, err := l.AcceptanceLimits(p, u, degreesOfFreedom)
	if err != nil {
		panic(err)
	}
	return a
}

// guardBand is the one that an upper limit needs.
func guardBand(p, u, degreesOfFreedom float64) float64 {
	return -acceptance(Limits{noLower, 0}, p, u, degreesOfFreedom).Upper
}

// scoreOf is the distance of a value from its limit in units of u, as the
// guard band that gives its conformance probability.
func scoreOf(d Normal, l Limits) float64 {
	return guardBand(chanceOf(d, l), 1, infinitely)
}

func capability(l Limits, u float64) float64 {
	c, _ := l.MeasurementCapability(u)
	return c
}

// riskAtTheLimit is the specific consumer's risk of a value at the acceptance
// limit, for a guard band of w u.
func riskAtTheLimit(w float64) float64 {
	tolerance := Limits{noLower, 10}
	a, err := tolerance.guarded(w * 0.5)
	if err != nil {
		panic(err)
	}
	return 1 - chanceOf(Normal{Mu: a.Upper, Sigma: 0.5}, tolerance)
}

// speedNotFined solves v = 100 + 0.02 v z, whose guard band grows with v.
func speedNotFined(z float64) float64 { return 100 / (1 - 0.02*z) }

// TestSpeedLimit: at the speed of the closed form, the rule for a constant u
// gives that speed back, and a driver conforms with a probability of 0.1 %.
func TestSpeedLimit(t *testing.T) {
	v := speedNotFined(3.0902323)
	limit := Limits{noLower, 100}
	near.Relative(t, "acceptance limit", v, acceptance(limit, 0.001, 0.02*v, infinitely).Upper, 1e-8)
	near.Relative(t, "conforming", 0.001, chanceOf(Normal{Mu: v, Sigma: 0.02 * v}, limit), 1e-6)
}

func resistorRisks() (consumer, producer float64) {
	return Inspection{resistor, 0.04, Limits{1499.8, 1500.2}, Limits{1499.82, 1500.18}}.GlobalRisks()
}

// TestPublishedConformance holds every row of the table, recomputed and
// published, to half a unit of the last digit that it prints.
func TestPublishedConformance(t *testing.T) {
	file, err := os.Open("../testdata/published/conformance.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, []string{"example", "quantity", "recomputed", "published", "note", "source"}, rows[0])
	var names []string
	for _, row := range rows[1:] {
		name := row[0] + ": " + row[1]
		names = append(names, name)
		assert.Equal(t, true, row[2]+row[3] != "" && row[5] != "", "%s has a figure and a source", name)
		if figure := conformanceFigures[name]; figure != nil {
			printedAs(t, name+", recomputed", row[2], figure())
			printedAs(t, name+", published", row[3], figure())
		}
	}
	// Rows without a figure, figures without a row, and rows that stand twice.
	assert.Equal(t, slices.Sorted(maps.Keys(conformanceFigures)), slices.Sorted(slices.Values(names)))
}

// printedAs compares a value with a printed number, that may be a percentage or
// an upper bound, or empty.
func printedAs(t *testing.T, what, text string, value float64) {
	t.Helper()
	if text == "" {
		return
	}
	number, isPercent := strings.CutSuffix(text, " %")
	number, isBound := strings.CutPrefix(number, "< ")
	printed, err := strconv.ParseFloat(number, 64)
	require.NoError(t, err)
	if isPercent {
		value *= 100
	}
	if isBound {
		assert.Equal(t, true, value < printed, what)
		return
	}
	_, decimals, _ := strings.Cut(number, ".")
	near.Absolute(t, what, printed, value, 0.5*math.Pow10(-len(decimals)))
}
