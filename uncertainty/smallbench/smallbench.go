// Package smallbench holds, for tests of what searches routes and of what stands above it, small
// benches that are made up, the glass of two textbooks, and what these tests need besides.
package smallbench

import (
	"fmt"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	read "minim/uncertainty/bench"
	"minim/uncertainty/route"
)

const Kit = `
[[balance]]
name = "scale"
capacity = "100 g"
readability = "0.01 g"
repeatability = "0.01 g"
linearity = "0.02 g"
` + Measures

const Measures = `
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "5 mL"
class = "B"
` + Cylinder

const Cylinder = `
[[cylinder]]
name = "cylinder"
capacity = "50 mL"
class = "B"
clinging = "0.05 mL"
`

// TwoReadings tell of this balance beside its linearity: far from normal, and not of one scale, are both together.
const TwoReadings = `
[[balance]]
name = "two readings"
capacity = "100 g"
readability = "0.001 g"
readings = ["1.000 g", "1.005 g"]
linearity = "0.01 g"
`

const Prep = `
target = "0.1 % w/v"
volume = "20 mL"
tolerance = "8 % of target"
[solute]
name = "urea"
assay = { from = "98 %", to = "100 %" }
price = "2 EUR/g"
[solvent]
name = "water"
price = "0.01 EUR/mL"
`

const Candidates = `
[[candidate]]
kind = "balance"
name = "fine balance"
capacity = "100 g"
readability = "0.001 g"
repeatability = "0.001 g"
linearity = "0.002 g"
price = "300 EUR"
[[candidate]]
kind = "balance"
name = "finest balance"
capacity = "100 g"
readability = "0.0001 g"
repeatability = "0.0001 g"
linearity = "0.0002 g"
price = "2000 EUR"
`

const PacketPrep = `
volume = "20 mL"
[solute]
name = "urea"
[solvent]
name = "water"
[[packet]]
name = "sachet"
content = "1 g"
[[stock]]
name = "stock"
strength = "10 % w/v"
`

// On reads a prep on a kit.
func On(t testing.TB, prep, kit string) *route.Prep {
	t.Helper()
	k, err := read.ParseKit("kit", []byte(kit))
	require.NoError(t, err)
	p, err := read.ParsePrep("prep", []byte("kit = \"kit\"\n"+prep), k)
	require.NoError(t, err)
	return p
}

// Words names all that the steps of a route do, and with what.
func Words(r *route.Route) string {
	var words strings.Builder
	for i := range r.Steps {
		s := &r.Steps[i]
		fmt.Fprintf(&words, "%s %v", s.Verb, s.Amount)
		switch {
		case s.Measure != nil:
			words.WriteString(s.Measure.Name)
		case s.Balance != nil:
			words.WriteString(s.Balance.Name)
		case s.Stock != nil:
			words.WriteString(s.Stock.Name)
		case s.Packet != nil:
			words.WriteString(s.Packet.Name)
		}
	}
	return words.String()
}

// OnProcessors works something out on so many processors.
func OnProcessors[T any](n int, work func() T) T {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(n))
	return work()
}

// Thorough is false under the race detector.
var Thorough = true

// SkipIfSlow leaves out under the race detector what takes long in the way of other tests.
func SkipIfSlow(t *testing.T) {
	t.Helper()
	if !Thorough {
		t.Skip("run without the race detector")
	}
}

// Harvey is the glass of Harvey, Analytical Chemistry 2.0, chapter 4, by standard uncertainties in
// mL; ISO that of class A by ISO 648 and ISO 1042, triangular within the limit.
var (
	Harvey = map[string]map[float64]float64{
		"pipette": {1: 0.006, 5: 0.01, 10: 0.02, 20: 0.03, 25: 0.03, 50: 0.05},
		"flask":   {100: 0.08, 500: 0.20, 1000: 0.30},
	}
	ISO = map[string]map[float64]float64{
		"pipette": {1: 0.008 / root6, 5: 0.015 / root6, 10: 0.02 / root6, 20: 0.03 / root6, 25: 0.03 / root6, 50: 0.05 / root6},
		"flask":   {100: 0.1 / root6, 250: 0.15 / root6, 500: 0.25 / root6, 1000: 0.4 / root6},
	}
)

const root6 = 2.449489742783178

// Glass writes such a set, of so many pieces each.
func Glass(set map[string]map[float64]float64, pieces int) string {
	var kit strings.Builder
	for _, kind := range []string{"pipette", "flask"} {
		var sizes []float64
		for size := range set[kind] {
			sizes = append(sizes, size)
		}
		slices.Sort(sizes)
		for _, size := range sizes {
			fmt.Fprintf(&kit, "[[%s]]\nname = \"%s %v\"\ncapacity = \"%v mL\"\nstandard-uncertainty = \"%.12f mL\"\nreading = \"none\"\nexpansion = \"0 /K\"\ncount = %d\n", kind, kind, size, size, set[kind][size], pieces)
			if kind == "pipette" {
				kit.WriteString("kind = \"one-mark\"\n")
			}
		}
	}
	return kit.String()
}
