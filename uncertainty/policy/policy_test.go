package policy

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// wanted is 20 mL with a chance of 95 %: half the risk is 97.5 %.
var wanted = Question{Tolerant: true, Asked: 0.95, Volume: 20}

// of is a route that is as good as another in all that is not stated.
func of(name string, change func(*Figures)) Figures {
	f := Figures{Possible: true, Usable: true, Chance: 0.99, Within: 0.02, Operations: 4, LeftOver: 10, Solute: 1, Roundness: 4, Name: name}
	if change != nil {
		change(&f)
	}
	return f
}

// Each rule alone, constructed: a is chosen, and b falls by the rule.
func TestEachRuleAlone(t *testing.T) {
	for _, test := range []struct {
		by   Rule
		a, b func(*Figures)
	}{
		{Impossible, nil, func(f *Figures) { f.Possible = false }},
		{Use, func(f *Figures) { f.Chance = 0.1 }, func(f *Figures) { f.Usable = false }},
		{Doubt, func(f *Figures) { f.Chance, f.LeftOver = 0.1, 90 }, func(f *Figures) { f.Doubted = true }},
		{HalfRisk, func(f *Figures) { f.Chance, f.LeftOver, f.Operations = 0.975, 90, 8 }, func(f *Figures) { f.Chance = 0.9749 }},
		{Meeting, func(f *Figures) { f.Chance, f.LeftOver, f.Operations = 0.95, 90, 8 }, func(f *Figures) { f.Chance = 0.9499 }},
		{Meeting, func(f *Figures) { f.Chance, f.LeftOver, f.Operations = 0.98, 90, 8 }, func(f *Figures) { f.Chance = 0.9499 }},
		{Chance, func(f *Figures) { f.Chance, f.LeftOver, f.Operations = 0.80, 90, 8 }, func(f *Figures) { f.Chance = 0.79 }},
		{Misreading, func(f *Figures) { f.LeftOver, f.Operations = 90, 8 }, func(f *Figures) { f.OutsideIfMisread = true }},
		{Operations, func(f *Figures) { f.Roundness = 9 }, func(f *Figures) { f.Operations, f.LeftOver = 6, 0.1 }}, // saves 9.9 of 10
		{Operations, func(f *Figures) { f.Operations, f.LeftOver, f.Roundness = 6, 0, 9 }, nil},                    // saves 10
		{Operations, nil, func(f *Figures) { f.Operations, f.LeftOver = 8, -90 }},                                  // whatever it saves
		{LeftOver, func(f *Figures) { f.Roundness = 9 }, func(f *Figures) { f.LeftOver = 15.1 }},
		{LowOnScale, func(f *Figures) { f.Roundness = 9; f.BothWays = true }, func(f *Figures) { f.LowOnScale = true }},
		{BothWays, func(f *Figures) { f.Roundness = 9; f.TooLarge = true }, func(f *Figures) { f.BothWays = true }},
		{TooLarge, func(f *Figures) { f.Roundness = 9 }, func(f *Figures) { f.TooLarge = true }},
		{Roundness, func(f *Figures) { f.Roundness, f.LeftOver, f.Solute = 3.5, 15, 9 }, nil}, // within a quarter
		{Solute, nil, func(f *Figures) { f.Solute = 1.01 }},
		{Surer, func(f *Figures) { f.Chance = 0.999 }, func(f *Figures) { f.Chance = 0.9979 }},
		{Name, func(f *Figures) { f.Chance = 0.999 }, func(f *Figures) { f.Chance = 0.9981 }}, // as sure
		{Name, nil, nil},
	} {
		a, b := of("a", test.a), of("b", test.b)
		for at, all := range [][]Figures{{a, b}, {b, a}} {
			got := wanted.Choose(all)
			assert.Equal(t, at, got.Use, test.by)
			assert.Equal(t, test.by, got.Fell[1-at])
			assert.Equal(t, None, got.Fell[at])
		}
	}
}

// Without a tolerance, what is within a tenth of the tightest is as tight (constructed).
func TestWithoutATolerance(t *testing.T) {
	q := Question{Volume: 20}
	got := q.Choose([]Figures{
		of("tightest", func(f *Figures) { f.Within, f.Chance, f.Operations = 0.0100, math.NaN(), 8 }),
		of("as tight", func(f *Figures) { f.Within, f.Chance, f.Operations = 0.0109, math.NaN(), 4 }),
		of("wide", func(f *Figures) { f.Within, f.Chance, f.Operations = 0.0111, math.NaN(), 2 }),
	})
	assert.Equal(t, Choice{Use: 1, Fell: []Rule{Operations, None, Holding}, Least: 10}, got)
}

// A dear solute is worth two measurements from a quarter of the volume on, 5 mL (constructed).
func TestADearSolute(t *testing.T) {
	all := []Figures{of("four", nil), of("six", func(f *Figures) { f.Operations, f.LeftOver = 6, 5 })}
	assert.Equal(t, 0, wanted.Choose(all).Use)
	dear := wanted
	dear.Dear = true
	assert.Equal(t, 1, dear.Choose(all).Use)
}

