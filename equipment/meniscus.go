package equipment

import (
	"math"
	"sync"

	"minim/uncertainty/portable"
)

// gravity in m/s², the standard value (3rd CGPM, 1901).
const gravity = 9.80665

// meniscusVolume is the volume in mL of a wetting liquid (contact angle 0) above
// the tangent plane at the bottom of its meniscus, in an upright round tube with
// the given bore in mm; tension is the surface tension in mN/m, density in g/mL.
//
// Lengths are counted in capillary lengths a. Where the surface stands u above
// the level of a wide vessel and is inclined at ψ, at the distance x from the
// axis and s along the profile, the equation of Young and Laplace says
//
//	dψ/ds + sin(ψ)/x = u,   dx/ds = cos ψ,   du/ds = sin ψ,   a² = σ/(ρg)
//
// with u = h and ψ = 0 on the axis, ψ = π/2 at the wall. The volume is the
// integral of 2πx(u-h) dx. The profile is followed by the Runge-Kutta rule in steps
// of 1/32, or R/32 in a tube narrower than a, and h is found by shooting: V is right
// to 2 parts in 10⁷. It panics unless bore, tension and density are positive and
// finite. Source: Finn, Equilibrium Capillary Surfaces (1986), from memory.
func meniscusVolume(bore, tension, density float64) float64 {
	for _, x := range []float64{bore, tension, density} {
		if !(x > 0) || math.IsInf(x, 1) {
			panic("equipment: a meniscus needs a bore, surface tension and density above zero")
		}
	}
	return pulledMeniscus(bore, tension, density, 1)
}

// pulledMeniscus is [meniscusVolume] of a liquid that meets the wall at an angle, of which pull is
// the cosine, from -1 to 1. One that the wall repels bends the other way, and lies below the tangent
// plane at its top by as much.
func pulledMeniscus(bore, tension, density, pull float64) float64 {
	a := math.Sqrt(tension / (density * gravity)) // mm, for mN/m over g/mL and m/s²
	switch up := math.Abs(pull); {
	case up < leastPull:
		return 0
	case pull < 0:
		return -scaledMeniscus(bore/2/a, inclination(up)) * a * a * a / 1000
	}
	return scaledMeniscus(bore/2/a, inclination(pull)) * a * a * a / 1000
}

// leastPull is that of a meniscus that counts.
const leastPull = 1e-3

// upright is the inclination at the wall of a liquid that wets it.
const upright = math.Pi / 2

// inclination at the wall, the arcsine of the pull.
func inclination(pull float64) float64 {
	if pull >= 1 {
		return upright
	}
	return root(0, upright, 1e-12, func(psi float64) float64 {
		sin, _ := portable.Sincos(psi)
		return sin - pull
	})
}

// MeniscusCorrection is what a glass adjusted with water holds of another liquid
// beyond its mark, in mL, when the bottom of the meniscus is set on the mark:
//
//	V(liquid) - V(water)
//
// at 20 °C, negative for a liquid that rises less at the wall, as ethanol does.
// The arguments are those of [meniscusVolume].
func MeniscusCorrection(bore, tension, density float64) float64 {
	asked := [3]float64{bore, tension, density}
	if v, solved := corrections.Load(asked); solved {
		return v.(float64)
	}
	w, _ := FindLiquid(water)
	v := meniscusVolume(bore, tension, density) - meniscusVolume(bore, w.SurfaceTension, w.Density)
	corrections.Store(asked, v)
	return v
}

// corrections holds what has been solved for.
var corrections sync.Map

// scaledMeniscus is the volume in cubic capillary lengths in a tube of that radius, at whose
// wall the surface is inclined at ψ. The weight of all liquid above the wide level hangs on the
// line at the wall,
//
//	V + πR²h = 2πR sin ψ
//
// and h falls about as e^(-R): beyond 25 capillary lengths πR²h is less than
// 10⁻⁸ of the whole, and 2πR sin ψ is the answer. At the other end the meniscus is
// part of a sphere of radius R/sin ψ, upright a hemisphere, but for a part 0.2 R².
func scaledMeniscus(radius, wall float64) float64 {
	switch {
	case radius < 5e-4:
		return sphericalMeniscus(radius, wall)
	case radius > 25:
		sin, _ := portable.Sincos(wall)
		return 2 * math.Pi * radius * sin
	}
	return meniscusAtWall(meniscusRise(radius, wall), radius, wall).volume
}

