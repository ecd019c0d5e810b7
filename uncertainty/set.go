package uncertainty

import (
	"fmt"
	"math"
	"slices"

	"minim/uncertainty/random"
)

// Set is a set of readings by which the scatter of something was found. It is one and the
// same unknown standard deviation σ, of which the readings give the estimate s with their ν
// degrees of freedom, wherever it comes in. So influences of one set, each a [StudentT],
// are drawn independently with one σ: normal values over the root of one chi-square value
// over ν (JCGM 101, 6.4.9). And they count as one contribution with ν degrees of freedom,
// since a sum of them is again a Student t with as many:
//
//	Σ c_i σ z_i = σ √(Σ c_i²) z
//
// The zero value is no set: the influence has a σ of its own.
type Set struct {
	// Owner is what the readings were taken with.
	Owner Owner
	// At is the mark or the load at which they were taken.
	At float64
}

// scale is the unknown σ of a set, in units of what the readings gave.
type scale struct {
	set Set
	nu  float64
	key uint64 // of its random stream
}

// scaleOfSet is the code of the scale of a set among the influences of its owner.
const scaleOfSet Code = "scale of the readings"

// scaleFor returns the number of the scale that an influence is drawn with, -1 where it has
// no set. It panics where two influences of a set have other degrees of freedom.
func (m *Model) scaleFor(in *Influence) int {
	if in.Set == (Set{}) {
		return -1
	}
	nu := in.DegreesOfFreedom
	if t, student := in.Distribution.(StudentT); student {
		nu = t.Nu
	}
	k, known := m.findScale(in.Set)
	if !known {
		owned := &Influence{Code: scaleOfSet, Owner: in.Set.Owner, At: in.Set.At}
		m.scales = append(m.scales, scale{in.Set, nu, m.streamKey(owned)})
	}
	if s := &m.scales[k]; !(nu > 0) || s.nu != nu || nu != in.DegreesOfFreedom {
		panic(fmt.Sprintf("uncertainty: influence %q with %v degrees of freedom, of readings with %v", in.Code, in.DegreesOfFreedom, s.nu))
	}
	return k
}

// findScale returns the number that the scale of a set has, or would have.
func (m *Model) findScale(s Set) (number int, known bool) {
	k := slices.IndexFunc(m.scales, func(other scale) bool { return other.set == s })
	if k < 0 {
		return len(m.scales), false
	}
	return k, true
}

// leastDegrees is the least number of degrees of freedom that any influence among the
// needed nodes is drawn with, +Inf where all have a variance however it was found.
func (m *Model) leastDegrees(needed []bool) float64 {
	least := math.Inf(1)
	for i := range needed {
		if n := &m.nodes[i]; needed[i] && n.op == opInfluence {
			least = min(least, m.drawnDegrees(int(n.left)))
		}
	}
	return least
}

// drawnDegrees is the number of degrees of freedom of the t-distribution that an influence
// is drawn from, +Inf for any other distribution.
func (m *Model) drawnDegrees(influence int) float64 {
	if g, _ := m.groupOf(influence); g >= 0 && m.groups[g].nu > 0 {
		return m.groups[g].nu
	}
	if t, student := m.influences[influence].Distribution.(StudentT); student {
		return t.Nu
	}
	return math.Inf(1)
}

// rootOfGamma is σ/s: one over the root of a chi-square value over its Nu degrees of freedom.
type rootOfGamma struct{ nu float64 }

func (d rootOfGamma) Fill(dst []float64, s *random.Source) {
	s.Gammas(dst, d.nu/2)
	for i, g := range dst {
		dst[i] = 1 / math.Sqrt(g)
	}
}

// ByReadings is the half-width of the interval that the uses of one set of readings have by
// themselves, by Student's t with the degrees of freedom of the set. For another number of readings
// that scatter alike it is another factor: the [CoverageFactor].
func (a *Analytic) ByReadings(s Set) (half float64) {
	for i := range a.Budget {
		if line := &a.Budget[i]; line.Set == s && s != (Set{}) {
			return CoverageFactor(a.CoverageProbability, line.DegreesOfFreedom) * together(a.Budget, i)
		}
	}
	return 0
}
