package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

const hundredCylinder = "[[cylinder]]\nname = \"x\"\ncapacity = \"100 mL\"\nclass = \"A\"\nstandard = \"ASTM\"\nclinging = \"0 mL\"\n"

const keepsSome = "retained = { mean = \"0.4 mL\", spread = \"0.2 mL\" }\n"

// A cylinder marked Ex (TD) gives its mark when it is poured, and holds what stays
// besides; one marked In (TC) holds its mark, and gives less (ISO 384 on the two marks).
// Constructed from that: contained + E[X], delivered μ - X.
func TestCylinderInAndEx(t *testing.T) {
	for _, test := range []struct {
		marked        string
		holds, pours  float64
		rinsed, blown float64
	}{
		{"In", 100, 100 - 0.4, 100 - 0.02*0.4, 100},
		{"Ex", 100 + 0.4, 100, 100 + 0.98*0.4, 100 + 0.4},
	} {
		k := one(t, hundredCylinder+keepsSome+"marked = \""+test.marked+"\"\n")
		assert.Equal(t, test.marked == "Ex", k.Ex)
		filled := contained(t, k, quiet(), 100)
		near.Relative(t, "filled", test.holds, filled.Value, 1e-12)
		near.Relative(t, "u filled", 0.5/math.Sqrt(6), filled.StandardUncertainty, 1e-12) // ASTM E1272 A: ±0.5 mL
		poured := delivered(t, k, quiet(), 100)
		near.Relative(t, "poured", test.pours, poured.Value, 1e-12)
		same(t, poured.Analytic, "retained in the x", 0.2)
		u := quiet()
		u.Emptying = Rinsed
		rinsed := delivered(t, k, u, 100)
		near.Relative(t, "rinsed", test.rinsed, rinsed.Value, 1e-12)
		u = quiet()
		u.Emptying = BlownOut
		near.Relative(t, "to the last drop", test.blown, delivered(t, k, u, 100).Value, 1e-12)
		for _, o := range []outcome{filled, poured, rinsed} {
			near.Relative(t, "intended", 100, o.Intended, 1e-12)
		}
	}
	assert.Equal(t, false, one(t, hundredCylinder).Ex)
}

// What stays, not stated. Poured from an Ex cylinder only its scatter is missing;
// filled, what it holds beyond its mark; rinsed, the film of the size is assumed,
// and as nobody has measured it in this piece, its spread counts.
func TestExCylinderNotStated(t *testing.T) {
	k := one(t, hundredCylinder+"marked = \"Ex\"\n")
	u := quiet()
	assert.Equal(t, 100.0, delivered(t, k, u, 100).Value)
	assert.Equal(t, []string{"scatter of what stays in the x as it delivers"}, worded(u.Notes).NotCounted)
	u = quiet()
	assert.Equal(t, 100.0, contained(t, k, u, 100).Value)
	assert.Equal(t, []string{"what the x holds beyond its mark, being adjusted to deliver"}, worded(u.Notes).NotCounted)
	u = quiet()
	u.Emptying = Rinsed
	rinsed := delivered(t, k, u, 100)
	near.Relative(t, "rinsed", 100+0.98*0.40, rinsed.Value, 1e-12) // measured.md 1, at 100 mL
	same(t, rinsed.Analytic, "what the x should have kept", 0.20)
	near.Relative(t, "assumed", 1, rinsed.AssumedShare(), 1e-9) // of the bias its triangular shape
	assert.Equal(t, []string{
		"errors of glass within their limits are triangular: most pieces are better than their limit",
		"the x keeps about 0.4 mL when it is poured out (unknown by half of that, and from pour to pour by a quarter)",
		"a rinse leaves 2 % of what stayed behind",
	}, worded(u.Notes).Assumed)
}

// Nothing stays, as stated: no line in the budget for it, filled or poured.
func TestExCylinderThatKeepsNothing(t *testing.T) {
	k := one(t, hundredCylinder+"retained = \"0 mL\"\nmarked = \"Ex\"\n")
	for _, o := range []outcome{contained(t, k, quiet(), 100), delivered(t, k, quiet(), 100)} {
		assert.Equal(t, set("bias of the x at 100 mL"), names(o.Analytic))
	}
}
