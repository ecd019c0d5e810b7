package bench_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// This file makes benches of which the truth is known: what a piece is really wrong by, what a
// use of it really gave, and what was read of it and stands in the files. It knows nothing of the
// engine (TestTruthKnowsNoEngine): errors are drawn from the shapes that the files state, and what
// comes of them is worked out by the formulas of a textbook. All is invented.

// made is one of them.
type made struct {
	kit, prep string
	// strength that was really made, in the unit of its target.
	strength float64
}

// coin draws.
type coin struct{ *rand.Rand }

func (c coin) normal(sigma float64) float64 { return sigma * c.NormFloat64() }
func (c coin) flat(limit float64) float64   { return limit * (2*c.Float64() - 1) }
func (c coin) peaked(limit float64) float64 { return limit * (c.Float64() - c.Float64()) }

// digits writes a number to a digit, which is a power of ten; it is what a display shows, or
// somebody writes down.
func digits(x, digit float64) string {
	places := max(0, int(math.Round(-math.Log10(digit))))
	return fmt.Sprintf("%.*f", places, math.Round(x/digit)*digit)
}

// readings of a thing that is true and scatters, each written to a digit.
func (c coin) readings(n int, truth, sigma, digit float64, unit string) string {
	list := make([]string, n)
	for i := range list {
		list[i] = fmt.Sprintf("%q", digits(truth+c.normal(sigma), digit)+" "+unit)
	}
	return "[" + strings.Join(list, ", ") + "]"
}

// head of a prep.
func head(target, volume string) string {
	return "target = \"" + target + "\"\nvolume = \"" + volume + "\"\nbench = { vessels = \"closed\" }\n[solute]\nname = \"dye\"\n[solvent]\nname = \"water\"\n"
}

const (
	oneStock = "[[stock]]\nname = \"stock\"\nstrength = \"10 g/L\"\n"
	// aFlask of which nearly nothing is unknown; its error is left out of the truth.
	aFlask = "[[flask]]\nname = \"flask\"\ncapacity = \"%v mL\"\nstandard-uncertainty = \"1e-6 mL\"\nreading = \"none\"\nclinging = \"0 mL\"\n"
)

// route of steps.
func route1(steps ...string) string {
	return "[[route]]\nname = \"route\"\nsteps = [" + strings.Join(steps, ", ") + "]\n"
}

func take(volume, with string) string {
	return fmt.Sprintf("{ take = %q, with = %q }", volume, with)
}

const (
	start  = `{ start = "stock" }`
	makeUp = `{ make-up-to = "%v mL", in = "flask" }`
)

// piston of 1 mL with its limit in mL and what else is stated of it.
func piston(name string, capacity, limit float64, rest string) string {
	return fmt.Sprintf("[[pipette]]\nname = %q\nkind = \"piston\"\ncapacity = \"%v mL\"\ntolerance = \"%v mL\"\n%s\n", name, capacity, limit, rest)
}

// aliquots is a number of parts of 1 mL of the stock of 10 g/L, by a piston of which n readings were taken.
// Its limit is 0.01 mL.
func aliquots(n, uses int) func(c coin, ratio float64) made {
	return func(c coin, ratio float64) made {
		const limit = 0.01
		off, sigma := c.flat(limit), ratio*limit
		volume := 0.0
		for range uses {
			volume += 1 + off + c.normal(sigma)
		}
		steps := []string{start}
		for range uses {
			steps = append(steps, take("1 mL", "piston"))
		}
		return made{
			piston("piston", 1, limit, "readings = "+c.readings(n, 1+off, sigma, 1e-4, "mL")) + fmt.Sprintf(aFlask, 10),
			head(fmt.Sprintf("%d g/L", uses), "10 mL") + oneStock + route1(append(steps, fmt.Sprintf(makeUp, 10))...),
			volume,
		}
	}
}

