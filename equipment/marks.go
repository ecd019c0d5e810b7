package equipment

import "math"

// The least part of its capacity at which an instrument is considered: below a
// fifth a smaller one reads better, and pistons are not made for less than a
// tenth (common practice, no source).
const (
	leastOfScale  = 0.2
	leastOfPiston = 0.1
)

// Marks are the volumes in mL, rising, at which a search for routes considers the
// instrument; it can be read at, or set to, each of them. The last is always its
// capacity, which for a flask, a pipette with one mark and a jar is the only one.
//
//	               coarse                            fine
//	scale          the numbered marks, from 20 %     every graduation, from 20 %
//	               of the capacity on                of the capacity on
//	syringe        as a scale                        tenths of the numbered distance
//	piston         tenths of the capacity            hundredths, from 10 % on
//
// A scale whose graduation is not known has its numbered marks only. A dropper
// has no marks: it is counted. The volumes are the decimals that a user would
// write.
func (k *Measure) Marks(fine bool) []float64 {
	is, step, least := k.Kind.Traits(), k.Numbered, leastOfScale
	switch {
	case is.Counts:
		return nil
	case is.Dial:
		step, least = k.Capacity/10, leastOfPiston
	}
	if fine {
		step = k.Finest()
	}
	return multiples(step, least*k.Capacity, k.Capacity)
}

// Finest is the volume in mL from one line of the scale to the next, or by which what it
// is set to is told apart: a tenth of the distance of the numbers of a syringe, a
// hundredth of the capacity of a piston. It is 0 where there is one mark only, and for
// a dropper.
func (k *Measure) Finest() float64 {
	switch is := k.Kind.Traits(); {
	case is.Counts:
		return 0
	case is.Dial:
		return k.Capacity / 100
	case is.tenths:
		return k.Numbered / 10
	case k.Division > 0:
		return k.Division
	}
	return k.Numbered
}

// Nearest are the volumes next to one, below and above, of all that the instrument can be
// read at or set to: every graduation from the first on, however small a part of the
// scale, and of a piston those from a tenth of its capacity on. Beyond its capacity there
// is none.
func (k *Measure) Nearest(mL float64) (nearest []float64) {
	step := k.Finest()
	switch {
	case k.Kind.Traits().Counts || mL > k.Capacity*(1+1e-9):
		return nil
	case step == 0:
		return []float64{k.Capacity}
	}
	least := step
	if k.Kind.Traits().Dial {
		least = leastOfPiston * k.Capacity
	}
	n := max(math.Ceil(mL/step*(1-1e-9)), math.Ceil(least/step*(1-1e-9)))
	if below := decimal((n - 1) * step); below >= least*(1-1e-9) {
		nearest = append(nearest, below)
	}
	return append(nearest, min(decimal(n*step), k.Capacity))
}

// IsLow reports whether a volume lies lower on the scale than a reading is considered at.
func (k *Measure) IsLow(mL float64) bool {
	switch is := k.Kind.Traits(); {
	case is.Counts || k.Finest() == 0:
		return false
	case is.Dial:
		return mL < leastOfPiston*k.Capacity*(1-1e-9)
	}
	return mL < leastOfScale*k.Capacity*(1-1e-9)
}

// multiples lists those of a step from one volume on and below another, and then
// that; with a step of 0 only that.
func multiples(step, from, to float64) []float64 {
	var list []float64
	if step > 0 {
		first, end := math.Ceil(from/step*(1-1e-12)), to/step*(1-1e-12)
		for n := first; n < end; n++ {
			list = append(list, decimal(n*step))
		}
	}
	return append(list, to)
}
