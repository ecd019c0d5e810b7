package equipment

import (
	"math"
	"sync"

	"minim/uncertainty/portable"
)

// What evaporates from an open vessel diffuses through still air (Stefan): in mass per area
// and time
//
//	J = M (P/RT) (D/L) ln[(1 - x_room)/(1 - x_sat)],  L = depth of the level below the rim + δ
//
// with mole fractions x of vapour and a δ, for the resistance outside the rim, of π d/8 for a
// mouth of width d, or 5 mm where that is less. A wide surface is chilled by what leaves it, which
// a factor counts. Against a formula for pools it errs upwards by 40 % for water; a draught makes
// it half as much again: it is known within a factor of 2.
//
// mostOutsideRim is that of δ, and wideMouth the width from which a surface is chilled, in mm
// (judgement); swept is the share of the air in a bottle that is renewed each time that it is opened
// and poured from (judgement).
const mostOutsideRim, wideMouth, swept = 5, 20, 0.5

// vapour is a row of the table of what evaporates. No figure: it does not.
type vapour struct {
	Name string `csv:"name"`
	// At20 and At25 are J L, in mg/(cm min), at 20 and 25 °C, and cooling what remains of it over a
	// wide surface.
	At20    float64 `csv:"flux_20C_mg_per_cm_min,none"`
	At25    float64 `csv:"flux_25C_mg_per_cm_min,none"`
	Cooling float64 `csv:"cooling"`
	// Air20 and Air25 are what 1 mL of the air of a room takes up until it is saturated, in mg.
	Air20  float64 `csv:"vapour_20C_mg_per_mL,none"`
	Air25  float64 `csv:"vapour_25C_mg_per_mL,none"`
	Source string  `csv:"source"`
	Trust  string  `csv:"trust"` // as in [Class]
	Note   string  `csv:"note"`
}

var vapours = sync.OnceValue(func() map[string]vapour {
	rows := make(map[string]vapour)
	for _, v := range readTable[vapour](tableFiles, "evaporation") {
		rows[v.Name] = v
	}
	return rows
})

// at is what has one value at 20 °C and another at 25 °C, at a temperature: in a straight line of
// its logarithm.
func at(t, at20, at25 float64) float64 {
	if at20 == 0 {
		return 0
	}
	return at20 * portable.Exp(float64(portable.Log(at25/at20)*(t-20)/5))
}

// vapoursOf lists what evaporates of a mixture, with how much of its vapour when pure there is
// over it; those of its parts of which nothing is known are named.
func vapoursOf(parts []Part, each func(v vapour, share float64)) (unknown []string) {
	for _, p := range parts {
		l, found := FindLiquid(p.Name)
		v, known := vapours()[l.Name]
		switch {
		case found && l.Alcohol > 0 && l.Alcohol < 1:
			water := []Part{{"ethanol", p.Share * l.Alcohol}, {"water", p.Share * (1 - l.Alcohol)}}
			unknown = append(unknown, vapoursOf(water, each)...)
		case found && known:
			each(v, math.Min(1, vapourOverShare*p.Share))
		default:
			unknown = append(unknown, p.Name)
		}
	}
	return unknown
}

// Mouth is the opening of a vessel, Width wide inside, with the level Depth below its rim, in mm.
type Mouth struct{ Width, Depth float64 }

// Evaporates is the mass in g that a liquid of some parts gives off through a mouth in so many
// minutes, at a temperature in °C; those of its parts of which nothing is known are named.
func (m Mouth) Evaporates(parts []Part, minutes, t float64) (grams float64, unknown []string) {
	area := math.Pi / 4 * m.Width * m.Width / 100
	length := (m.Depth + math.Min(mostOutsideRim, math.Pi*m.Width/8)) / 10
	unknown = vapoursOf(parts, func(v vapour, share float64) {
		if m.Width < wideMouth {
			v.Cooling = 1
		}
		grams += float64(at(t, v.At20, v.At25) * v.Cooling * share * area / length * minutes / 1000)
	})
	return grams, unknown
}

// EvaporatesOpened is the share of a liquid of some parts, of a density in g/mL, that leaves a
// bottle with the air over it when it is opened so many times. The bottle is taken to be half
// full; what diffuses through its neck while it is open is less than a tenth of that.
func EvaporatesOpened(parts []Part, density, times, t float64) (share float64, unknown []string) {
	unknown = vapoursOf(parts, func(v vapour, part float64) {
		share += float64(swept * times * at(t, v.Air20, v.Air25) * part / 1000 / density)
	})
	return share, unknown
}

// A low beaker of 50 mL is 40 mm wide and 60 mm high inside; others are of its shape (those of
// 25 to 1000 mL within 6 %; from memory of ISO 3819).
const beakerCapacity, beakerWidth, beakerHeight = 50.0, 40.0, 60.0

// beaker is the mouth of a low beaker of a capacity with so much in it, in mL.
func beaker(capacity, mL float64) Mouth {
	scale := cubeRoot(capacity / beakerCapacity)
	width := beakerWidth * scale
	return Mouth{width, math.Max(0, float64(beakerHeight*scale)-mL*1000/(math.Pi/4*width*width))}
}

// HalfFull is the mouth of a low beaker that is half full with a volume in mL.
func HalfFull(mL float64) Mouth { return beaker(2*mL, mL) }

// aboveScale is how far the rim of a cylinder lies above its greatest mark, in mm (judgement).
const aboveScale = 30

func cubeRoot(x float64) float64 { return portable.Exp(portable.Log(x) / 3) }

// Mouth is the opening of the vessel when it is filled up to a mark, in mL. Closes: it has a
// stopper or a lid. That of a conical flask is half as wide as that of a beaker of its capacity,
// and a cylinder of unknown bore is 22 mm wide if of 50 mL, and others are of its shape (from memory).
func (k *Measure) Mouth(mark float64) (m Mouth, closes bool) {
	g := k.Kind.Traits()
	switch k.Kind {
	case "cylinder":
		m.Width = k.Bore
		if m.Width == 0 {
			m.Width = 22 * cubeRoot(k.Capacity/50)
		}
		m.Depth = aboveScale + math.Max(0, k.Capacity-mark)*1000/(math.Pi/4*m.Width*m.Width)
	case "conical-flask":
		m = beaker(k.Capacity, mark)
		m.Width /= 2
	default:
		m = beaker(k.Capacity, mark)
	}
	return m, g.Stopper || g.PenLine
}
