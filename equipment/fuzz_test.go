package equipment

import (
	"context"
	"errors"
	"math"
	"testing"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty"
)

// FuzzKit checks that any bytes give a kit or a mistake, and that each
// instrument of a kit can be used at its capacity: no panic, and no figure that
// is not finite.
func FuzzKit(f *testing.F) {
	own := oneCylinder + "division = \"0.2 mL\"\ntolerance = \"0.2 mL\"\n"
	for _, seed := range []string{
		statedKit, readingsKit, "", "\xff", "title = \"x\"", oneFlask + "class = \"A\"", onePipette,
		oneBalance + "weighing-uncertainty = \"8 mg\"\nspan = \"0.1 % of reading\"\ncount = 2",
		oneBalance + "linearity = \"0.03 g\"\nreadings = [\"1e300 g\", \"-1e300 g\"]",
		"[[balance]]\nname = \"x\"\ncapacity = \"1e9 g\"\nreadability = \"1e-300 g\"",
		"[[balance]]\nname = \"x\"\ncapacity = \"0.7 g\"\nreadability = \"0.1 g\"",
		"[[balance]]\nname = \"x\"\ncapacity = \"0.25 g\"\nreadability = \"0.1 g\"",
		own + "retained = { mean = \"1e-300 mL\", spread = \"1e-300 mL\" }", own + "retained = { mean = \"0.1 mL\", spread = \"1e-9 mL\" }",
		own + "retained = { mean = \"0 mL\", spread = \"0 mL\" }", own + "readings = [\"1 mL\", \"1 mL\", \"1 mL\", \"1 mL\"]",
		onePipette + "bore = \"1e160 mm\"", onePipette + "repeatability = \"1e-320 mL\"\nbetween-marks = 0.3\nmaterial = \"pp\"",
		"[[flask]]\nname = \"x\"\ncapacity = \"1e300 mL\"\nstandard-uncertainty = \"1 mL\"\nexpansion = \"1e300 /°C\"",
		"[[cylinder]]\nname = \"x\"\ncapacity = \"10 mL\"\ndivision = \"3 mL\"\ntolerance = \"1e-300 mL\"\nshape = \"rectangular\"",
		"[[cylinder]]\nname = \"x\"\ncapacity = \"1e9 mL\"\ndivision = \"1e-300 mL\"\ntolerance = \"1 mL\"",
		wholeBench, cylinderForLine + oneJar + "bore = \"40 mm\"", bareCylinder + oneJar + "count = 3", onePiston, tenSyringe, oneSyringe + "single-use = true",
		oneBurette, hundredCylinder + keepsSome + "marked = \"Ex\"", oneMillilitre + "retained = { mean = \"0.01 mL\", spread = \"0.02 mL\" }",
		oneDropper + "drop = \"0.001 mL\"\ntolerance = \"99 % of reading\"", oneDropper + "readings = [\"0.04 mL\", \"0.05 mL\", \"0.06 mL\", \"0.05 mL\"]",
		oneFlask + "correction = { value = \"-9.9 mL\", expanded = \"9.9 mL\", k = 1 }", onePiston + "tolerance = \"1e-300 mL\"\nrepeatability = \"1e-300 mL\"",
		withCandidates, tenSyringe + "numbered = \"0.003 mL\"\nprice = \"0 x\"", own + "numbered = \"9.9999999999 mL\"",
		"[[cylinder]]\nname = \"x\"\ncapacity = \"1.00000001 mL\"\ndivision = \"0.00003 mL\"\ntolerance = \"0 mL\"",
		"[[beaker]]\nname = \"x\"\ncapacity = \"2 L\"\nform = \"unmarked\"\nbore = \"130 mm\"\nclinging = \"1 mL\"",
		"[[conical-flask]]\nname = \"x\"\ncapacity = \"1e9 mL\"\ntolerance = \"50 % of capacity\"\n[[jar]]\nname = \"j\"\nline = \"1e-6 mL\"\nset-with = \"x\"",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		kit, err := ParseKit("bench.toml", data)
		if err != nil {
			if m := (*benchfile.Mistake)(nil); !errors.As(err, &m) || m.Message == "" {
				t.Fatalf("not a mistake: %v", err)
			}
			return
		}
		for _, name := range kit.Candidates.Names() {
			kit = kit.With(name)
		}
		for _, b := range kit.Balances {
			tryBalance(t, b)
		}
		for _, k := range kit.Measures {
			tryMeasure(t, k)
			tryMarks(t, k)
		}
	})
}