// sphericalMeniscus is the cylinder over the tangent plane, as high as the rim, less what the
// cap of the sphere takes up.
func sphericalMeniscus(radius, wall float64) float64 {
	if wall == upright {
		return math.Pi / 3 * radius * radius * radius
	}
	sin, cos := portable.Sincos(wall)
	sphere := radius / sin
	rim := float64(sphere * (1 - cos))
	return float64(math.Pi*radius*radius*rim) - float64(math.Pi/3*rim*rim*(float64(3*sphere)-rim))
}

// meniscusRise is the height h of the bottom in a tube of that radius. As h
// becomes exponentially small in a wide tube, its logarithm is what is sought: h
// is less than 2 sin ψ/R, for V is positive, and more than (1+R)e^(-R) of that.
func meniscusRise(radius, wall float64) float64 {
	sin, _ := portable.Sincos(wall)
	most := portable.Log(2 * sin / radius)
	return portable.Exp(root(most+portable.Log1p(radius)-radius, most, 1e-8, func(logRise float64) float64 {
		return meniscusAtWall(portable.Exp(logRise), radius, wall).x - radius
	}))
}

// root finds where f is 0, between two places where it has unlike signs, by false
// position in the Illinois form: an end that stays twice counts half. It returns
// when a step is less than within.
func root(old, last, within float64, f func(float64) float64) float64 {
	fOld, fLast := f(old), f(last)
	for {
		x := last - fLast*(last-old)/(fLast-fOld)
		fx := f(x)
		if fx == 0 || math.Abs(x-last) < within {
			return x
		}
		if (fx > 0) == (fLast > 0) {
			fOld /= 2
		} else {
			old, fOld = last, fLast
		}
		last, fLast = x, fx
	}
}

// profilePoint is a point of the profile of a meniscus: distance from the axis,
// height above the bottom, inclination, and the volume that lies inside it.
type profilePoint struct{ x, z, angle, volume float64 }

// meniscusAtWall follows the profile whose bottom is at the rise until it is inclined
// as at the wall, in steps fit for a tube of about that radius. The last step is taken in
// the angle, so as to end there. (The curvature is never 0: sin(ψ)/x is half the
// mean of u inside x, and so less than u.)
func meniscusAtWall(rise, radius, wall float64) profilePoint {
	var p profilePoint
	perLength := func(p profilePoint) profilePoint { return p.perLength(rise) }
	perAngle := func(p profilePoint) profilePoint {
		d := p.perLength(rise)
		return profilePoint{}.plus(d, 1/d.angle)
	}
	for step := min(radius, 1) / 32; ; {
		next := p.rungeKutta(step, perLength)
		if next.angle > wall {
			return p.rungeKutta(wall-p.angle, perAngle)
		}
		p = next
	}
}

// perLength is the derivative along the profile.
func (p profilePoint) perLength(rise float64) profilePoint {
	sin, cos := portable.Sincos(p.angle)
	across := rise / 2
	if p.x > 0 {
		across = sin / p.x
	}
	return profilePoint{cos, sin, rise + p.z - across, 2 * math.Pi * p.x * p.z * cos}
}

// rungeKutta takes one step by the classical rule of fourth order.
func (p profilePoint) rungeKutta(step float64, slope func(profilePoint) profilePoint) profilePoint {
	k1 := slope(p)
	k2 := slope(p.plus(k1, step/2))
	k3 := slope(p.plus(k2, step/2))
	k4 := slope(p.plus(k3, step))
	return p.plus(k1, step/6).plus(k2, step/3).plus(k3, step/3).plus(k4, step/6)
}

func (p profilePoint) plus(d profilePoint, k float64) profilePoint {
	return profilePoint{p.x + float64(k*d.x), p.z + float64(k*d.z), p.angle + float64(k*d.angle), p.volume + float64(k*d.volume)}
}
