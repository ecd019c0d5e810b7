package route

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

const orderKit = `
[[balance]]
name = "balance"
capacity = "200 g"
readability = "0.01 g"
repeatability = "0.012 g"
linearity = "0.02 g"
[[balance]]
name = "cheap scale"
capacity = "200 g"
readability = "0.01 g"
[[balance]]
name = "certified balance"
capacity = "200 g"
readability = "0.01 g"
weighing-uncertainty = "0.015 g"
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "10 mL"
class = "B"
[[dropper]]
name = "dropper"
[[flask]]
name = "flask"
capacity = "50 mL"
class = "A"
`

// ordersOf are those of an invented prep with a strong and a weak stock.
func ordersOf(t *testing.T, hazards, solvent, steps string) (*Prep, []*Order) {
	t.Helper()
	p := parse(t, orderKit, fmt.Sprintf(`target = "1 %% w/v"
volume = "5 mL"
solute = { name = "solute", density = "1.1 g/mL"%s }
solvent = { name = "water"%s }
stock = [ { name = "strong", strength = "30 %% w/v", volume = "20 mL" }, { name = "weak", strength = "2 %% w/v" }, { name = "spirit", strength = "5 %% w/v", solvent = "ethanol" } ]
hazard = [ { from = "4 %% w/v", words = ["corrosive"] } ]
route = [ { name = "one", steps = [ %s ] } ]
`, hazards, solvent, steps))
	orders, err := p.Orders(p.Routes[0])
	require.NoError(t, err)
	return p, orders
}

// What goes first, in which steps, worked out by hand from the rule: half of the mark, or
// less so that with the part it stays below nine tenths; a bath where it is less than
// twice the part. The words are stated from 4 % on only.
func TestOrders(t *testing.T) {
	for _, row := range []struct {
		steps string
		ahead float64
		early []int
		into  bool
		bath  bool
	}{
		{`{ start = "strong" }, { take = "4 mL", with = "pipette" }, { make-up-to = "50 mL", in = "flask" }`, 25, nil, true, false},
		{`{ start = "strong" }, { take = "all" }, { make-up-to = "50 mL", in = "flask" }`, 24, nil, true, true},
		{`{ start = "strong" }, { take = "4 mL", with = "pipette" }, { take = "8 mL", with = "pipette" }, { take = "2 mL", with = "pipette" }, { make-up-to = "50 mL", in = "flask" }`, 25, nil, true, true},
		{`{ start = "strong" }, { take = "20 drops", with = "dropper" }, { make-up-to = "50 mL", in = "flask" }`, 25, nil, true, false},
		{`{ start = "weak" }, { take = "10 mL", with = "pipette" }, { make-up-to = "50 mL", in = "flask" }`, 0, nil, false, false},
		{`{ start = "strong" }, { take = "4 mL", with = "pipette" }, { add = "5 mL", with = "pipette" }, { add = "3 mL", with = "pipette" }`, 0, []int{2, 3}, true, false},
		{`{ start = "strong" }, { take = "4 mL", with = "pipette" }, { add = "5 mL", with = "pipette" }, { add = "20 drops", with = "dropper" }`, 0, []int{2, 3}, true, true},
		{`{ start = "strong" }, { take = "4 mL", with = "pipette" }, { strengthen = "6 mL", of = "weak", with = "pipette" }, { add = "3 mL", with = "pipette" }`, 0, []int{3, 2}, true, false},
		{`{ start = "weak" }, { take = "4 mL", with = "pipette" }, { strengthen = "1 mL", of = "strong", with = "pipette" }, { add = "3 mL", with = "pipette" }`, 0, []int{3}, true, false},
		{`{ start = "weak" }, { take = "1 mL", with = "pipette" }, { strengthen = "2 mL", of = "strong", with = "pipette" }`, 0, nil, true, true},
		{`{ weigh = "5.00 g", on = "balance" }, { make-up-to = "50 mL", in = "flask" }`, 25, nil, true, true},
		{`{ weigh = "5.00 g", on = "balance" }, { weigh-up-to = "80.00 g", on = "balance" }`, 40, nil, true, true},
		{`{ measure = "5 mL", with = "pipette" }, { weigh-up-to = "80.00 g", on = "balance" }`, 40, nil, true, false},
		{`{ start = "strong" }, { weigh-aliquot = "5.00 g", on = "balance" }, { weigh-up-to = "80.00 g", on = "balance" }`, 75, nil, true, false},
	} {
		p, orders := ordersOf(t, `, hazards = ["none known"]`, "", row.steps)
		o := orders[len(orders)-1]
		assert.Equal(t, row.into, o.IntoSolvent, row.steps)
		near.Relative(t, row.steps, row.ahead, o.Ahead, 1e-9)
		assert.Equal(t, row.early, o.Early, row.steps)
		assert.Equal(t, row.bath, o.Bath, row.steps)
		assert.Empty(t, o.Refused, row.steps)
		assert.NoError(t, p.CheckOrder(p.Routes[0]))
	}
}

