package rescue

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/near"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// TestAdviceKeepsItsPromise makes 60 random batches on random kits, 100 in .ci/long, most of them far
// from what was wanted, carries the advice out with errors drawn by hand, not by the
// engine, and counts how often the batch ends inside the tolerance. The number must agree
// with the sum of the chances that were promised: it is a sum of independent yes and no,
// with the variance Σ p (1 - p).
func TestAdviceKeepsItsPromise(t *testing.T) {
	smallbench.SkipIfSlow(t)
	r := rand.New(rand.NewPCG(7, 11))
	promised, variance, inside, advised := 0.0, 0.0, 0, 0
	kinds := make(map[string]int)
	benches := brutes(60)
	for advised < benches {
		p, batch := randomBatch(t, r)
		found, err := Find(context.Background(), p, batch, uncertainty.Settings{Trials: 10_000, Seed: 1})
		var none *NoWayError
		if errors.As(err, &none) {
			continue
		}
		require.NoError(t, err)
		advised++
		way := &found.Results[found.Verdict.Use]
		kinds[found.Kinds[found.Verdict.Use].Code]++
		promised += way.Chance()
		variance += way.Chance() * (1 - way.Chance())
		if p.Tolerances[0].Limits.Permits(newHands(r, p).strength(way.Route)) {
			inside++
		}
	}
	z := (float64(inside) - promised) / math.Sqrt(variance)
	assert.Less(t, math.Abs(z), 2.58, "%d of %d were inside, %.1f were promised", inside, advised, promised)
	assert.Greater(t, len(kinds), 5, "advice of most kinds: %v", kinds)
	assert.Greater(t, promised, float64(benches)/2, "most of the advice is good enough")
	assert.Greater(t, variance, float64(benches)/40, "some of it is doubtful")
}

// randomBatch is a prep on a random kit, and a batch that was made for it.
func randomBatch(t *testing.T, r *rand.Rand) (*route.Prep, *route.Route) {
	t.Helper()
	d := []string{"0.001", "0.01"}[r.IntN(2)]
	kit := fmt.Sprintf("[[balance]]\nname = \"scale\"\ncapacity = \"200 g\"\nreadability = \"%s g\"\nrepeatability = \"%s g\"\nlinearity = \"%s g\"\n", d, d, d)
	for i, c := range []float64{1 + r.Float64(), 5 + 5*r.Float64()} {
		capacity := math.Round(c)
		kit += fmt.Sprintf("[[pipette]]\nname = \"pipette %d\"\nkind = \"graduated\"\ncapacity = \"%v mL\"\ndivision = \"%v mL\"\ntolerance = \"%.3f mL\"\nretained = \"0 mL\"\n", i, capacity, capacity/5, capacity*(0.005+0.02*r.Float64()))
	}
	for i, c := range []float64{25, 50 + 50*float64(r.IntN(2))} {
		kit += fmt.Sprintf("[[cylinder]]\nname = \"cylinder %d\"\ncapacity = \"%v mL\"\ndivision = \"%v mL\"\ntolerance = \"%.3f mL\"\nretained = \"0 mL\"\nclinging = \"0 mL\"\n", i, c, c/10, c*(0.005+0.02*r.Float64()))
	}
	grams := math.Round(100*(0.5+r.Float64())) / 100
	target := 10 * grams // g/L, of 0.1 L
	off := math.Exp(math.Log(0.7) + r.Float64()*math.Log(20/0.7))
	prep := fmt.Sprintf(`target = "%.5f g/L"
volume = "%d mL"
tolerance = "%.1f %% of target"
least-chance = "80 %%"
bench = { reading = "careful" }
[solute]
name = "urea"
specific-volume = "0 mL/g"
[solvent]
name = "water"
`, target/off, 5+r.IntN(15), 2+6*r.Float64())
	if r.IntN(3) > 0 {
		prep += fmt.Sprintf("[[stock]]\nname = \"strong\"\nstrength = { from = \"%.4f g/L\", to = \"%.4f g/L\" }\n", 4*target, 4.1*target)
	}
	p := smallbench.On(t, prep, "shape = \"rectangular\"\n"+kit)
	k := p.Kit
	steps := []route.Step{
		{Verb: route.Weigh, Amount: grams / 4, Balance: k.Balances[0]},
		{Verb: route.MakeUpTo, Amount: 25, Measure: k.Measure("cylinder 0")},
	}
	steps[0].Amount = math.Round(grams*25) / 100
	if r.IntN(2) == 0 {
		pipette := k.Measure("pipette 1")
		steps = append(steps, route.Step{Verb: route.Take, Amount: pipette.Capacity, Measure: pipette},
			route.Step{Verb: route.MakeUpTo, Amount: 20, Measure: k.Measure("cylinder 0")})
	}
	return p, &route.Route{Name: "batch", Steps: steps}
}

