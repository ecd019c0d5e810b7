package route

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

const (
	demoPrep    = "../../cmd/minim/demo/dye.toml"
	sevenRoutes = "../../testdata/preps/dye-seven-routes.toml"
)

// Five routes of the demo, the meniscus of ethanol ignored, worked by hand from the measurement model, without
// the engine. The parts, in g and mL:
//
//	0.01 g scale, s = d = 0.01, linearity ±0.02:
//	    rounding 2·0.01²/12 = 1.6667e-5; e_rep 0.01² - 0.01²/6 = 8.3333e-5;
//	    linearity of tare and gross: two local parts of 0.02²/6 and the curve at m less
//	    that at 0, 2·0.02²/6·(1 - ρ), ρ = (1 - w/2)/√(1 - w + w²) where m is w times 1 % of
//	    the capacity of 200 g: of m = 0.01, 0.25, 0.75 and 1.5 g 1 - ρ = 9.4e-6, 0.0066007,
//	    0.0714286 and 0.3066248; together 1e-4 + 1.3333e-4 (2 - ρ), u = 0.0152753,
//	    0.0153040, 0.0155839 and 0.0165595
//	0.001 g scale of 20 g: of m = 0.009 g 1 - ρ = 0.00079, u = 0.00152787
//	assay 0.97 to 1: mean 0.985, u = 0.03/√12 = 0.0086603, relative 0.0087921
//	2 mL pipette at 2 mL: bias 0.02/√6, one reading 0.2·0.02/√6: 0.0083267;
//	    at 1.5 mL two readings: √((0.0004 + 2·0.000016)/6) = 0.0084853
//	5 mL pipette at 2.5 mL: bias 0.05/√6, two readings 0.2·0.05/√6:
//	    (0.0025 + 2·0.0001)/6 = 4.5e-4, u = 0.0212132
//	25 mL flask, class A: bias 0.04/√6; reading 0.15 mm in a neck of 9 mm,
//	    0.15·0.0636173 = 0.0095426: √(2.6667e-4 + 9.1061e-5) = 0.0189138
//	25 mL cylinder: bias 0.5/√6, reading 0.1/√6, cling 0..0.05 (mean 0.025,
//	    0.05²/12): √(0.0416667 + 0.0016667 + 0.00020833) = 0.2086664;
//	    at two marks half of the variance of the bias is common to both
//	100 mL cylinder: bias 1/√6, reading 0.2/√6, cling 0..0.1:
//	    √(0.1666667 + 0.0066667 + 0.00083333) = 0.4173328
//	evaporation of ethanol, 0.792 mg/(cm min), through the mouth of the 25 mL cylinder, 17.6 mm wide
//	    (the mean of 15.8 and 19.4), 2.4328 cm², its rim 30 mm above the greatest mark: of what
//	    stands 0.5 cm deeper in all, L = 6.994, 7.610, 3.500 and 5.555 cm at 16.5, 15, 25 and 20 mL,
//	    in 5 min 9.634/L mg of 0.7893 g/mL: 1.0577e-4, 1.0692e-4, 1.3949e-4 and 1.0986e-4 of it at
//	    most, half of that in the mean; from the 100 mL cylinder less than 1e-4, which is not
//	    counted, and the flask is closed
//	temperature ±3 °C, θ = 1 + (9.9e-6 - 1.09e-3)(T - 20): each volume moves
//	    by -1.0801e-3 per degree, u(T) = √3 = 1.7320508: relative 0.0018708;
//	    a mark in the divisor and a volume taken cancel, so that a route that
//	    ends n volumes deep keeps one of them.
//
// The strengths, in % w/v, 100 m·assay·Π a/Π V at the means:
//
//	direct, 0.01 g:    100·0.01·0.985/16.525 = 0.0596067, with what evaporates 0.0596099
//	    u_rel = √(1.52753² + 0.0087921² + (0.2086664/16.525)² + 0.0018708²)
//	          = 1.527608
//	direct, 0.009 g:   100·0.009·0.985/15.025 = 0.0590017, with what evaporates 0.0590049
//	    u_rel = √(0.169764² + 0.0087921² + (0.2086664/15.025)² + 0.0018708²)
//	          = 0.170568
//	0.25 g, one dilution, the same flask twice at the same mark:
//	    100·0.25·0.985/25·1.5/25 = 0.0591
//	    u_rel² = 0.0612161² + 0.0087921² + (0.0084853/1.5)²
//	           + (2·0.0163299/25)² + 2·(0.0095426/25)² + 0.0018708²
//	           = 0.00374741 + 0.0000773 + 0.000032 + 0.00000171
//	             + 0.00000029 + 0.0000035; u_rel = 0.0621467
//	0.75 g, one dilution: 100·0.75·0.985/25·2/100.05 = 0.0590705
//	    u_rel² = 0.0207785² + 0.0087921² + (0.0083267/2)² + (0.0189138/25)²
//	           + (0.4173328/100.05)² + 0.0018708²; u_rel = 0.0234062
//	two dilutions: 100·1.5·0.985/25·2/25.025·2.5/20.025 = 0.0589672, with what evaporates 0.0589746
//	    the cylinder: 0.0416667 (1/25.025² + 1/20.025² + 1/(25.025·20.025))
//	           + 0.001875 (1/25.025² + 1/20.025²) = 0.00026126
//	    u_rel² = 0.0110397² + 0.0087921² + (0.0189138/25)² + (0.0083267/2)²
//	           + (0.0212132/2.5)² + 0.00026126 + 0.0018708²; u_rel = 0.0235338
func TestDemoByHand(t *testing.T) {
	c := compareAll(t, load(t, sevenRoutes))
	for _, want := range []struct {
		route           string
		value, relative float64
	}{
		{"0.01 g scale, direct", 0.0596099, 1.527608},
		{"0.001 g scale, direct", 0.0590049, 0.170568},
		{"0.25 g, one dilution", 0.0591, 0.0621467},
		{"0.75 g, one dilution", 0.0590705, 0.0234062},
		{"two dilutions", 0.0589746, 0.0235338},
	} {
		r := named(t, c, want.route)
		near.Relative(t, want.route, want.value, r.Analytic.Value, 2e-6)
		near.Relative(t, want.route+", relative u", want.relative, r.Analytic.StandardUncertainty/r.Analytic.Value, 5e-6)
	}
}

func named(t *testing.T, c *Comparison, name string) *Result {
	t.Helper()
	for i := range c.Results {
		if c.Results[i].Route.Name == name {
			return &c.Results[i]
		}
	}
	require.Fail(t, "no route", name)
	return nil
}

// bench draws the influences of the demo with gonum's distributions: a second
// evaluation of the measurement model that shares no code with the engine.
type bench struct{ src rand.Source }

func (b bench) within(limit float64) float64 {
	return distuv.Uniform{Min: -limit, Max: limit, Src: b.src}.Rand()
}

func (b bench) peaked(limit float64) float64 {
	return distuv.NewTriangle(-limit, limit, 0, b.src).Rand()
}

func (b bench) normal(sigma float64) float64 {
	return distuv.Normal{Sigma: sigma, Src: b.src}.Rand()
}

func (b bench) weigh(reading, d float64) float64 {
	return b.read(reading, d, b.within(d/2)) + b.linear(d)(reading) + b.peaked(2*d)
}

// read has the roundings and the scatter of a reading, and the local part of a linearity of
// two digits.
func (b bench) read(reading, d, zero float64) float64 {
	return reading + zero + b.within(d/2) + b.normal(math.Sqrt(d*d-d*d/6)) + b.peaked(2*d)
}

// linear is the curve of linearity of a scale of 20 000 digits at a load less that at none.
func (b bench) linear(d float64) func(load float64) float64 {
	nodes := []float64{0, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1}
	parts := make([]float64, 9)
	for i := range parts {
		parts[i] = b.within(d)
	}
	at := func(share float64) float64 {
		k := 0
		for share > nodes[k+1] {
			k++
		}
		w := (share - nodes[k]) / (nodes[k+1] - nodes[k])
		low, high := parts[k]+parts[k+1], parts[k+1]+parts[k+2]
		return ((1-w)*low + w*high) / math.Sqrt(1-w+w*w)
	}
	return func(load float64) float64 { return at(load/(20_000*d)) - at(0) }
}

func (b bench) cylinder(mark, limit, division, cling float64) float64 {
	return mark + b.peaked(limit) + b.peaked(0.2*division) + (b.within(cling/2) + cling/2)
}

func (b bench) flask() float64 {
	return 25 + b.peaked(0.04) + b.normal(0.15*math.Pi/4*81/1000)
}

func (b bench) assay() float64 { return 0.985 + b.within(0.015) }

func (b bench) theta() float64 { return 1 + (9.9e-6-1.09e-3)*b.within(3) }

func (b bench) twoDilutions() float64 {
	theta := b.theta()
	common, part := b.peaked(0.5*math.Sqrt(0.5)), 0.5*math.Sqrt(0.5)
	c := 100 * b.weigh(1.5, 0.01) * b.assay() / (b.flask() * theta)
	c *= (2 + b.peaked(0.02) + b.peaked(0.004)) / (b.cylinder(25, part, 0.5, 0.05) + common)
	return c * (2.5 + b.peaked(0.05) + b.peaked(0.01) + b.peaked(0.01)) / (b.cylinder(20, part, 0.5, 0.05) + common)
}

func (b bench) direct() float64 {
	return 100 * b.weigh(0.009, 0.001) * b.assay() / (b.cylinder(15, 0.5, 0.5, 0.05) * b.theta())
}

// byWeighing is the demo's route by weighing: w/w steps, densities from the
// apparent specific volume, and two readings from one zero in the second. All loads have one
// curve, and all vessels one tare.
func (b bench) byWeighing() float64 {
	const density = 0.7893
	left := func(grams float64) float64 { // in 10 min of what stands in a beaker twice as large, of the shape of one 40 mm wide and 60 mm high for 25 mL
		wide := 4 * math.Cbrt(grams/density/25)
		most := 0.792 * 0.85 * math.Pi / 4 * wide * wide / (1.5*wide - grams/density/(math.Pi/4*wide*wide) + 0.5) * 10 / 1000 / grams
		return 1 - most/2 + b.within(most/2)
	}
	excess := 1 - (0.375+b.within(0.525))*density
	curve, boat, vessel := b.linear(0.01), b.peaked(0.02), b.peaked(0.02)
	on := func(tare, r, zero float64) float64 { return b.read(r, 0.01, zero) + curve(r) - tare }
	w := on(boat, 0.6, b.within(0.005)) * b.assay() / on(vessel, 50, b.within(0.005)) / left(50)
	zero := b.within(0.005)
	read := func(r float64) float64 { return on(vessel, r, zero) }
	part := read(1)
	w *= part / read(15.6) / left(15.6)
	return 100 * w * density / (1 - w*excess)
}

func TestDemoByDirectSampling(t *testing.T) {
	skipIfSlow(t)
	c := compareAll(t, load(t, sevenRoutes))
	const trials = 400_000
	limits := uncertainty.Limits{Lower: 0.0558, Upper: 0.0642}
	for i, route := range []struct {
		name string
		draw func(bench) float64
	}{
		{"two dilutions", bench.twoDilutions}, {"0.001 g scale, direct", bench.direct}, {"diluted by weighing", bench.byWeighing},
	} {
		r, b := named(t, c, route.name), bench{rand.NewPCG(1, uint64(i))}
		values := make([]float64, trials)
		inside := 0.0
		for i := range values {
			values[i] = route.draw(b)
			if limits.Permits(values[i]) {
				inside++
			}
		}
		mean, s := stat.MeanStdDev(values, nil)
		// Five standard errors of the difference of two samples.
		both := math.Sqrt(1.0/trials + 1.0/float64(r.MonteCarlo.Trials))
		near.Absolute(t, route.name+", mean", r.MonteCarlo.Mean, mean, 5*s*both)
		near.Relative(t, route.name+", s", r.MonteCarlo.StandardDeviation, s, 5*both/math.Sqrt2)
		p := r.Chance()
		near.Absolute(t, route.name+", chance", p, inside/trials, 5*math.Sqrt(p*(1-p))*both)
	}
}