// The words hold where the strength may reach them: 3.9 % off by 0.3 % may be 4 %.
func TestOrderGoesByTheUpperEnd(t *testing.T) {
	for strength, into := range map[string]bool{
		`"3.9 % w/v"`: false, `{ value = "3.9 % w/v", expanded = "0.3 % w/v", k = 2 }`: true, `{ value = "3.5 % w/v", expanded = "0.3 % w/v", k = 2 }`: false,
	} {
		p := parse(t, orderKit, `target = "1 % w/v"
volume = "5 mL"
solute = { name = "solute", hazards = ["none known"] }
solvent = { name = "water" }
stock = [ { name = "stock", strength = `+strength+` } ]
hazard = [ { from = "4 % w/v", words = ["corrosive"] } ]
route = [ { name = "one", steps = [ { start = "stock" }, { take = "9 mL", with = "pipette" }, { make-up-to = "50 mL", in = "flask" } ] } ]
`)
		orders, err := p.Orders(p.Routes[0])
		require.NoError(t, err)
		assert.Equal(t, into, orders[1].IntoSolvent, strength)
	}
}

// On a balance the vessel is zeroed again on its solvent. The aliquot is then read as the
// model has it, and the total is the sum of two weighings, which is nowhere more
// uncertain than the model says. (Constructed.)
func TestAliquotIntoSolventIsNoLessCertain(t *testing.T) {
	for _, name := range []string{"balance", "cheap scale", "certified balance"} {
		for _, total := range []float64{9, 15, 40, 150} {
			steps := fmt.Sprintf(`{ start = "strong" }, { weigh-aliquot = "3.00 g", on = %q }, { weigh-up-to = "%.2f g", on = %q }`, name, total, name)
			p, _ := ordersOf(t, `, hazards = ["acid"]`, "", steps)
			require.NoError(t, p.CheckOrder(p.Routes[0]))
			shared := ratioVariance(t, p, total, func(m *uncertainty.Model, b *equipment.Balance, use func(string) equipment.Use) (a, s uncertainty.Node) {
				vessel := b.PanWith(equipment.Stated{}, false)
				a, err := b.Weigh(use("aliquot"), 3, use("aliquot").Step, vessel)
				require.NoError(t, err)
				s, err = b.Weigh(use("total"), total, use("aliquot").Step, vessel)
				require.NoError(t, err)
				return a, s
			})
			turned := ratioVariance(t, p, total, func(m *uncertainty.Model, b *equipment.Balance, use func(string) equipment.Use) (a, s uncertainty.Node) {
				vessel := b.PanWith(equipment.Stated{}, false)
				solvent, err := b.Weigh(use("solvent"), total-3, use("solvent").Step, vessel)
				require.NoError(t, err)
				a, err = b.Weigh(use("aliquot"), 3, use("aliquot").Step, b.Under(vessel, total-3))
				require.NoError(t, err)
				return a, m.Add(a, solvent)
			})
			assert.LessOrEqual(t, turned, shared*(1+1e-12), "%s, %v g", name, total)
		}
	}
}

// ratioVariance is the relative variance of an aliquot over a total.
func ratioVariance(t *testing.T, p *Prep, total float64, weigh func(*uncertainty.Model, *equipment.Balance, func(string) equipment.Use) (a, s uncertainty.Node)) float64 {
	t.Helper()
	m := new(uncertainty.Model)
	use := func(step string) equipment.Use {
		return equipment.Use{Model: m, Notes: new(equipment.Notes), Step: uncertainty.Owner{Kind: uncertainty.OneUse, Name: step}}
	}
	a, s := weigh(m, p.Routes[0].Steps[1].Balance, use)
	result, err := m.Propagate(m.Divide(a, s), 0.95)
	require.NoError(t, err)
	near.Relative(t, "the ratio", 3/total, result.Value, 1e-9)
	return math.Pow(result.StandardUncertainty/result.Value, 2)
}

// A solvent that is strong itself: which goes first of it and a solution in another
// solvent is not for us to say.
func TestStrongSolventAndAnother(t *testing.T) {
	steps := `{ start = "spirit" }, { take = "4 mL", with = "pipette" }, { make-up-to = "50 mL", in = "flask" }`
	p, _ := ordersOf(t, "", `, hazards = ["acid"]`, steps)
	assert.ErrorContains(t, p.CheckOrder(p.Routes[0]), "only their safety data sheets say")
	p, _ = ordersOf(t, "", "", steps)
	assert.NoError(t, p.CheckOrder(p.Routes[0]))
}
