package rescue

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// strongBottle is a bottle that is too strong by far for the small glass of a random kit, so that a part has to be diluted twice.
func strongBottle(t *testing.T, r *rand.Rand) (*route.Prep, *route.Route) {
	t.Helper()
	capacity := []int{2, 5, 10}[r.IntN(3)]
	kit := fmt.Sprintf("shape = \"rectangular\"\n[[pipette]]\nname = \"pipette\"\nkind = \"graduated\"\ncapacity = \"%d mL\"\ndivision = \"%v mL\"\ntolerance = \"%.4f mL\"\nretained = \"0 mL\"\n", capacity, float64(capacity)/50, float64(capacity)*(0.001+0.002*r.Float64()))
	mL := []int{25, 50}[r.IntN(2)]
	kit += fmt.Sprintf("[[cylinder]]\nname = \"cylinder\"\ncapacity = \"%d mL\"\ndivision = \"%v mL\"\ntolerance = \"%.4f mL\"\nretained = \"0 mL\"\nclinging = \"0 mL\"\n", mL, float64(mL)/50, float64(mL)*(0.001+0.002*r.Float64()))
	p := smallbench.On(t, fmt.Sprintf("target = \"0.1 g/L\"\nvolume = \"%d mL\"\ntolerance = \"%d %% of target\"\n[solute]\nname = \"exemplate\"\nspecific-volume = \"0.5 mL/g\"\n[solvent]\nname = \"water\"\n", 2+r.IntN(6), 6+r.IntN(8)), kit)
	bottle, err := Bottle(p, fmt.Sprintf("%.2f g/L, %d mL", 5+20*r.Float64(), 3+r.IntN(10)))
	require.NoError(t, err)
	return p, &route.Route{Name: "bottle", Steps: []route.Step{{Verb: route.Start, Stock: bottle}}}
}

// twice calls look for every two dilutions of a part, filled up or with measured solvent, at the numbered marks.
func twice(p *route.Prep, batch *route.Route, look func(strength float64, steps ...route.Step)) {
	type diluted struct {
		times float64
		steps [2]route.Step
	}
	var ways []diluted
	eachMark := func(of func(k *equipment.Measure, mL float64)) {
		for _, k := range p.Kit.Measures {
			for _, mL := range k.Marks(false) {
				of(k, mL)
			}
		}
	}
	eachMark(func(d *equipment.Measure, part float64) {
		take := route.Measuring(route.Take, d, part)
		eachMark(func(k *equipment.Measure, mL float64) {
			ways = append(ways, diluted{part / (part + mL), [2]route.Step{take, route.Measuring(route.Add, k, mL)}})
			if k.Kind.Traits().Receives && mL > part {
				ways = append(ways, diluted{part / mL, [2]route.Step{take, {Verb: route.MakeUpTo, Amount: mL, Measure: k}}})
			}
		})
	})
	for _, first := range ways {
		for _, second := range ways {
			if first.steps[0].Amount <= 0.95*batch.Steps[0].Stock.Volume.Value {
				look(batch.Steps[0].Stock.Strength.Value*first.times*second.times, first.steps[0], first.steps[1], second.steps[0], second.steps[1])
			}
		}
	}
}

// Of all two dilutions of a part of 12 strong bottles none that is surely sure enough leaves less over, by more than a quarter of the
// volume wanted, than the one that is recommended, where nothing simpler is sure enough.
func TestNoBetterTwoDilutions(t *testing.T) {
	smallbench.SkipIfSlow(t)
	r := rand.New(rand.NewPCG(5, 29))
	compared := 0
	for n := range 12 {
		p, batch := strongBottle(t, r)
		found, err := Find(context.Background(), p, batch, uncertainty.Settings{Trials: 20_000, Seed: 1})
		if err == nil && found.Kinds[found.Verdict.Use].Code != string(diluteTwice) {
			continue
		}
		least, name := -1.0, ""
		twice(p, batch, func(strength float64, steps ...route.Step) {
			if strength < 0.97*p.Target.Value || strength > 1.03*p.Target.Value {
				return
			}
			a, err := p.Assess(&route.Route{Name: "twice", Steps: slices.Concat(batch.Steps, steps), Made: 1}, 0.95)
			require.NoError(t, err)
			if !a.Possible || !a.Informative || !a.Enough(p.Volume) || a.Inside[0].Normal < p.Ask().Halved()+0.004 || !contest.LeavesEnough(&a) || least >= 0 && a.LeftOverML >= least {
				return
			}
			require.NoError(t, p.Misread(&a))
			if !p.OutsideIfMisread(&a) {
				least, name = a.LeftOverML, fmt.Sprint(steps[0].Amount, steps[1].Amount, steps[2].Amount, steps[3].Amount)
			}
		})
		if least < 0 {
			continue
		}
		compared++
		if assert.NoError(t, err, "bench %d: %s leaves %v mL", n, name, least) {
			assert.GreaterOrEqual(t, found.used().Chance(), p.Ask().Halved(), "bench %d", n)
			assert.LessOrEqual(t, found.used().LeftOverML, least+p.Ask().Near()+1e-9, "bench %d: %s leaves less than %s", n, name, found.used().Route.Name)
		}
	}
	assert.Greater(t, compared, 4)
}