// hands carry a route out, with errors that are drawn as the documentation of the
// measurement model says: rounding at zero and at the load, repeatability without that,
// linearity, of two loads on the pan, each the sum of a curve over the range and an error of
// that load; of a measure its bias within the limit, as a part that all marks share and
// one of each mark, equal in variance and of the shape of the limit; reading a scale
// carefully, triangular within 0.2 divisions, twice for a part of a pipette.
type hands struct {
	r      *rand.Rand
	biases map[string]float64
	used   map[*equipment.Measure]map[float64]bool
	stock  float64
}

func newHands(r *rand.Rand, p *route.Prep) *hands {
	h := &hands{r: r, biases: make(map[string]float64), used: make(map[*equipment.Measure]map[float64]bool)}
	if len(p.Stocks) > 0 {
		d := p.Stocks[0].Strength.Distribution.(uncertainty.Rectangular)
		h.stock = d.Low + (d.High-d.Low)*r.Float64()
	}
	return h
}

func (h *hands) flat(limit float64) float64 { return limit * (2*h.r.Float64() - 1) }

func (h *hands) peaked(limit float64) float64 { return limit * (h.r.Float64() - h.r.Float64()) }

func (h *hands) weigh(s *route.Step) float64 {
	d, sd := s.Balance.Readability, s.Balance.Repeatability.S
	pure := math.Sqrt(sd*sd - d*d/6)
	kind := "vessel"
	if s.Verb == route.Weigh || s.Verb == route.AddSolute {
		kind = "boat"
	}
	return s.Amount + h.flat(d/2) + h.flat(d/2) + pure*h.r.NormFloat64() + h.linearity(s.Balance, kind, s.Amount) - h.linearity(s.Balance, kind, 0)
}

// linearity is the error at a load of a balance of 200 g, in a boat or a vessel.
func (h *hands) linearity(b *equipment.Balance, kind string, load float64) float64 {
	nodes := []float64{0, 2, 4, 10, 20, 40, 100, 200}
	k := 0
	for load > nodes[k+1] {
		k++
	}
	node := func(k int) float64 {
		part := func(k int) float64 { return h.drawn(fmt.Sprint(b.Name, " curve ", k), b.Linearity.Value/2) }
		return part(k) + part(k+1)
	}
	w := (load - nodes[k]) / (nodes[k+1] - nodes[k])
	local := fmt.Sprint(b.Name, " near ", kind, math.Floor(math.Round(load/b.Readability)/3), load == 0)
	if _, known := h.biases[local]; !known {
		h.biases[local] = h.peaked(b.Linearity.Value)
	}
	return h.biases[local] + ((1-w)*node(k)+w*node(k+1))/math.Sqrt(1-w+w*w)
}

func (h *hands) volume(s *route.Step) float64 {
	k := s.Measure
	readings := 1
	if k.Kind == "graduated" && s.Amount < k.Capacity*(1-1e-9) {
		readings = 2
	}
	v := s.Amount + h.bias(k, s.Amount)
	for range readings {
		v += h.peaked(0.2 * k.Division)
	}
	return v
}

func (h *hands) bias(k *equipment.Measure, mark float64) float64 {
	if len(h.used[k]) == 1 {
		return h.drawn(k.Name, k.Limit(mark))
	}
	common := h.drawn(k.Name+" in common", k.Limit(mark)/math.Sqrt2)
	return common + h.drawn(fmt.Sprintf("%s at %v", k.Name, mark), k.Limit(mark)/math.Sqrt2)
}

func (h *hands) drawn(name string, limit float64) float64 {
	if _, known := h.biases[name]; !known {
		h.biases[name] = h.flat(limit)
	}
	return h.biases[name]
}

// densityOfWater in g/mL at 20 °C.
const densityOfWater = 0.9982

// strength in g/L of what a route ends in.
func (h *hands) strength(r *route.Route) float64 {
	for i := range r.Steps {
		if s := &r.Steps[i]; s.Measure != nil {
			if h.used[s.Measure] == nil {
				h.used[s.Measure] = make(map[float64]bool)
			}
			h.used[s.Measure][s.Amount] = true
		}
	}
	type solution struct{ grams, mL float64 }
	var made []solution // by step
	var now solution
	var concentration float64 // of the parent, g/mL
	for i := range r.Steps {
		s := &r.Steps[i]
		switch s.Verb {
		case route.Weigh:
			now = solution{grams: h.weigh(s)}
		case route.MakeUpTo:
			now.mL = h.volume(s)
		case route.Take:
			if i > 0 && r.Steps[i-1].Verb != route.Take {
				concentration, now = now.grams/now.mL, solution{}
			}
			a := h.volume(s)
			now.grams, now.mL = now.grams+concentration*a, now.mL+a
		case route.TakeAll:
		case route.WeighAliquot: // urea takes up no volume here, and a solution of c g/mL weighs 1 + c
			if i > 0 && r.Steps[i-1].Verb != route.Take {
				concentration = now.grams / now.mL
			}
			now = solution{grams: concentration * h.weigh(s) / (densityOfWater + concentration)}
		case route.WeighUpTo:
			total := h.weigh(s)
			now.mL = (total - now.grams) / densityOfWater
		case route.Add:
			now.mL += h.volume(s)
		case route.AddSolute:
			now.grams += h.weigh(s)
		case route.Strengthen:
			v, c := h.volume(s), h.stock/1000
			if s.From > 0 {
				c = made[s.From-1].grams / made[s.From-1].mL
			}
			now.grams, now.mL = now.grams+c*v, now.mL+v
		}
		made = append(made, now)
	}
	return 1000 * now.grams / now.mL
}

// Bottles that exact glass weakens (constructed): what is not needed stays in them.
func TestRescueOfABottle(t *testing.T) {
	p := smallbench.On(t, "target = \"10 g/L\"\nvolume = \"60 mL\"\n[solute]\nname = \"urea\"\n[solvent]\nname = \"water\"\n", strings.NewReplacer("CAP", "100 mL", "DIV", "1 mL").Replace(`
[[cylinder]]
name = "cylinder"
capacity = "CAP"
division = "DIV"
tolerance = "0 mL"
reading = "none"
retained = "0 mL"
clinging = "0 mL"
`))
	for text, want := range map[string]struct {
		name           string
		made, setAside float64
	}{
		"100 g/L, 40 mL": {"6 in 60 mL", 60, 34},
		"20 g/L, 40 mL":  {"30 + 30 mL", 60, 10},
		"15 g/L, 40 mL":  {"all + 20 mL", 60, 0},
	} {
		bottle, err := Bottle(p, text)
		require.NoError(t, err)
		found, err := Find(context.Background(), p, &route.Route{Name: "bottle", Steps: []route.Step{{Verb: route.Start, Stock: bottle}}}, uncertainty.Settings{Trials: 10_000})
		require.NoError(t, err)
		use := found.Verdict.Use
		assert.Equal(t, want.name, found.Results[use].Route.Name, text)
		near.Relative(t, "made of "+text, want.made, found.Results[use].MadeML, 1e-9)
		near.Absolute(t, "set aside of "+text, want.setAside, found.SetAside(use), 1e-9)
		near.Relative(t, "strength of "+text, 10, found.Results[use].Analytic.Value, 1e-9)
	}
}

// What cannot be corrected, or not to any use, is said to be so.
// The batch as it is is normal: Φ(0.2) - Φ(-0.6) = 0.3050.
func TestNoRescue(t *testing.T) {
	p := smallbench.On(t, "target = \"10 g/L\"\nvolume = \"5 mL\"\n[solute]\nname = \"urea\"\n[solvent]\nname = \"water\"\n", "[[cylinder]]\nname = \"c\"\ncapacity = \"10 mL\"\nclass = \"B\"\n")
	p.Tolerances = []route.Tolerance{{Text: "2 % of target", Limits: uncertainty.Limits{Lower: 9.8, Upper: 10.2}}}
	for text, message := range map[string]string{
		"10.1 g/L, give or take 1 g/L, 5 mL": "no way to correct the batch was found: of 8 corrections that were tried the best is inside 28.2 in 100, and as it is the batch is so 30.5 in 100; what is uncertain of it stays uncertain in whatever is made of it; not tried: diluting a part more than twice, or twice at other marks than the numbered ones from 20 % of a scale on",
		"5 g/L, 5 mL":                        "no way to correct the batch was found: it is too weak, and there is neither a stronger solution nor a balance that weighs so little solute",
		"10 g/L, give or take 1 g/L, 5 mL":   "no way to correct the batch was found: it has that strength already",
		"2000 g/L, 5 mL":                     "no way to correct the batch was found: it would have to be diluted 200 times, which neither all of it in one vessel nor a part of it in one step or two comes to; not tried: diluting a part more than twice, or twice at other marks than the numbered ones from 20 % of a scale on",
	} {
		bottle, err := Bottle(p, text)
		require.NoError(t, err)
		_, err = Find(context.Background(), p, &route.Route{Steps: []route.Step{{Verb: route.Start, Stock: bottle}}}, uncertainty.Settings{Trials: 10_000})
		assert.EqualError(t, err, message, text)
	}
}

// What is a little too strong is not to be diluted "1 times".
func TestNoRescueOfWhatIsNearlyRight(t *testing.T) {
	k, err := read.ParseKit("kit", []byte("[[flask]]\nname = \"f\"\ncapacity = \"100 mL\"\ntolerance = \"0.1 mL\"\n"))
	require.NoError(t, err)
	p, err := read.ParsePrep("prep", []byte("target = \"10 g/L\"\nvolume = \"100 mL\"\ntolerance = \"0.0001 % of target\"\n[solute]\nname = \"urea\"\n[solvent]\nname = \"water\"\n"), k)
	require.NoError(t, err)
	for text, times := range map[string]string{"10.004 g/L, 100 mL": "1.0004", "10.0003 g/L, 100 mL": "1.00003", "10.3 g/L, 100 mL": "1.03"} {
		bottle, err := Bottle(p, text)
		require.NoError(t, err)
		_, err = Find(context.Background(), p, &route.Route{Steps: []route.Step{{Verb: route.Start, Stock: bottle}}}, uncertainty.Settings{Trials: 10_000})
		assert.ErrorContains(t, err, "it would have to be diluted "+times+" times, ")
	}
}
