package uncertainty

import (
	"math"

	"minim/uncertainty/portable"
)

// Given returns the state of knowledge about a quantity, normal beforehand,
// after it was measured as y with a normal error of standard uncertainty u: the
// product of prior and likelihood (JCGM 106, clause 6),
//
//	Mu + w (y - Mu),  √w u,  w = Sigma²/(Sigma² + u²)
//
// A measurement without uncertainty counts alone.
func (d Normal) Given(y, u float64) Normal {
	mustBeKnown(d.Mu, d.Sigma, math.Inf(1))
	mustBeKnown(y, u, math.Inf(1))
	if u == 0 {
		return Normal{y, 0}
	}
	root := d.Sigma / portable.Hypot(d.Sigma, u)
	return Normal{d.Mu + float64(root*root*(y-d.Mu)), root * u}
}
