package search

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
	"minim/uncertainty/smallbench"
)

// TestFrontIsExact holds the front against an enumeration of all routes on
// random kits that are small enough for it (constructed).
func TestFrontIsExact(t *testing.T) {
	smallbench.SkipIfSlow(t)
	kits, few := uint64(9), true
	if n, err := strconv.ParseUint(os.Getenv("MINIM_BRUTE"), 10, 64); err == nil {
		kits, few = n, false
	}
	for seed := range kits {
		steps := 1
		if seed%3 == 0 && !(few && seed%4 == 1) { // with readings it takes ten times as long
			steps = 2
		}
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			frontIsExact(t, randomPrep(t, rand.New(rand.NewPCG(seed, 1)), steps, seed%4 == 1), steps)
		})
	}
}

// frontIsExact compares the front of a prep, by all chances, by levels and by lower ones, with all
// routes, and says how many there are that no other beats.
func frontIsExact(t *testing.T, p *route.Prep, steps int) (compared int) {
	all := bruteForce(t, p, steps)
	for _, cancel := range []int{0, 1} { // pieces that pull both ways
		o := Options{Limits: route.Limits{Steps: steps}, All: cancel > 0}
		b, err := NewBench(p, o)
		require.NoError(t, err)
		for _, j := range []judge{newJudge(p, 0.95, tooLittle, enough), levelled(p, 0.95), atLevels(p, 0.95, lower...)} {
			if len(p.Tolerances) == 0 && j.levels != nil {
				continue
			}
			s := newSearch(b, o, j)
			got, err := s.result(context.Background())
			require.NoError(t, err)
			want := judged(p, all, &s.judge, cancel)
			assert.Equal(t, describe(want), describe(got), "%d, %v", cancel, j.levels)
			compared += len(want)
		}
	}
	return compared
}

// judged are those of all routes that no other beats, with no more pieces that pull both ways.
func judged(p *route.Prep, all []route.Result, j *judge, cancel int) []found {
	var list []found
	for i := range all {
		r := &all[i]
		if m := j.merit(r); m.worth >= max(j.floor, -1e9) && bothWays(r.Route) <= cancel && contest.LeavesEnough(r) {
			list = append(list, found{*r, m, placesIn(p).signature(r.Route)})
		}
	}
	return unbeaten(list)
}

// surestPieces tries all ways to give the steps of a route to the pieces of its instruments, of
// which none is taken with and filled as well, and returns the first of those that are surest.
func surestPieces(t *testing.T, p *route.Prep, steps []route.Step) (best route.Result, found bool) {
	var give func(at int, steps []route.Step)
	give = func(at int, steps []route.Step) {
		if at == len(steps) {
			r, err := p.Assess(&route.Route{Name: "x", Steps: slices.Clone(steps)}, 0.95)
			require.NoError(t, err)
			if !found || r.Possible && r.Analytic.StandardUncertainty < best.Analytic.StandardUncertainty*(1-1e-9) {
				best, found = r, true
			}
			return
		}
		k := steps[at].Measure
		if k == nil || k.Count <= 1 {
			give(at+1, steps)
			return
		}
		for piece := 1; piece <= k.Count; piece++ {
			mixed, most := false, 0
			for i := range at {
				if s := &steps[i]; s.Measure == k {
					most = max(most, s.Piece)
					mixed = mixed || s.Piece == piece && takesWith(s.Verb) != takesWith(steps[at].Verb)
				}
			}
			if !mixed && piece <= most+1 {
				steps[at].Piece = piece
				give(at+1, steps)
			}
		}
	}
	give(0, slices.Clone(steps))
	return best, found
}

func takesWith(v route.Verb) bool { return v == route.Take || v == route.Measured }

// bothWays counts the pieces that are taken with, and filled or solvent added with as well.
func bothWays(r *route.Route) (pieces int) {
	taken, made := map[*equipment.Measure]bool{}, map[*equipment.Measure]bool{}
	for _, s := range r.Steps {
		switch s.Verb {
		case route.Take, route.Measured:
			taken[s.Measure] = true
		case route.MakeUpTo, route.Add, route.DissolveIn:
			made[s.Measure] = true
		}
	}
	for k := range taken {
		if made[k] && k.Count <= 1 { // of several, one is taken with and another filled
			pieces++
		}
	}
	return pieces
}

