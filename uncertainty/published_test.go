package uncertainty

import (
	"testing"

	"minim/uncertainty/near"
)

// endGauge is JCGM 100, H.1 in its first-order form, in nm and °C:
//
//	l = l_S + d - l_S (δα θ + α_S δθ)
//
// The cyclic part of θ is arcsine there; only its u enters at first order.
func endGauge(m *Model) Node {
	standard := known(m, "l_S", Normal{50_000_623, 25}, 18)
	d := m.Sum(
		known(m, "d", Normal{215, 5.8137767}, 24),
		known(m, "d1", Normal{0, 3.8910506}, 5),
		known(m, "d2", Normal{0, 20.0 / 3}, 8))
	theta := m.Add(add(m, "θ", Normal{-0.1, 0.2}), add(m, "Δ", Normal{0, 0.35355339}))
	alpha := add(m, "α_S", Rectangular{9.5e-6, 13.5e-6})
	deltaAlpha := known(m, "δα", PlusMinus(1e-6), 50)
	deltaTheta := known(m, "δθ", PlusMinus(0.05), 2)
	strain := m.Add(m.Multiply(deltaAlpha, theta), m.Multiply(alpha, deltaTheta))
	return m.Subtract(m.Add(standard, d), m.Multiply(standard, strain))
}

// TestEndGauge: JCGM 100, H.1. Published l 50.000 838 mm, u 32 nm, terms 25,
// 2.9 and 16.6, ν_eff 16.7, U99 93. The published 93 is 2.92 × the rounded 32
// with ν truncated to 16; at full precision U is 92 (91.93 with ν unrounded).
func TestEndGauge(t *testing.T) {
	m := new(Model)
	a := propagate(t, m, endGauge(m), 0.99)
	near.Absolute(t, "l", 50_000_838, a.Value, 1e-6)
	near.Absolute(t, "u, published", 32, a.StandardUncertainty, 0.5)
	near.Relative(t, "u", 31.658268, a.StandardUncertainty, 1e-7)
	near.Absolute(t, "ν, published", 16.7, a.DegreesOfFreedom, 0.05)
	near.Relative(t, "ν", 16.741366, a.DegreesOfFreedom, 1e-7)
	near.Absolute(t, "U99, published", 93, a.ExpandedUncertainty, 1.2)
	near.Relative(t, "U99 with ν 16", 92.466889, CoverageFactor(0.99, 16)*a.StandardUncertainty, 1e-7)
	for _, c := range []struct {
		name              string
		contribution, rel float64
	}{
		{"l_S", 25, 1e-7}, {"d", 5.8137767, 1e-7}, {"d1", 3.8910506, 1e-7}, {"d2", 6.6666667, 1e-7},
		{"δα", 2.8867873, 1e-7}, {"δθ", -16.599027, 1e-7}, {"α_S", 0, 0}, {"θ", 0, 0}, {"Δ", 0, 0},
	} {
		near.Relative(t, "contribution of "+c.name, c.contribution, line(t, a, c.name).Contribution, c.rel)
	}
	near.Relative(t, "share of l_S", 0.623599, line(t, a, "l_S").Share, 1e-6)
	near.Relative(t, "share of δθ", 0.27491, line(t, a, "δθ").Share, 1e-5)
}

// TestEndGaugeSimulated: the second-order terms of H.1, 11.7 and 1.7 nm, raise
// u to 34 nm (published; recomputed 33.801290), which the trials show. The
// inputs are independent, have mean 0 and enter bilinearly: the figure is exact.
func TestEndGaugeSimulated(t *testing.T) {
	m := new(Model)
	mc := simulate(t, m, endGauge(m), Settings{Seed: 1})
	near.Absolute(t, "SD", 33.801290, mc.StandardDeviation, 5*0.0075*3.1623)
}

// calibrationStandard is QUAM (CG 4), example A1, in mg/L:
//
//	c = 1000 m P/V
func calibrationStandard(m *Model) Node {
	mass := add(m, "mass", Normal{100.28, 0.05})
	purity := add(m, "purity", Rectangular{0.9998, 1.0000})
	volume := m.Sum(m.Constant(100), add(m, "calibration", Peaked(0.1)),
		add(m, "filling", Normal{0, 0.02}), add(m, "temperature", PlusMinus(0.084)))
	return m.Divide(m.Multiply(m.Constant(1000), m.Multiply(mass, purity)), volume)
}

// TestCalibrationStandard: QUAM A1. Published c 1002.7, u 0.9, U 1.8 mg/L. The
// published u comes from the rounded 0.07 mL, and U is twice the rounded 0.9:
// the unrounded chain gives 0.835 and 1.67.
func TestCalibrationStandard(t *testing.T) {
	m := new(Model)
	a := propagate(t, m, calibrationStandard(m), 0.95)
	near.Absolute(t, "c, published", 1002.7, a.Value, 0.05)
	near.Relative(t, "c", 1002.69972, a.Value, 1e-9)
	near.Absolute(t, "u, published", 0.9, a.StandardUncertainty, 0.07)
	near.Relative(t, "u", 0.83519923, a.StandardUncertainty, 1e-7)
	near.Relative(t, "relative u", 8.3295049e-4, a.StandardUncertainty/a.Value, 1e-7)
	near.Absolute(t, "U for k 2, published", 1.8, 2*a.StandardUncertainty, 0.15)
	near.Relative(t, "U for k 2", 1.6703985, 2*a.StandardUncertainty, 1e-7)
	for _, c := range []struct {
		name                   string
		u, contribution, share float64 // recomputed; 0 where not given
	}{
		{"mass", 0.05, 0.49995, 0.358322},
		{"purity", 5.7735027e-5, 0.057896685, 0.00480537},
		{"calibration", 0.040824829, 0, 0.240221},
		{"filling", 0.02, 0, 0.057653},
		{"temperature", 0.048497423, 0, 0.338999},
	} {
		got := line(t, a, c.name)
		near.Relative(t, "u of "+c.name, c.u, got.StandardUncertainty, 1e-7)
		near.Relative(t, "share of "+c.name, c.share, got.Share, 3e-6)
		if c.contribution != 0 {
			near.Relative(t, "contribution of "+c.name, c.contribution, got.Contribution, 1e-7)
		}
	}
}

