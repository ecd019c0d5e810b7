package route

import (
	"context"
	"errors"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/uncertainty"
)

// FuzzPrep: any bytes are either refused with a mistake that has a place, or
// are a prep whose routes can be compared without a panic and without a number
// that is not finite.
func FuzzPrep(f *testing.F) {
	kit, err := LoadKit("../../cmd/minim/demo/bench.toml")
	require.NoError(f, err)
	demo, err := os.ReadFile(demoPrep)
	require.NoError(f, err)
	f.Add(demo)
	f.Add([]byte(stockPrep(`{ take = "1 mL", with = "1 mL pipette" }, { add = "9 mL", with = "10 mL cylinder" },`)))
	f.Add([]byte(strings.Replace(stockPrep(`{ take = "all" }, { strengthen = "1 mL", of = "stock", with = "1 mL pipette" }, { add-solute = "0.1 g", on = "0.01 g scale" },`),
		"strength = \"10 g/L\"", "strength = \"10 g/L\"\nvolume = \"5 mL\"", 1)))
	f.Add([]byte("target = \"1e300 mg/L\"\nvolume = \"1e-9 mL\"\nsolute = { name = \"x\" }\nsolvent = { name = \"y\" }\nroute = [ { name = \"r\", steps = [] } ]\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := ParsePrep("prep.toml", data, kit)
		if err != nil {
			var m *benchfile.Mistake
			if !errors.As(err, &m) || m.Line < 1 || m.Column < 1 {
				t.Fatalf("no place: %v", err)
			}
			return
		}
		if len(p.Routes) > 4 {
			p.Routes = p.Routes[:4]
		}
		c, err := Compare(context.Background(), p, "", uncertainty.Settings{Trials: 10_000, Seed: 1, Coverage: 0.95})
		if err != nil {
			return
		}
		for i := range c.Results {
			checkFinite(t, &c.Results[i])
		}
	})
}

func checkFinite(t *testing.T, r *Result) {
	if !r.Possible {
		return
	}
	for _, x := range []float64{
		r.Intended, r.Analytic.Value, r.Analytic.ExpandedUncertainty, r.MonteCarlo.Mean, r.MonteCarlo.Lower,
		r.Quoted.Lower, r.Quoted.Upper, r.CrossCheck.OfExpanded, r.SoluteGrams, r.MadeML, r.LeftOverML, r.AssumedShare, r.HoldsWithin,
	} {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%s gives %v", r.Route.Name, x)
		}
	}
}