func describe(list []found) []string {
	var lines []string
	for _, f := range list {
		line := fmt.Sprintf("%d %.9g %.9g:", f.merit.operations, f.merit.leftOver, f.merit.worth)
		for _, s := range f.Route.Steps {
			line += fmt.Sprintf(" %s %v", s.Verb, s.Amount)
			if s.Measure != nil {
				line += " " + s.Measure.Name
			}
			if s.Balance != nil {
				line += " " + s.Balance.Name
			}
		}
		lines = append(lines, line)
	}
	slices.Sort(lines)
	return lines
}

// bruteForce builds every route from its beginning and evaluates it.
func bruteForce(t *testing.T, p *route.Prep, steps int) (all []route.Result) {
	var ends [][]route.Step // all lists of dilutions
	var grow func(done []route.Step, left int)
	grow = func(done []route.Step, left int) {
		ends = append(ends, slices.Clone(done))
		if left == 0 {
			return
		}
		for _, pipette := range p.Kit.Measures {
			if !pipette.Kind.Traits().Delivers {
				continue
			}
			for _, a := range pipette.Marks(false) {
				take := route.Step{Verb: route.Take, Amount: a, Measure: pipette}
				for _, other := range p.Kit.Measures {
					for _, v := range other.Marks(false) {
						if other.Kind.Traits().Receives {
							grow(append(slices.Clone(done), take, route.Step{Verb: route.MakeUpTo, Amount: v, Measure: other}), left-1)
						}
						if other.Kind.Traits().Delivers {
							grow(append(slices.Clone(done), take, route.Step{Verb: route.Add, Amount: v, Measure: other}), left-1)
						}
					}
				}
			}
		}
	}
	grow(nil, steps)
	consider := func(steps ...route.Step) {
		if r, found := surestPieces(t, p, steps); found && r.Possible && r.Informative && r.Enough(p.Volume) {
			all = append(all, r)
		}
	}
	dissolve := func(end []route.Step) {
		for _, k := range p.Kit.Measures {
			if !k.Kind.Traits().Delivers {
				continue
			}
			for _, v := range k.Marks(false) {
				in := route.Step{Verb: route.DissolveIn, Amount: v, Measure: k}
				if digit := strings.Trim(strconv.FormatFloat(v, 'f', -1, 64), "0."); len(end) > 0 && v != k.Capacity && digit != "1" && digit != "2" && digit != "5" {
					continue
				}
				for _, packet := range p.Packets {
					consider(append([]route.Step{{Verb: route.UsePacket, Packet: packet}, in}, end...)...)
				}
				for _, balance := range p.Kit.Balances {
					if grams, ok := nearestInSolvent(t, p, balance, in, end); ok {
						consider(append([]route.Step{{Verb: route.Weigh, Amount: grams, Balance: balance}, in}, end...)...)
					}
				}
			}
		}
	}
	for _, end := range ends {
		dissolve(end)
		for _, up := range weighedUpTotals(p, end) {
			for _, stock := range p.Stocks {
				if part, shown := nearestOfStock(p, stock, up, end); shown && len(end) < 2*steps && (stock.Solvent == "" || stock.Solvent == p.Solvent.Name) {
					consider(append([]route.Step{{Verb: route.Start, Stock: stock}, part, up}, end...)...)
				}
			}
			for _, packet := range p.Packets {
				consider(append([]route.Step{{Verb: route.UsePacket, Packet: packet}, up}, end...)...)
			}
			for _, balance := range p.Kit.Balances {
				if grams, ok := nearestInSolvent(t, p, balance, up, end); ok {
					consider(append([]route.Step{{Verb: route.Weigh, Amount: grams, Balance: balance}, up}, end...)...)
				}
			}
		}
		for _, stock := range p.Stocks {
			if len(end) > 0 {
				consider(append([]route.Step{{Verb: route.Start, Stock: stock}}, end...)...)
			}
		}
		for _, vessel := range p.Kit.Measures {
			if !vessel.Kind.Traits().Receives {
				continue
			}
			for _, v := range vessel.Marks(false) {
				up := route.Step{Verb: route.MakeUpTo, Amount: v, Measure: vessel}
				for _, packet := range p.Packets {
					consider(append([]route.Step{{Verb: route.UsePacket, Packet: packet}, up}, end...)...)
				}
				for _, k := range p.Kit.Measures {
					marks := k.Marks(false)
					if k.Kind.Traits().Counts {
						marks = byDrops
					}
					for _, a := range marks {
						if p.SoluteUnit() == "mL" && k.Kind.Traits().Delivers {
							consider(append([]route.Step{{Verb: route.Measured, Amount: a, Measure: k}, up}, end...)...)
						}
					}
				}
				for _, balance := range p.Kit.Balances {
					if grams, ok := nearestReading(p, balance, v, end); ok {
						consider(append([]route.Step{{Verb: route.Weigh, Amount: grams, Balance: balance}, up}, end...)...)
					}
				}
			}
		}
	}
	for _, steps := range bruteByWeighing(p, steps) {
		consider(steps...)
	}
	return all
}

