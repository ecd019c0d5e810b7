package uncertainty

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// resistors is JCGM 100, 5.2.2, note 1: ten resistors of 1000 Ω in series, each
// with u = 100 mΩ.
func resistors(owner func(i int) string) (*Model, Node) {
	m := new(Model)
	total := m.Constant(0)
	for i := range 10 {
		r := m.Influence(Influence{Code: "standard", Owner: Owner{Name: owner(i)}, Distribution: Normal{Mu: 1000, Sigma: 0.1}})
		total = m.Add(total, r)
	}
	return m, total
}

// TestSharing: published 1 Ω when all were calibrated against one standard,
// 0.32 Ω for the wrong independent answer.
func TestSharing(t *testing.T) {
	m, total := resistors(same)
	shared := propagate(t, m, total, 0.95)
	near.Relative(t, "one standard", 1, shared.StandardUncertainty, 1e-14)
	assert.Equal(t, 1, len(shared.Budget))
	assert.Equal(t, 10, shared.Budget[0].Uses)
	assert.Equal(t, true, shared.Budget[0].Uses > 1)

	m, total = resistors(fresh)
	own := propagate(t, m, total, 0.95)
	near.Relative(t, "ten standards", 0.31622777, own.StandardUncertainty, 1e-7)
	assert.Equal(t, 10, len(own.Budget))
	assert.Equal(t, 1, own.Budget[0].Uses)
	assert.Equal(t, false, own.Budget[0].Uses > 1)
}

func TestSharesAddTo1(t *testing.T) {
	m := new(Model)
	a := propagate(t, m, calibrationStandard(m), 0.95)
	sum, squares := 0.0, 0.0
	for i, c := range a.Budget {
		sum += c.Share
		squares += c.Contribution * c.Contribution
		near.Relative(t, "contribution", c.Sensitivity*c.StandardUncertainty, c.Contribution, 1e-15)
		assert.Equal(t, true, i == 0 || a.Budget[i-1].Share >= c.Share, "line %d out of order", i)
	}
	near.Relative(t, "sum of the shares", 1, sum, 1e-14)
	near.Relative(t, "sum of squares", a.StandardUncertainty*a.StandardUncertainty, squares, 1e-14)
}

func TestEqualContributionsKeepTheirOrder(t *testing.T) {
	m, total := resistors(fresh)
	for i, c := range propagate(t, m, total, 0.95).Budget {
		assert.Equal(t, fresh(i), c.Owner.Name)
	}
}

func TestUnusedInfluencesAreNotListed(t *testing.T) {
	m := new(Model)
	add(m, "before", Normal{Mu: 0, Sigma: 1})
	x := add(m, "x", Normal{Mu: 0, Sigma: 1})
	add(m, "after", Normal{Mu: 0, Sigma: 1})
	a := propagate(t, m, m.Multiply(x, m.Constant(2)), 0.95)
	assert.Equal(t, 1, len(a.Budget))
	assert.Equal(t, Code("x"), a.Budget[0].Code)
	// One with slope 0 is used, and listed.
	a = propagate(t, m, m.Add(x, m.Multiply(add(m, "flat", Normal{Mu: 0, Sigma: 1}), m.Constant(0))), 0.95)
	assert.Equal(t, 2, len(a.Budget))
	assert.Equal(t, 0.0, line(t, a, "flat").Share)
}

// TestShareSums: constructed, contributions 1, 2, 3 and 4: u² = 30.
func TestShareSums(t *testing.T) {
	m := new(Model)
	total := m.Constant(0)
	for i, in := range []Influence{
		{Group: Group{Name: "balance"}, Assumed: true}, {Group: Group{Name: "flask"}}, {Group: Group{Name: "balance"}}, {Group: Group{Name: "flask"}, Assumed: true},
	} {
		in.Code, in.Distribution = Code(fmt.Sprint(i)), Normal{Mu: 0, Sigma: float64(i + 1)}
		total = m.Add(total, m.Influence(in))
	}
	a := propagate(t, m, total, 0.95)
	near.Relative(t, "assumed", 17.0/30, a.AssumedShare(), 1e-14)
	groups := a.ByGroup()
	assert.Equal(t, 2, len(groups))
	assert.Equal(t, "flask", groups[0].Group.Name)
	near.Relative(t, "flask", 20.0/30, groups[0].Sum, 1e-14)
	assert.Equal(t, "balance", groups[1].Group.Name)
	near.Relative(t, "balance", 10.0/30, groups[1].Sum, 1e-14)
}

func TestInfluence(t *testing.T) {
	m := new(Model)
	in := Influence{Code: "bias", Owner: Owner{Name: "pipette"}, Distribution: Normal{Mu: 0, Sigma: 1}}
	assert.Equal(t, m.Influence(in), m.Influence(in))
	in.Distribution = Normal{Mu: 0, Sigma: 2}
	panics(t, `uncertainty: influence "bias" of "pipette" described in two ways`, func() { m.Influence(in) })
	in.Owner.Name = "another pipette"
	assert.Equal(t, Node(1), m.Influence(in))
}

func TestIntendedAndExpected(t *testing.T) {
	m := new(Model)
	retained := m.Influence(Influence{Code: "retained", Distribution: Gamma{Mu: 0.04, Sigma: 0.02}})
	delivered := m.Subtract(m.Influence(Influence{Code: "mark", Distribution: Normal{Mu: 10.1, Sigma: 0.1}, Nominal: 10}), retained)
	near.Relative(t, "intended", 10, m.Intended(delivered), 1e-15)
	near.Relative(t, "expected", 10.06, m.Expected(delivered), 1e-15)
	near.Relative(t, "value", 10.06, propagate(t, m, delivered, 0.95).Value, 1e-15)
}
