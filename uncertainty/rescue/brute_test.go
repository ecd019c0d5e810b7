package rescue

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/contest"
	"minim/uncertainty/policy"
	"minim/uncertainty/route"
	"minim/uncertainty/search"
	"minim/uncertainty/smallbench"
)

// smallBottle is a prep on a random small kit, and a bottle that is too strong or too weak for it.
func smallBottle(t *testing.T, r *rand.Rand) (*route.Prep, *route.Route) {
	t.Helper()
	kit := "shape = \"rectangular\"\n[[balance]]\nname = \"scale\"\ncapacity = \"100 g\"\nreadability = \"0.01 g\"\n"
	for i := range 1 + r.IntN(2) {
		capacity := []int{1, 2, 5, 10}[r.IntN(4)]
		kit += fmt.Sprintf("[[pipette]]\nname = \"pipette %d\"\nkind = \"graduated\"\ncapacity = \"%d mL\"\ndivision = \"%v mL\"\ntolerance = \"%.4f mL\"\nretained = \"0 mL\"\n", i, capacity, float64(capacity)/10, float64(capacity)*(0.002+0.02*r.Float64()))
	}
	for i := range 1 + r.IntN(2) {
		capacity := []int{10, 25, 50}[r.IntN(3)]
		kit += fmt.Sprintf("[[cylinder]]\nname = \"cylinder %d\"\ncapacity = \"%d mL\"\ndivision = \"%v mL\"\ntolerance = \"%.4f mL\"\nretained = \"0 mL\"\nclinging = \"%v mL\"\n", i, capacity, float64(capacity)/25, float64(capacity)*(0.002+0.01*r.Float64()), float64(r.IntN(2))*0.1)
	}
	limit := []string{"tolerance = \"%d %% of target\"", "not-below = \"0.9%d g/L\"", "not-above = \"1.0%d g/L\""}[max(0, r.IntN(6)-3)]
	prep := "target = \"1 g/L\"\n" + fmt.Sprintf("volume = \"%d mL\"\n", 4+r.IntN(12)) + fmt.Sprintf(limit, 2+r.IntN(7)) +
		"\n[solute]\nname = \"exemplate\"\nspecific-volume = \"0.5 mL/g\"\n[solvent]\nname = \"water\"\n"
	if r.IntN(4) > 0 {
		prep += fmt.Sprintf("[[stock]]\nname = \"strong\"\nstrength = \"%d g/L\"\nvolume = \"20 mL\"\n", []int{2, 5, 20, 50}[r.IntN(4)])
	}
	p := smallbench.On(t, prep, kit)
	strength := math.Exp(math.Log(0.6) + r.Float64()*math.Log(12/0.6))
	bottle, err := Bottle(p, fmt.Sprintf("%.4f g/L, give or take %.5f g/L, %d mL", strength, strength*(0.001+0.02*r.Float64()*r.Float64()), 3+r.IntN(15)))
	require.NoError(t, err)
	return p, &route.Route{Name: "bottle", Steps: []route.Step{{Verb: route.Start, Stock: bottle}}}
}

// everyCorrection calls try for all corrections with one measurement or two, in whatever order they come: every
// graduation of everything that measures, and every reading of the scale near enough to come inside.
func everyCorrection(p *route.Prep, batch *route.Route, try func(kind way, steps ...route.Step)) {
	graduated := func(k *equipment.Measure) (list []float64) {
		for n := 1.0; n*k.Finest() < k.Capacity*(1+1e-9); n++ {
			list = append(list, n*k.Finest())
		}
		return list
	}
	each := func(of func(k *equipment.Measure, mL float64)) {
		for _, k := range p.Kit.Measures {
			for _, mL := range graduated(k) {
				of(k, mL)
			}
		}
	}
	is, volume, largest := batch.Steps[0].Stock.Strength.Value, batch.Steps[0].Stock.Volume.Value, 0.0
	for _, k := range p.Kit.Measures {
		if k.Kind.Traits().Receives {
			largest = max(largest, k.Capacity)
		}
	}
	each(func(k *equipment.Measure, mL float64) {
		if k.Kind.Traits().Receives && mL > volume {
			try(fillUp, all, route.Step{Verb: route.MakeUpTo, Amount: mL, Measure: k})
		}
		if volume*is <= largest { // else nothing holds it
			try(addSolvent, all, route.Measuring(route.Add, k, mL))
		}
		for _, s := range p.Stocks {
			add := route.Measuring(route.Strengthen, k, mL)
			add.Stock = s
			try(strengthenAll, all, add)
			each(func(with *equipment.Measure, solvent float64) {
				if is < 1 && volume*is+mL*s.Strength.Value <= largest {
					try(strengthenAndAdd, all, add, route.Measuring(route.Add, with, solvent))
				}
			})
		}
		if mL > 0.95*volume || is < 1 {
			return
		}
		each(func(with *equipment.Measure, to float64) {
			if mL*is <= largest {
				try(dilutePart, route.Measuring(route.Take, k, mL), route.Measuring(route.Add, with, to))
			}
			if with.Kind.Traits().Receives && to > mL {
				try(dilutePart, route.Measuring(route.Take, k, mL), route.Step{Verb: route.MakeUpTo, Amount: to, Measure: with})
			}
		})
	})
	each(func(k *equipment.Measure, mL float64) { // of a stock that was diluted at numbered marks
		for _, s := range p.Stocks {
			add := route.Measuring(route.Strengthen, k, mL)
			add.From = 3
			for _, d := range p.Kit.Measures {
				for _, x := range d.Marks(false) {
					take := route.Measuring(route.Take, d, x)
					take.Stock = s
					for _, v := range p.Kit.Measures {
						for _, mark := range v.Marks(false) {
							if c := (is*volume + s.Strength.Value*x/mark*mL) / (volume + mL); c < 0.8 || c > 1.25 {
								continue // as below
							}
							if is < 1 && v.Kind.Traits().Receives && mark > x && s.Strength.Value*x/mark > 1 && mL <= 0.95*mark {
								try(diluteFirst, take, route.Step{Verb: route.MakeUpTo, Amount: mark, Measure: v}, route.Step{Verb: route.TakeAll, Stock: batch.Steps[0].Stock}, add)
							}
						}
					}
				}
			}
		}
	})
	if volume*max(1, is) <= largest || is < 1 {
		severalFills(p, batch, each, try)
	}
	partsByWeighing(p, batch, try)
	scale := p.Kit.Balances[0]
	for n := 1.0; is < 1 && n <= 20; n++ {
		try(addMore, all, route.Step{Verb: route.AddSolute, Amount: scale.Displayed(n), Balance: scale})
	}
}