// tryBalance weighs the most that the balance shows, and finds its least mass.
func tryBalance(t *testing.T, b *Balance) {
	most := math.Floor(b.Capacity/b.Readability*(1+1e-12)) * b.Readability
	finite(t, b.Name, b.Uncertainty(most), b.Uncertainty(b.Readability))
	trial(t, func(u Use) (uncertainty.Node, error) { return b.Weigh(u, most, u.Step, onBoat) })
	trial(t, func(u Use) (uncertainty.Node, error) {
		tare := b.PanWith(Stated{most / 3, true}, false)
		first, err := b.WeighBetween(u.next("gross"), most, useNamed("tare"), tare)
		if err != nil {
			return 0, err
		}
		second, err := b.WeighBetween(u, most, useNamed("gross"), b.Under(tare, most))
		return u.Model.Subtract(u.Model.Add(first, second), b.LeftBehind(u, most/2)), err
	})
	for _, share := range []float64{0.1, 0.001} {
		if least, ok := b.Least(share); ok {
			finite(t, b.Name, least, b.Uncertainty(least))
		}
	}
	if text := b.Display(most) + quantity.Grams(most); len(text) > 100 {
		t.Fatalf("%s is no reading", text)
	}
}

// tryMeasure fills and empties the instrument at its capacity, in each way, on a
// warm day, with a second mark in use, with water and with ethanol, as it comes and
// with a film in it.
func tryMeasure(t *testing.T, k *Measure) {
	finite(t, k.Name, k.Uncertainty(k.Capacity), uncertainty.SummaryOf(k.Bias.Shape.within(k.Limit(k.Capacity))).StandardUncertainty)
	for _, share := range []float64{0.1, 0.001} {
		if least, ok := k.Least(share); ok {
			finite(t, k.Name, least, k.Uncertainty(least))
		}
	}
	for _, how := range []struct {
		use      func(Use, float64) (uncertainty.Node, error)
		liquid   string
		emptying Emptying
	}{
		{k.Contain, water, drained}, {k.Deliver, "ethanol", drained}, {k.Deliver, water, Rinsed}, {k.Deliver, water, BlownOut},
		{func(u Use, _ float64) (uncertainty.Node, error) { return k.Drops(u, 7) }, "ethanol", drained},
	} {
		trial(t, func(u Use) (uncertainty.Node, error) {
			u = of(on(u, 25, 5, 2.1e-4), how.liquid)
			u.Marks, u.LineMarks, u.StepReading, u.Piece, u.Emptying = 2, 2, firstTime, k.Count, how.emptying
			volume, err := how.use(u, k.Capacity)
			if err != nil {
				return 0, err
			}
			return u.Model.Add(volume, k.Film(u)), nil
		})
	}
}

// tryMarks reads the instrument at each of its marks, which rise to its capacity.
func tryMarks(t *testing.T, k *Measure) {
	for _, fine := range []bool{false, true} {
		last := 0.0
		for _, mark := range k.Marks(fine) {
			if err := k.Reads(mark); err != nil || mark <= last {
				t.Fatalf("%s: %v after %v: %v", k.Name, mark, last, err)
			}
			last = mark
		}
		if last != k.Capacity && !k.Kind.Traits().Counts {
			t.Fatalf("%s: the last mark is %v, not %v", k.Name, last, k.Capacity)
		}
	}
}

// trial propagates what a use gives, and draws from it.
func trial(t *testing.T, use func(Use) (uncertainty.Node, error)) {
	u := alone()
	out, err := use(u)
	if err != nil {
		t.Fatal(err)
	}
	a, err := u.Model.Propagate(out, 0.95)
	if err != nil {
		t.Fatal(err)
	}
	mc, err := u.Model.Simulate(context.Background(), out, uncertainty.Settings{Trials: 10000, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	finite(t, "one use", a.Value, a.StandardUncertainty, a.ExpandedUncertainty, mc.Mean, mc.Quantile(0.1), mc.Quantile(0.9))
}

func finite(t *testing.T, what string, figures ...float64) {
	t.Helper()
	for _, x := range figures {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%s: %v", what, figures)
		}
	}
}