// nearestReading tries readings until the strength intended is nearest to the
// target.
func nearestReading(p *route.Prep, b *equipment.Balance, v float64, end []route.Step) (float64, bool) {
	perGram := 1 / v
	if p.Solute.Assay.Known {
		perGram *= p.Solute.Assay.Value
	}
	for i := 0; i < len(end); i += 2 {
		total := end[i+1].Amount
		if end[i+1].Verb == route.Add {
			total += end[i].Amount
		}
		perGram *= end[i].Amount / total
	}
	digits := math.Floor(p.ConcentrationOf(p.Target.Value)/perGram/b.Readability + 0.5 + 1e-9)
	if digits < 1 {
		return 0, false
	}
	return b.Displayed(digits), true
}

// nearestInSolvent finds the reading for solute that is dissolved in measured solvent, or weighed up. Of
// a mass m the strength is α m/(1 + γ m), as the model says of two masses.
func nearestInSolvent(t *testing.T, p *route.Prep, b *equipment.Balance, in route.Step, end []route.Step) (float64, bool) {
	aim := func(grams float64) float64 {
		a, err := p.Aim(&route.Route{Name: "x", Steps: []route.Step{{Verb: route.Weigh, Amount: grams, Balance: b}, in}})
		require.NoError(t, err)
		return grams / a.Strength
	}
	one, two := b.Displayed(1), b.Displayed(2)
	slope := (aim(two) - aim(one)) / (two - one)
	start := aim(one) - slope*one
	strength := p.Target.Value
	for i := 0; i < len(end); i += 2 {
		total := end[i+1].Amount
		if end[i+1].Verb == route.Add {
			total += end[i].Amount
		}
		strength *= total / end[i].Amount
	}
	digits := math.Floor(strength*start/(1-strength*slope)/b.Readability + 0.5 + 1e-9)
	return b.Displayed(digits), strength*slope < 1 && digits >= 1 && digits*b.Readability <= b.Capacity
}

