package posterior

import (
	"math"

	"minim/uncertainty/portable"
)

// density of the prior: of its shape, or of that shape and the normal error added up, in closed
// form (constructed). Both are symmetric, so that it is worked out below the middle, where no
// digits are lost far out.
func (p Prior) density(x float64) float64 {
	x = p.Mean - math.Abs(x-p.Shift-p.Mean)
	switch p.Shape {
	case Normal:
		sigma := portable.Hypot(p.Deviation, p.Blur)
		return bell((x-p.Mean)/sigma) / sigma
	case Flat:
		return p.flat(x, p.Low, p.High)
	}
	return p.peaked(x, p.Low, p.High)
}

// flat is that of a rectangle.
func (p Prior) flat(x, low, high float64) float64 {
	switch {
	case p.Blur > 0 && high > low:
		return (float64(portable.NormalCDF((x-low)/p.Blur)) - float64(portable.NormalCDF((x-high)/p.Blur))) / (high - low)
	case p.Blur > 0:
		return bell((x-low)/p.Blur) / p.Blur
	case x < low:
		return 0
	}
	return 1 / (high - low)
}

// peaked is that of a triangle, the second difference of a ramp.
func (p Prior) peaked(x, low, high float64) float64 {
	half := float64((high - low) / 2)
	switch {
	case p.Blur > 0 && half > 0:
		return (float64(p.ramp(x-low)) - float64(2*p.ramp(x-low-half)) + float64(p.ramp(x-high))) / (half * half)
	case p.Blur > 0:
		return bell((x-low)/p.Blur) / p.Blur
	case x < low:
		return 0
	}
	return (x - low) / (half * half)
}

// ramp is the mean of max(0, z + error).
func (p Prior) ramp(z float64) float64 {
	return max(0, float64(z*float64(portable.NormalCDF(z/p.Blur)))+float64(p.Blur*bell(z/p.Blur)))
}

// bell is the density of the standard normal distribution.
func bell(z float64) float64 { return portable.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }
