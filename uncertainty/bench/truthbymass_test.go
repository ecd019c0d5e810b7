package bench_test

import (
	"fmt"
	"math"
)

// The truth of balances and of stocks by mass; see truth_test.go.

// scale is a balance of 200 g whose error of linearity lies within a limit: half of its variance
// is a curve over the range, half belongs to a load alone.
type scale struct {
	coin
	limit, digit, sigma float64
	curve               []float64 // at its nodes
	loads               map[string]float64
}

var scaleNodes = []float64{0, 2, 4, 10, 20, 40, 100, 200} // g

func newScale(c coin, limit, digit, sigma float64) *scale {
	s := &scale{coin: c, limit: limit, digit: digit, sigma: sigma, loads: make(map[string]float64)}
	before := c.flat(limit / 2)
	for range scaleNodes {
		next := c.flat(limit / 2)
		s.curve = append(s.curve, before+next)
		before = next
	}
	return s
}

// wrong is its error at a load in a kind of vessel.
func (s *scale) wrong(load float64, vessel string) float64 {
	k := 0
	for k < len(scaleNodes)-2 && load > scaleNodes[k+1] {
		k++
	}
	w := (load - scaleNodes[k]) / (scaleNodes[k+1] - scaleNodes[k])
	curve := ((1-w)*s.curve[k] + w*s.curve[k+1]) / math.Sqrt(1-w+w*w)
	key := fmt.Sprint(vessel, load)
	if _, known := s.loads[key]; !known {
		s.loads[key] = s.peaked(s.limit)
	}
	return curve + s.loads[key]
}

// zero is what zeroing leaves.
func (s *scale) zero() float64 { return s.flat(s.digit / 2) }

// weigh is the mass that is there when a reading is shown, from a zero.
func (s *scale) weigh(reading, zero float64, vessel string) float64 {
	return reading + zero + s.flat(s.digit/2) + s.normal(s.sigma) + s.wrong(reading, vessel) - s.wrong(0, vessel)
}

// repeated are readings of one thing, each from a new zero; what they are wrong by is the same in all.
func (s *scale) repeated(n int, load float64) string {
	text := "["
	for range n {
		text += fmt.Sprintf("%q, ", digits(load+s.normal(s.sigma)+s.zero(), s.digit)+" g")
	}
	return text + "]"
}

func (s *scale) text(rest string) string {
	return fmt.Sprintf("[[balance]]\nname = \"scale\"\ncapacity = \"200 g\"\nreadability = \"%v g\"\nlinearity = \"%v g\"\n%s\n", s.digit, s.limit, rest)
}

// weighedSolute is 1 g of solute in 100 mL, on a scale of which four readings were taken.
func weighedSolute(c coin, ratio float64) made {
	const limit = 0.003
	s := newScale(c, limit, 0.001, ratio*limit)
	return made{
		s.text("readings = "+s.repeated(4, 1+c.Float64()/1000)) + fmt.Sprintf(aFlask, 100),
		head("10 g/L", "100 mL") + route1(`{ weigh = "1.000 g", on = "scale" }`, fmt.Sprintf(makeUp, 100)),
		10 * s.weigh(1, s.zero(), "boat"),
	}
}

// checkedSolute is the same by a scale of which four readings of a weight of 1 g were taken, of class F1 with a
// limit of 0.1 mg, on the bare pan.
func checkedSolute(c coin, ratio float64) made {
	const limit, digit = 0.003, 0.001
	s := newScale(c, limit, digit, ratio*limit)
	shown := 1 + c.flat(0.0001) - (s.wrong(1, "pan") - s.wrong(0, "pan"))
	return made{
		s.text("readings = { values = "+s.repeated(4, shown)+`, check-weight = { nominal = "1 g", class = "F1" } }`) + fmt.Sprintf(aFlask, 100),
		head("10 g/L", "100 mL") + route1(`{ weigh = "1.000 g", on = "scale" }`, fmt.Sprintf(makeUp, 100)),
		10 * s.weigh(1, s.zero(), "boat"),
	}
}

// byCurve weighs five masses on one scale of known repeatability: 1 g in 50 g, and 2 g of
// that in 40 g.
func byCurve(c coin, ratio float64) made {
	const limit, digit = 0.01, 0.001
	sigma := ratio * limit
	s := newScale(c, limit, digit, sigma)
	w := s.weigh(1, s.zero(), "boat") / s.weigh(50, s.zero(), "vessel")
	zero := s.zero()
	w *= s.weigh(2, zero, "vessel") / s.weigh(40, zero, "vessel")
	return made{
		s.text(fmt.Sprintf("repeatability = \"%v g\"", math.Sqrt(sigma*sigma+digit*digit/6))),
		head("0.1 % w/w", "40 mL") + route1(`{ weigh = "1.000 g", on = "scale" }`, `{ weigh-up-to = "50.000 g", on = "scale" }`,
			`{ weigh-aliquot = "2.000 g", on = "scale" }`, `{ weigh-up-to = "40.000 g", on = "scale" }`),
		100 * w,
	}
}

// byLabel is a stock whose bottle states strength and density, each within limits; its part is
// measured by a piston with a known scatter in times the limit of the density.
func byLabel(c coin, ratio float64) made {
	const strength, density, limit = 0.30, 1.110, 0.005
	sigma, off := ratio*limit, c.flat(0.005)
	w, rho := strength+c.flat(0.003), density+c.flat(limit)
	return made{
		piston("piston", 1, 0.005, fmt.Sprintf("repeatability = \"%v mL\"", sigma)) + fmt.Sprintf(aFlask, 100),
		head("3.33 g/L", "100 mL") + "[[stock]]\nname = \"stock\"\nstrength = { from = \"29.7 % w/w\", to = \"30.3 % w/w\" }\ndensity = { from = \"1.105 g/mL\", to = \"1.115 g/mL\" }\n" +
			route1(start, take("1 mL", "piston"), fmt.Sprintf(makeUp, 100)),
		10 * w * rho * (1 + off + c.normal(sigma)),
	}
}

// byTable is a bottle of ammonia of 25 %, between 24.5 and 25.5 %, whose density of 0.9071 g/mL comes from a handbook
// (CRC, 102nd edition: 0.9102 g/mL at 24 %, 0.8980 g/mL at 28 %), bottles differing by ± 0.002 g/mL.
func byTable(c coin, ratio float64) made {
	const limit = 0.002
	sigma := ratio * limit
	w := 0.25 + c.flat(0.005)
	rho := 0.9071 + (0.8980-0.9102)/0.04*(w-0.25) + c.flat(limit)
	return made{
		piston("piston", 1, 0.001, fmt.Sprintf("repeatability = \"%v mL\"", sigma)) + fmt.Sprintf(aFlask, 100),
		"target = \"2.26775 g/L\"\nvolume = \"100 mL\"\nbench = { vessels = \"closed\" }\n[solute]\nname = \"ammonia\"\n[solvent]\nname = \"water\"\n" +
			"[[stock]]\nname = \"stock\"\nstrength = { from = \"24.5 % w/w\", to = \"25.5 % w/w\" }\n" + route1(start, take("1 mL", "piston"), fmt.Sprintf(makeUp, 100)),
		10 * w * rho * (1 + c.flat(0.001) + c.normal(sigma)),
	}
}