// Four more must save as much as two and two more, even where the first two alone save too little
// (constructed: 6 saves 3, 8 saves 20 of 20, then 19 of 20), but for where four have half the risk.
func TestMeasurementsThatPayTogether(t *testing.T) {
	routes := func(eight float64) []Figures {
		return []Figures{
			of("four", func(f *Figures) { f.LeftOver = 30 }), of("six", func(f *Figures) { f.Operations, f.LeftOver = 6, 27 }),
			of("eight", func(f *Figures) { f.Operations, f.LeftOver = 8, eight }),
		}
	}
	asked := wanted
	asked.Asked = 0.99 // of which 0.99 is not half the risk, so that eight may be worth it
	assert.Equal(t, 2, asked.Choose(routes(10)).Use)
	assert.Equal(t, 0, asked.Choose(routes(11)).Use)
	assert.Equal(t, 0, wanted.Choose(routes(-80)).Use)
}

// A rule that none passes decides nothing, and the next does (constructed).
func TestNothingEmpties(t *testing.T) {
	spoil := func(f *Figures) {
		f.Usable, f.OutsideIfMisread, f.LowOnScale, f.BothWays, f.TooLarge, f.Chance = false, true, true, true, true, 0.2
	}
	got := wanted.Choose([]Figures{of("b", spoil), of("a", func(f *Figures) { spoil(f); f.Roundness = 5 })})
	assert.Equal(t, Choice{Use: 0, Fell: []Rule{None, Roundness}, Least: 10}, got)
	assert.Equal(t, Choice{Use: -1, Fell: []Rule{Impossible}}, wanted.Choose([]Figures{{}}))
	assert.Equal(t, -1, wanted.Choose(nil).Use)
}

// Whatever the routes are: one is chosen, each other falls by a rule, the order does not matter, and
// to leave out what is not chosen matters only where it set what others were measured by.
func TestOneIsAlwaysChosen(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	one := func(list ...float64) float64 { return list[random.IntN(len(list))] }
	for range 3000 {
		var all []Figures
		for i := range 1 + random.IntN(6) {
			all = append(all, of(string(rune('a'+i)), func(f *Figures) {
				f.Possible, f.Usable, f.Doubted = random.IntN(9) > 0, random.IntN(5) > 0, random.IntN(7) == 0
				f.Chance, f.OutsideIfMisread = one(0.2, 0.95, 0.97, 0.98), random.IntN(4) == 0
				f.Operations, f.LeftOver = 2+2*random.IntN(4), one(0, 3, 5, 10, 30, 80)
				f.LowOnScale, f.BothWays, f.TooLarge = random.IntN(3) == 0, random.IntN(3) == 0, random.IntN(3) == 0
				f.Roundness, f.Solute = one(2, 2.5, 4), one(1, 2)
			}))
		}
		got := wanted.Choose(all)
		for i, rule := range got.Fell {
			assert.Equal(t, i == got.Use, rule == None)
		}
		turned := make([]Figures, len(all))
		for i := range all {
			turned[len(all)-1-i] = all[i]
		}
		again := wanted.Choose(turned)
		if got.Use < 0 {
			assert.Equal(t, -1, again.Use)
			continue
		}
		assert.Equal(t, all[got.Use].Name, turned[again.Use].Name)
		alone := wanted.Choose(all[got.Use : got.Use+1])
		assert.Zero(t, alone.Use)
	}
}

func TestRoundnessOf(t *testing.T) {
	for reading, want := range map[float64]float64{
		0: 0, 2: 1, 5: 1, 0.5: 1, 20: 1, 2.5: 1.5, 0.15: 1.5, 150: 1.5, 25: 1.5, 0.12: 2, 1.42: 3, 0.122: 3, 0.125: 2.5, 8.1395: 4.5, 0.1 + 0.2: 1, 101: 3, 0.0003: 1, 55: 1.5,
	} {
		assert.Equal(t, want, RoundnessOf(reading), reading)
	}
}

// The first reading that is low, and the first by which a piece pulls the other way than before
// (constructed); what owns no error that counts in two uses, pulls no way.
func TestReadings(t *testing.T) {
	list := []Reading{
		{Amount: 1.25, Scaled: true, Rises: true}, {Amount: 25, Piece: "flask"}, {Amount: 2, Scaled: true, Rises: true, Piece: "cylinder"},
		{Amount: 50, Scaled: true, Low: true, Piece: "flask"}, {Amount: 4.5, Scaled: true, Piece: "cylinder"}, {Amount: 1, Scaled: true},
	}
	assert.Equal(t, 3, FirstLow(list))
	assert.Equal(t, 4, FirstBothWays(list))
	assert.Equal(t, 2.5+1+1+1.5+1, RoundnessIn(list))
	assert.Equal(t, -1, FirstLow(list[:3]))
	assert.Equal(t, -1, FirstBothWays(list[:4]))
	assert.Zero(t, RoundnessIn(nil))
}

// Of two routes that differ in how they are handled alone, the one is chosen that is handier; the first where
// neither is (all there are of two round and two less round ones).
func TestHandierIsChosen(t *testing.T) {
	var all []Figures
	for i := range 32 {
		has := func(bit int) bool { return i>>bit&1 == 1 }
		number := func(bit int) float64 { return float64(1 + i>>bit&1) }
		all = append(all, Figures{Possible: true, Usable: true, LowOnScale: has(0), BothWays: has(1), TooLarge: has(2), Roundness: number(3), Solute: number(4)})
	}
	for i := range all {
		for k := range all {
			chosen := Question{Volume: 100}.Choose([]Figures{all[i], all[k]}).Use
			assert.Equal(t, all[i].Handier(&all[k]) > 0, chosen == 1, "%+v or %+v", all[i], all[k])
		}
	}
}
