package law

import (
	"math"
	"sync"

	"minim/uncertainty/portable"
)

// Kernel is the distribution function of one quantity about its mean, in units of some size of
// its own, for many places at once.
type Kernel struct {
	// Reach is how far from the mean it can be, in the units.
	Reach float64
	// Cut: of a normal kernel what lies beyond is left out, and the rest is the whole; 0 where
	// nothing is.
	Cut float64
	// Turn: a place becomes that of another quantity, which is normal times the scale, at which it is not
	// less; nil for a quantity itself.
	Turn func(t float64) float64
	fill func(t, scale []float64)
}

// Flat is rectangular within ±1.
func Flat() Kernel {
	return Kernel{Reach: 1, fill: func(t, _ []float64) {
		for i, x := range t {
			t[i] = max(0, min(float64((x+1)/2), 1))
		}
	}}
}

// Peaked is triangular within ±1.
func Peaked() Kernel {
	return Kernel{Reach: 1, fill: func(t, _ []float64) {
		for i, x := range t {
			part := 1 - min(math.Abs(x), 1)
			beyond := float64(part * part / 2)
			if x > 0 {
				beyond = 1 - beyond
			}
			t[i] = beyond
		}
	}}
}

// farNormal is beyond what a normal quantity is taken not to be.
const farNormal = 9

// Bell is the standard normal one. Where a scale is given, it is multiplied by that of each place.
func Bell() Kernel {
	return Kernel{Reach: farNormal, fill: func(t, scale []float64) {
		pieces := bellPieces()
		if scale != nil {
			for i := range t {
				t[i] /= scale[i]
			}
		}
		for i, z := range t {
			t[i] = below(pieces, z)
		}
	}}
}

// Known is any other, within ±reach.
func Known(reach float64, below func(t float64) float64) Kernel {
	return Kernel{Reach: reach, fill: func(t, _ []float64) {
		for i, x := range t {
			t[i] = below(x)
		}
	}}
}

// tabledPlaces are closest near 0, where the density of a quantity that cannot be negative may be
// infinite.
const tabledPlaces = 2000

// Tabled is the one of a quantity between 0 and most, about its mean and in units of size, of which
// the distribution function takes long: by cubics through some of its values, at places as powers
// of equal steps.
func Tabled(mean, size, most float64, power int, below func(x float64) float64) Kernel {
	x, y := make([]float64, tabledPlaces+1), make([]float64, tabledPlaces+1)
	for i := range x {
		x[i] = most * portable.Power(float64(i)/tabledPlaces, power)
		y[i] = below(x[i])
	}
	c := NewCurve(x, y)
	return Known(max(mean, most-mean)/size, func(t float64) float64 {
		switch v := mean + float64(size*t); {
		case v <= 0:
			return 0
		case v >= most:
			return 1
		default:
			return c.At(v)
		}
	})
}

// Below replaces places by the probabilities of less, as if nothing were cut or turned.
func (k *Kernel) Below(t, scale []float64) { k.fill(t, scale) }

// BelowCut is Below of what is turned, and with what is cut left out.
func (k *Kernel) BelowCut(t, scale []float64) {
	if k.Turn != nil {
		for i, x := range t {
			t[i] = k.Turn(x)
		}
	}
	if k.Cut == 0 {
		k.fill(t, scale)
		return
	}
	pieces := bellPieces()
	for i, z := range t {
		cut := k.Cut / scale[i]
		z = max(-cut, min(z/scale[i], cut))
		switch out := below(pieces, -cut); {
		case cut < 1e-3: // where the density is level
			t[i] = float64((z/cut + 1) / 2)
		default:
			t[i] = (below(pieces, z) - out) / (1 - float64(2*out))
		}
	}
}

// piecesPerUnit of the normal distribution function are cubic, between which value and slope are
// exact: it is off by less than 2e-9.
const piecesPerUnit = 32

type piece [4]float64

const pieceCount = 2*farNormal*piecesPerUnit + 1

// bellPieces are those from -farNormal to farNormal.
var bellPieces = sync.OnceValue(func() *[pieceCount]piece {
	all := new([pieceCount]piece)
	const h = 1.0 / piecesPerUnit
	for i := range all {
		z := float64(float64(i)*h) - farNormal
		f, g := float64(portable.NormalCDF(z)), float64(portable.NormalCDF(z+h))
		df, dg := float64(h*density(z)), float64(h*density(z+h))
		all[i] = piece{f, df, float64(3*(g-f)) - float64(2*df) - dg, df + dg - float64(2*(g-f))}
	}
	return all
})

func density(z float64) float64 { return portable.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }

func below(pieces *[pieceCount]piece, z float64) float64 {
	at := (z + farNormal) * piecesPerUnit
	if !(at > 0) { // or no place at all
		at = 0
	} else if at > pieceCount-1 { // what min and max do with signs takes as long as all the rest
		at = pieceCount - 1
	}
	i := int(at)
	v, c := at-float64(i), &pieces[i]
	return c[0] + float64(v*(c[1]+float64(v*(c[2]+float64(v*c[3])))))
}