// scatterAlone is one aliquot by a piston that has no error but what its readings scatter by, in %.
func scatterAlone(n int) func(c coin, ratio float64) made {
	return func(c coin, ratio float64) made {
		sigma := ratio / 100
		return made{
			piston("piston", 1, 1e-6, "readings = "+c.readings(n, 1, sigma, 1e-6, "mL")) + fmt.Sprintf(aFlask, 10),
			head("1 g/L", "10 mL") + oneStock + route1(start, take("1 mL", "piston"), fmt.Sprintf(makeUp, 10)),
			1 + c.normal(sigma),
		}
	}
}

// glass is one aliquot of 10 mL in 100 mL by a pipette with one mark and a triangular limit of
// 0.04 mL, of which n readings were taken.
func glass(n int) func(c coin, ratio float64) made {
	return func(c coin, ratio float64) made {
		const limit = 0.04
		off, sigma := c.peaked(limit), ratio*limit
		return made{
			fmt.Sprintf("[[pipette]]\nname = \"p\"\nkind = \"one-mark\"\ncapacity = \"10 mL\"\ntolerance = \"%v mL\"\nreadings = %s\n", limit, c.readings(n, 10+off, sigma, 1e-3, "mL")) + fmt.Sprintf(aFlask, 100),
			head("1 g/L", "100 mL") + oneStock + route1(start, take("10 mL", "p"), fmt.Sprintf(makeUp, 100)),
			(10 + off + c.normal(sigma)) / 10,
		}
	}
}

// weighedWater is the same with readings in grams of water, at 22 °C within 1 °C. Water by Kell's
// formula (J. Chem. Eng. Data 20 (1975) 97, from memory: 997.770 kg/m³ at 22 °C, and 0.000224 less
// for each °C), air of about 1.2 kg/m³ by its pressure, weights of 8 g/mL; the glass expands by 9.9e-6 for each °C.
func weighedWater(c coin, ratio float64) made {
	const limit = 0.04
	off, sigma := c.peaked(limit), ratio*limit
	warmer, pressure := c.flat(1), 1013.25+c.flat(50)
	water := 0.997770 * (1 - 0.000224*warmer)
	air := 0.001194 * pressure / 1013.25
	shown := (water - air) / (1 - air/8) * (1 + 9.9e-6*(2+warmer)) // g for each mL at 20 °C
	return made{
		fmt.Sprintf("[[pipette]]\nname = \"p\"\nkind = \"one-mark\"\ncapacity = \"10 mL\"\nmaterial = \"borosilicate\"\ntolerance = \"%v mL\"\nreadings = { at = \"10 mL\", weighed = %s, temperature = \"22 °C\" }\n",
			limit, c.readings(6, (10+off)*shown, sigma*shown, 1e-3, "g")) + fmt.Sprintf(aFlask, 100),
		head("1 g/L", "100 mL") + oneStock + route1(start, take("10 mL", "p"), fmt.Sprintf(makeUp, 100)),
		(10 + off + c.normal(sigma)) / 10,
	}
}

// limitsAlone: a piston twice, a pipette and a flask with their limits, and a known scatter.
func limitsAlone(c coin, ratio float64) made {
	const ofPiston, ofPipette, ofFlask = 0.01, 0.04, 0.1
	s1, s2 := ratio*ofPiston, ratio*ofPipette
	p, q, f := c.flat(ofPiston), c.peaked(ofPipette), c.peaked(ofFlask)
	volume := 1 + p + c.normal(s1) + 1 + p + c.normal(s1) + 10 + q + c.normal(s2)
	return made{
		piston("piston", 1, ofPiston, fmt.Sprintf("repeatability = \"%v mL\"", s1)) +
			fmt.Sprintf("[[pipette]]\nname = \"p\"\nkind = \"one-mark\"\ncapacity = \"10 mL\"\ntolerance = \"%v mL\"\nrepeatability = \"%v mL\"\n", ofPipette, s2) +
			fmt.Sprintf("[[flask]]\nname = \"flask\"\ncapacity = \"100 mL\"\ntolerance = \"%v mL\"\nreading = \"none\"\nclinging = \"0 mL\"\n", ofFlask),
		head("1.2 g/L", "100 mL") + oneStock + route1(start, take("1 mL", "piston"), take("1 mL", "piston"), take("10 mL", "p"), fmt.Sprintf(makeUp, 100)),
		10 * volume / (100 + f),
	}
}