// severalFills calls try for all corrections that add an instrument full once to four times, and then a reading of any.
func severalFills(p *route.Prep, batch *route.Route, each func(of func(k *equipment.Measure, mL float64)), try func(kind way, steps ...route.Step)) {
	is, volume := batch.Steps[0].Stock.Strength.Value, batch.Steps[0].Stock.Volume.Value
	add := func(kind way, verb route.Verb, stock *route.Stock, strength float64) {
		with := func(steps []route.Step, mL float64) {
			if c := (is*volume + strength*mL) / (volume + mL); c > 0.8 && c < 1.25 {
				steps = append([]route.Step{all}, steps...)
				for i := range steps[1:] {
					steps[i+1].Stock = stock
				}
				try(kind, steps...)
			}
		}
		for _, full := range p.Kit.Measures {
			var steps []route.Step
			for n := 1.0; n <= 4; n++ {
				steps = append(steps[:len(steps):len(steps)], route.Measuring(verb, full, full.Capacity))
				with(steps, n*full.Capacity)
				each(func(k *equipment.Measure, mL float64) {
					with(append(steps[:len(steps):len(steps)], route.Measuring(verb, k, mL)), n*full.Capacity+mL)
				})
			}
		}
	}
	if is > 1 {
		add(addSolvent, route.Add, nil, 0)
		return
	}
	for _, s := range p.Stocks {
		add(strengthenAll, route.Strengthen, s, s.Strength.Value)
	}
}

// partsByWeighing calls try for all parts that a scale weighs which come near the target, up to every total that it shows
// in tenths of a gram and that may be chosen.
func partsByWeighing(p *route.Prep, batch *route.Route, try func(kind way, steps ...route.Step)) {
	is, scale := batch.Steps[0].Stock.Strength.Value, p.Kit.Balances[0]
	for tenths := math.Ceil(p.Volume * 10); tenths <= 15.5*p.Volume; tenths++ {
		total := scale.Displayed(tenths * 10)
		for n := math.Ceil(total / is * 92); n <= total/is*108; n++ {
			if part := scale.Displayed(n); part <= 0.95*batch.Steps[0].Stock.Volume.Value && part < total && is > 1 {
				try(weighPart, route.Step{Verb: route.WeighAliquot, Amount: part, Balance: scale}, route.Step{Verb: route.WeighUpTo, Amount: total, Balance: scale})
			}
		}
	}
}

// brute is what the policy chooses of all corrections that are surely inside often enough, to first order.
type brute struct {
	figures []policy.Figures
	names   []string
	kinds   []way
	// elsewhere: it does not aim at the target.
	elsewhere []bool
}

// atTarget are those of all but what a correction of the same kind that aims at the target makes needless: it takes no more
// measurements, and leaves over hardly more, or takes fewer and leaves no more.
func (b brute) atTarget(near float64) (kept brute) {
	for i, f := range b.figures {
		needless := false
		for j, g := range b.figures {
			is := b.kinds[i] == b.kinds[j] && !b.elsewhere[j]
			needless = needless || is && b.elsewhere[i] && g.Operations <= f.Operations && g.LeftOver <= f.LeftOver+near || is && g.Operations < f.Operations && g.LeftOver <= f.LeftOver+1e-9
		}
		if !needless {
			kept.figures, kept.names = append(kept.figures, f), append(kept.names, b.names[i])
		}
	}
	return kept
}