// randomPrep is a kit of few instruments with a target, of very few for routes
// with two dilutions; where it is so wanted, scale and pipettes are known from readings.
func randomPrep(t *testing.T, r *rand.Rand, steps int, withReadings bool) *route.Prep {
	pick := func(list ...string) string { return list[r.IntN(len(list))] }
	readings := func(of func(deviation float64) string) string {
		if !withReadings {
			return ""
		}
		list := make([]string, 2+r.IntN(4))
		for i := range list {
			list[i] = of(math.Round(100*r.NormFloat64()) / 10_000)
		}
		return fmt.Sprintf("readings = [%s]\n", strings.Join(list, ", "))
	}
	delivered := func(kit string) string { // of four or more the mean counts
		return strings.Replace(kit, "readings = [", "readings = { of = \"delivered\", values = [", 1)
	}
	var kit strings.Builder
	digits := 1 + r.IntN(4)
	fmt.Fprintf(&kit, "[[balance]]\nname = \"scale\"\ncapacity = \"200 g\"\nreadability = \"%.*f g\"\n", digits, math.Pow10(-digits))
	if r.IntN(2) == 0 {
		fmt.Fprintf(&kit, "span = \"0.1 %% of reading\"\nlinearity = \"0.01 g\"\n")
	}
	kit.WriteString(readings(func(d float64) string { return fmt.Sprintf("\"%.*f g\"", digits, 1+d) }))
	// Few numbered marks, so that there are few routes.
	for i := range 1 + r.IntN(2) {
		size := []string{"1", "2", "5", "10"}[r.IntN(4)]
		half := map[string]string{"1": "0.5", "2": "1", "5": "2.5", "10": "5"}[size]
		fmt.Fprintf(&kit, "[[pipette]]\nname = \"pipette %d\"\nkind = \"graduated\"\ncapacity = \"%s mL\"\nnumbered = \"%s mL\"\nclass = \"B\"\n", i, size, half)
		own := readings(func(d float64) string { return fmt.Sprintf("\"%.4f mL\"", 1+d) })
		if own != "" && size == "1" {
			own = strings.TrimSuffix(delivered(own), "\n") + " }\n"
		}
		kit.WriteString(own)
	}
	if steps == 1 && r.IntN(4) == 0 {
		kit.WriteString("[[pipette]]\nname = \"piston\"\nkind = \"piston\"\ncapacity = \"1 mL\"\nstandard = \"ISO\"\n")
	}
	for i := range 1 + r.IntN(2)/steps {
		size := []string{"10", "25", "50"}[r.IntN(3)]
		half := map[string]string{"10": "5", "25": "12.5", "50": "25"}[size]
		fmt.Fprintf(&kit, "[[cylinder]]\nname = \"cylinder %d\"\ncapacity = \"%s mL\"\nnumbered = \"%s mL\"\nclass = \"B\"\nclinging = \"0.05 mL\"\n", i, size, half)
		if r.IntN(2) == 0 {
			kit.WriteString("form = \"plastic\"\n")
		}
	}
	if r.IntN(2) == 0 {
		fmt.Fprintf(&kit, "[[flask]]\nname = \"flask\"\ncapacity = %q\nclass = \"A\"\nmaterial = \"borosilicate\"\n", pick("10 mL", "25 mL", "50 mL", "100 mL"))
	}
	k, err := read.ParseKit("kit", []byte(kit.String()))
	require.NoError(t, err)
	for _, m := range k.Measures { // pieces alike
		if !withReadings && r.IntN(4) == 0 {
			m.Count = 2 + r.IntN(2)
			if steps == 2 {
				break // there are many ways to share them out
			}
		}
	}
	strength := func(percent float64) string { return fmt.Sprintf("%v %% w/v", percent) }
	activity := r.IntN(4) == 0
	if activity {
		strength = func(percent float64) string { return fmt.Sprintf("%v U/mL", percent*unitsPerGram/100) }
	}
	target := []float64{1, 0.2, 0.04, 0.005}[r.IntN(4)]
	prep := fmt.Sprintf("kit = \"kit\"\ntarget = %q\nvolume = \"%d mL\"\n", strength(target), 5+r.IntN(20))
	switch r.IntN(6) {
	case 0:
	case 1:
		prep += fmt.Sprintf("not-above = %q\n", strength(1.05*target))
	default:
		prep += fmt.Sprintf("tolerance = %q\n", pick("2 % of target", "8 % of target", "20 % of target"))
	}
	prep += "bench = { temperature = \"23 °C\", within = \"3 °C\" }\n[solute]\nname = \"urea\"\n"
	if activity {
		prep += "activity = { value = \"30 U/mg\", expanded = \"2 U/mg\", k = 2 }\n"
	} else if r.IntN(2) == 0 {
		prep += "assay = { from = \"96 %\", to = \"100 %\" }\n"
	}
	prep += fmt.Sprintf("[solvent]\nname = %q\n", pick("water", "ethanol"))
	if r.IntN(2) == 0 {
		prep += "evaporation = \"2 % of volume\"\n"
	}
	if r.IntN(2) == 0 {
		has := strength
		if !activity && r.IntN(3) == 0 { // by mass, with a density of its own
			has = func(percent float64) string { return fmt.Sprintf("%v %% w/w", percent) }
		}
		prep += fmt.Sprintf("[[stock]]\nname = \"stock\"\nstrength = { value = %q, expanded = %q, k = 2 }\n", has([]float64{1, 2.5, 10}[r.IntN(3)]), has(0.05))
		if strings.Contains(has(1), "w/w") {
			prep += "density = { from = \"1.01 g/mL\", to = \"1.03 g/mL\" }\n"
		}
		if r.IntN(2) == 0 {
			prep += "volume = \"4 mL\"\n" // less than some pipettes hold
		}
	}
	if r.IntN(4) == 0 {
		prep += "[[packet]]\nname = \"packet\"\ncontent = { from = \"95 mg\", to = \"105 mg\" }\n"
	}
	p, err := read.ParsePrep("prep", []byte(prep), k)
	require.NoError(t, err)
	return p
}

// unitsPerGram is the activity of the solute of a random prep.
const unitsPerGram = 30_000

// fractionOf a stock of a random prep, by mass.
func fractionOf(p *route.Prep, s *route.Stock) float64 {
	switch s.Unit.Name {
	case "% w/w":
		return s.Strength.Value / 100
	case "U/mL":
		return p.MassFraction(s.Strength.Value / unitsPerGram)
	}
	return p.MassFraction(s.Strength.Value / 100)
}