// twoSets is a sum of two volumes by pistons of which so many readings were taken.
func twoSets(n1, n2 int) func(c coin, ratio float64) made {
	return func(c coin, ratio float64) made {
		const limit1, limit2 = 0.01, 0.02
		off1, off2 := c.flat(limit1), c.flat(limit2)
		s1, s2 := ratio*limit1, ratio*limit2
		return made{
			piston("one", 1, limit1, "readings = "+c.readings(n1, 1+off1, s1, 1e-4, "mL")) +
				piston("two", 2, limit2, "readings = "+c.readings(n2, 2+off2, s2, 1e-4, "mL")) + fmt.Sprintf(aFlask, 10),
			head("3 g/L", "10 mL") + oneStock + route1(start, take("1 mL", "one"), take("2 mL", "two"), fmt.Sprintf(makeUp, 10)),
			3 + off1 + c.normal(s1) + off2 + c.normal(s2),
		}
	}
}

// twoMarks: readings at two marks of a piston, which is used there and at a third. Half of the
// variance of its error is common to all marks.
func twoMarks(c coin, ratio float64) made {
	const limit = 0.02
	sigma, half := ratio*limit, limit*math.Sqrt(0.5)
	common := c.flat(half)
	one, two, between := common+c.flat(half), common+c.flat(half), common+c.flat(half)
	volume := 1 + one + c.normal(sigma) + 2 + two + c.normal(sigma) + 1.4 + between + c.normal(sigma)
	return made{
		piston("piston", 2, limit, fmt.Sprintf("readings = [{ at = \"1 mL\", values = %s }, { at = \"2 mL\", values = %s }]",
			c.readings(5, 1+one, sigma, 1e-4, "mL"), c.readings(5, 2+two, sigma, 1e-4, "mL"))) + fmt.Sprintf(aFlask, 10),
		head("4.4 g/L", "10 mL") + oneStock + route1(start, take("1 mL", "piston"), take("2 mL", "piston"), take("1.4 mL", "piston"), fmt.Sprintf(makeUp, 10)),
		volume,
	}
}

// filled is a flask that was filled five times to its mark and then divides, with an unknown
// limit of its own so small that it does not count; it scatters by so many %.
func filled(c coin, ratio float64) made {
	sigma := ratio / 100 * 10
	return made{
		piston("piston", 1, 1e-6, "repeatability = \"1e-6 mL\"") +
			"[[flask]]\nname = \"flask\"\ncapacity = \"10 mL\"\ntolerance = \"1e-5 mL\"\nclinging = \"0 mL\"\nreadings = " + c.readings(5, 10, sigma, 1e-4, "mL") + "\n",
		head("1 g/L", "10 mL") + oneStock + route1(start, take("1 mL", "piston"), fmt.Sprintf(makeUp, 10)),
		10 / (10 + c.normal(sigma)),
	}
}

// poured is a cylinder of 20 mL of which it is only known what four deliveries gave: mean and scatter by
// readings alone, which scatter by so many %.
func poured(c coin, ratio float64) made {
	sigma, less := ratio/100*20, 0.1+0.1*c.Float64()
	return made{
		"[[cylinder]]\nname = \"cylinder\"\ncapacity = \"20 mL\"\ndivision = \"0.5 mL\"\ntolerance = \"0.4 mL\"\nreading = \"none\"\nreadings = { of = \"delivered\", at = \"20 mL\", values = " + c.readings(4, 20-less, sigma, 1e-4, "mL") + " }\n" + fmt.Sprintf(aFlask, 200),
		head("1 g/L", "200 mL") + oneStock + route1(start, take("20 mL", "cylinder"), fmt.Sprintf(makeUp, 200)),
		(20 - less + c.normal(sigma)) / 20,
	}
}