// TestCalibrationStandardRounded is A1 with the table's u(V) = 0.07 mL and
// u(P) = 0.000058, the other column: 0.0009 and 0.9 come from these.
func TestCalibrationStandardRounded(t *testing.T) {
	m := new(Model)
	amount := m.Multiply(add(m, "mass", Normal{100.28, 0.05}), add(m, "purity", Normal{0.9999, 0.000058}))
	volume := add(m, "volume", Normal{100, 0.07})
	a := propagate(t, m, m.Divide(m.Multiply(m.Constant(1000), amount), volume), 0.95)
	near.Absolute(t, "relative u, published", 0.0009, a.StandardUncertainty/a.Value, 0.00005)
	near.Relative(t, "relative u", 8.6137711e-4, a.StandardUncertainty/a.Value, 1e-7)
	near.Absolute(t, "u, published", 0.9, a.StandardUncertainty, 0.05)
	near.Relative(t, "u", 0.86370259, a.StandardUncertainty, 1e-7)
	near.Relative(t, "U for k 2", 1.7274052, 2*a.StandardUncertainty, 1e-7)
	for name, want := range map[string][2]float64{
		"mass": {0.49995, 0.335062}, "purity": {0.0581624, 0.00453478}, "volume": {-0.7018898, 0.660404},
	} {
		near.Relative(t, "contribution of "+name, want[0], line(t, a, name).Contribution, 1e-6)
		near.Relative(t, "share of "+name, want[1], line(t, a, name).Share, 3e-6)
	}
}

// TestMolarMass: QUAM A2, potassium hydrogen phthalate C8H5KO4 with the atomic
// weights of 1995. The atoms of an element share their error, so it grows as
// n, not √n (which would give 0.00136). Published M 204.2212, u 0.0038; for
// oxygen 0.00068 = 4 × the rounded 0.00017, recomputed 0.00069.
func TestMolarMass(t *testing.T) {
	m := new(Model)
	total := m.Constant(0)
	for _, e := range []struct {
		name          string
		atoms         int
		weight, limit float64
	}{{"C", 8, 12.0107, 0.0008}, {"H", 5, 1.00794, 0.00007}, {"O", 4, 15.9994, 0.0003}, {"K", 1, 39.0983, 0.0001}} {
		for range e.atoms {
			total = m.Add(total, add(m, e.name, Rectangular{e.weight - e.limit, e.weight + e.limit}))
		}
	}
	a := propagate(t, m, total, 0.95)
	near.Relative(t, "M", 204.2212, a.Value, 1e-12)
	near.Absolute(t, "u, published", 0.0038, a.StandardUncertainty, 0.00005)
	near.Relative(t, "u", 0.0037653021, a.StandardUncertainty, 1e-7)
	for name, want := range map[string]float64{"C": 0.0036950417, "H": 0.00020207259, "O": 0.00069282032, "K": 5.7735027e-5} {
		near.Relative(t, "contribution of "+name, want, line(t, a, name).Contribution, 1e-7)
	}
}

// tartuPipette is the 10 mL pipette of a course of the University of Tartu
// (2004): V = V_tol + V_rep + V_tol γ Δt.
func tartuPipette(m *Model, repeatability Distribution) Node {
	tolerance := add(m, "tolerance", Rectangular{9.97, 10.03})
	scatter := known(m, "repeatability", repeatability, 50)
	warmth := m.Multiply(m.Constant(0.00021), add(m, "temperature", PlusMinus(4)))
	return m.Add(m.Add(tolerance, scatter), m.Multiply(tolerance, warmth))
}

// TestPipette: published u 0.0438579525 mL and ν_eff 72.
func TestPipette(t *testing.T) {
	m := new(Model)
	a := propagate(t, m, tartuPipette(m, Normal{0, 0.04}), 0.95)
	near.Relative(t, "V", 10, a.Value, 1e-14)
	near.Absolute(t, "u, published", 0.0438579525, a.StandardUncertainty, 0.5e-10)
	near.Relative(t, "ν_eff", 72.264242, a.DegreesOfFreedom, 1e-7)
	for name, share := range map[string]float64{"tolerance": 0.155964, "repeatability": 0.831808, "temperature": 0.0122276} {
		near.Relative(t, "share of "+name, share, line(t, a, name).Share, 4e-6)
	}
	// Constructed: the repeatability as a t-distribution raises the SD to 0.0446.
	m = new(Model)
	mc := simulate(t, m, tartuPipette(m, StudentT{0, 0.04, 50}), Settings{Seed: 4})
	near.Absolute(t, "SD", 0.044613634, mc.StandardDeviation, 5*4e-5)
	near.Absolute(t, "lower", 9.912482, mc.Lower, 5*1.3e-4)
	near.Absolute(t, "upper", 10.08757, mc.Upper, 5*1.3e-4)
}