// everything works out all corrections of a batch that are at least so sure, and inside whatever is misread.
func everything(t *testing.T, p *route.Prep, batch *route.Route, least float64) (found brute) {
	t.Helper()
	everyCorrection(p, batch, func(kind way, steps ...route.Step) {
		whole := &route.Route{Name: string(kind), Steps: slices.Concat(batch.Steps, steps), Made: 1}
		aim, err := p.Aim(whole)
		require.NoError(t, err)
		if !aim.Possible || aim.Strength < 0.8 || aim.Strength > 1.25 || aim.MadeML < p.Volume*(1-1e-9) {
			return // what clings shifts no strength by more
		}
		a, err := p.Assess(whole, 0.95)
		require.NoError(t, err)
		if !a.Possible || !a.Informative || a.Inside[0].Normal < least || !search.Near(p, a.Analytic.Value) {
			return
		}
		require.NoError(t, p.Misread(&a))
		if p.OutsideIfMisread(&a) {
			return
		}
		a.Inside[0].Simulated = a.Inside[0].Normal
		found.figures = append(found.figures, p.Figures(&a))
		amounts := []any{kind}
		for _, s := range steps {
			amounts = append(amounts, " ", s.Amount)
		}
		found.names, found.kinds = append(found.names, fmt.Sprint(amounts...)), append(found.kinds, kind)
		found.elsewhere = append(found.elsewhere, contest.Elsewhere(p, &a))
	})
	return found.atTarget(p.Ask().Near() + 1e-9)
}

// sure are those with so great a chance.
func (b brute) sure(least float64) (some brute) {
	for i, f := range b.figures {
		if f.Chance >= least {
			some.figures, some.names = append(some.figures, f), append(some.names, b.names[i])
		}
	}
	return some
}

// leastLeftOver of those with so many measurements.
func (b brute) leastLeftOver(operations int) float64 {
	least := math.Inf(1)
	for _, f := range b.figures {
		if f.Operations == operations {
			least = min(least, f.LeftOver)
		}
	}
	return least
}

// ofEachNumber is the place of what the policy chooses of those that it chooses for each number of measurements,
// as a plan does.
func ofEachNumber(p *route.Prep, all []policy.Figures) int {
	var some []policy.Figures
	var places []int
	for n := range 6 {
		var of []policy.Figures
		var at []int
		for i, f := range all {
			if f.Operations == n {
				of, at = append(of, f), append(at, i)
			}
		}
		if len(of) > 0 {
			use := p.Ask().Choose(of).Use
			some, places = append(some, of[use]), append(places, at[use])
		}
	}
	return places[p.Ask().Choose(some).Use]
}

// brutes are how many random benches a test looks at, or as many as MINIM_BRUTE says.
func brutes(usual int) int {
	if n, err := strconv.Atoi(os.Getenv("MINIM_BRUTE")); err == nil {
		return n
	}
	return usual
}

// Of all corrections of 25 random small kits, or more in .ci/long, with every graduation of everything, none is better than the
// one that is recommended, by the policy: where one is surely sure enough the recommended is, and none leaves less over,
// takes fewer measurements, is read better or rounder or takes less solute. What is sure enough is told to within
// 0.4 in 100, since chances that are recommended are simulated.
func TestNoBetterCorrection(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 17))
	smallbench.SkipIfSlow(t)
	kits, sure, kinds := brutes(25), 0, map[string]int{}
	for n := range kits {
		p, batch := smallBottle(t, r)
		nearly := everything(t, p, batch, p.Ask().Halved()-0.004)
		all := nearly.sure(p.Ask().Halved() + 0.004)
		rescue, err := Find(context.Background(), p, batch, uncertainty.Settings{Trials: 20_000, Seed: 1})
		name := fmt.Sprintf("bench %d: %s, %s", n, batch.Steps[0].Stock.Strength.Distribution, p.Tolerances[0].Text)
		if len(all.figures) == 0 {
			continue
		}
		sure++
		if !assert.NoError(t, err, "%s: %v", name, all.names[:1]) {
			continue
		}
		used := rescue.used()
		kinds[rescue.Kinds[rescue.Verdict.Use].Code]++
		got := p.Figures(used)
		assert.GreaterOrEqual(t, got.Chance, p.Ask().Halved(), "%s: %s is sure enough", name, all.names[0])
		assert.False(t, got.OutsideIfMisread, name)
		best := ofEachNumber(p, append(all.figures, got))
		if best == len(all.figures) {
			continue
		}
		ideal := all.figures[best]
		if ideal.LeftOver > nearly.leastLeftOver(ideal.Operations)+p.Ask().Near()+1e-9 {
			continue // one that may be sure enough leaves so much less that this is none to choose
		}
		assert.Equal(t, []any{ideal.Operations, ideal.LowOnScale, ideal.BothWays, ideal.TooLarge, ideal.Roundness}, []any{got.Operations, got.LowOnScale, got.BothWays, got.TooLarge, got.Roundness},
			"%s: %s is better than %s", name, all.names[best], used.Route.Name)
		assert.InEpsilon(t, ideal.Solute, got.Solute, 1e-6, "%s: %s takes less than %s", name, all.names[best], used.Route.Name)
	}
	assert.Greater(t, sure, kits/3, "on enough benches something is sure enough")
	assert.Greater(t, len(kinds), 2, "%v", kinds)
}
