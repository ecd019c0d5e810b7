package equation

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// made is a constructed model of two weighings in one volume, diluted.
func made() (m *uncertainty.Model, out uncertainty.Node) {
	m = new(uncertainty.Model)
	step := func(n int) uncertainty.Owner { return uncertainty.Owner{Kind: uncertainty.OneUse, Name: "r", Step: n} }
	input := func(code uncertainty.Code, owner uncertainty.Owner, unit string, at float64) uncertainty.Node {
		return m.Influence(uncertainty.Influence{Code: code, Owner: owner, Unit: unit, At: at, Distribution: uncertainty.PlusMinus(0.1)})
	}
	named := func(n uncertainty.Node, code uncertainty.Code, owner uncertainty.Owner, unit string) uncertainty.Node {
		return m.Name(n, uncertainty.Influence{Code: code, Owner: owner, Unit: unit})
	}
	beta := func(x float64) uncertainty.Node {
		return named(m.Constant(x), "expansion", uncertainty.Owner{}, "1/°C")
	}
	warm := input("temperature", uncertainty.Owner{Kind: uncertainty.Day}, "°C", 0)
	mass := func(n int) uncertainty.Node {
		curve := m.Subtract(input("linearity at a load", uncertainty.Owner{Name: "b"}, "g", float64(n)), m.Multiply(m.Constant(-0.5), input("curve of linearity", uncertainty.Owner{Name: "b"}, "g", 0)))
		curve = named(curve, "error of linearity", step(n), "g")
		return named(m.Subtract(m.Add(m.Constant(1.5), curve), input("left on the boat", step(n), "g", 0)), "mass weighed", step(n), "g")
	}
	volume := func(n int, ml, zero float64) uncertainty.Node {
		sum := m.Add(m.Constant(ml), input("bias", uncertainty.Owner{Name: "flask"}, "mL", 25), m.Constant(zero))
		theta := m.Add(m.Constant(1), m.Multiply(m.Subtract(beta(0), beta(2e-4)), warm))
		return named(m.Multiply(sum, theta), "volume in a vessel", step(n), "mL")
	}
	purity := named(m.Constant(0.98), "assay", uncertainty.Owner{}, "")
	solute := m.Add(m.Multiply(mass(1), purity), m.Multiply(mass(2), purity))
	gamma := named(m.Divide(solute, volume(3, 25, 0)), "concentration of a solution", step(3), "g/mL")
	gamma = named(m.Divide(m.Multiply(m.Multiply(gamma, purity), volume(4, 2, 0.5)), m.Multiply(purity, volume(5, 25, -25))), "concentration of a solution", step(5), "g/mL")
	return m, m.Multiply(gamma, named(m.Constant(100), "conversion", uncertainty.Owner{}, "% w/v / (g/mL)"))
}

func TestWrittenDown(t *testing.T) {
	m, out := made()
	e := Of(m, m.Name(out, uncertainty.Influence{Code: "strength in a unit", Unit: "% w/v"}), "γ", quantity.Number)
	var lines, constants []string
	for _, l := range e.Lines {
		lines = append(lines, l.Symbol+" = "+l.Expression)
	}
	assert.Equal(t, []string{
		"γ = (m_1·P + m_2·P)·V_4·f_unit/(V_3·V_5)",
		"m_1 = 1.5 g + E_lin,1 − m_left,1",
		"E_lin,1 = δ_loc,1 + 0.5·δ_cur",
		"m_2 = 1.5 g + E_lin,2 − m_left,2",
		"E_lin,2 = δ_loc,2 + 0.5·δ_cur",
		"V_3 = (25 mL + δ_cal)·(1 − β_2·ΔT)",
		"V_4 = (2.5 mL + δ_cal)·(1 − β_2·ΔT)",
		"V_5 = δ_cal·(1 − β_2·ΔT)",
	}, lines)
	for _, c := range e.Constants {
		constants = append(constants, c.Symbol+" = "+quantity.Number(c.Value)+" "+c.Of.Unit)
	}
	assert.Equal(t, []string{"P = 0.98 ", "β_2 = 0.0002 1/°C", "f_unit = 100 % w/v / (g/mL)"}, constants)
}

// What is a number alone, and what has no name.
func TestWrittenDownBare(t *testing.T) {
	m := new(uncertainty.Model)
	x := m.Influence(uncertainty.Influence{Code: "what has no words", Distribution: uncertainty.PlusMinus(1)})
	named := func(n uncertainty.Node) uncertainty.Node { return m.Name(n, uncertainty.Influence{}) }
	for want, n := range map[string]uncertainty.Node{
		"2": m.Constant(2), "3": m.Add(m.Constant(1), m.Constant(2)), "−x": m.Subtract(m.Constant(0), x), "1/x": m.Divide(m.Constant(1), x),
		"x/(x + x)": m.Divide(x, m.Add(x, x)),
	} {
		assert.Equal(t, want, Of(m, named(n), "y", quantity.Number).Lines[0].Expression)
	}
}

func TestUnitsOfProducts(t *testing.T) {
	for _, u := range [][3]string{
		{"mL/mm", "mm", "mL"}, {"1/°C", "°C", ""}, {"mL/g", "g/mL", ""}, {"g/mL", "mL", "g"}, {"", "mL", "mL"}, {"% w/w", "g/g / (% w/w)", ""}, {"% w/v", "", "% w/v"},
	} {
		assert.Equal(t, u[2], times(u[0], u[1]))
		assert.Equal(t, u[2], times(u[1], u[0]))
	}
}
