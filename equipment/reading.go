package equipment

import (
	"math"

	"minim/uncertainty"
)

// Reading is how carefully a scale or a mark is read.
type Reading string

// The words for reading. Their sizes:
//
//	             scale: triangular, half-width    one mark in a neck: normal, s
//	careful      0.2 division                     0.15 mm of level
//	ordinary     0.5 division                     0.25 mm
//	first-time   1.2 division                     0.6 mm
//
// Careful on a scale: a trained reader on a fine scale (common practice, no
// source); in a neck 0.15 mm is 0.02 mL in a 100 mL flask, the figure of
// EURACHEM/CITAC CG 4, example A1. First-time: the standard deviation of 61
// first-year students who read one burette was 0.57 and 0.49 of a division
// (github.com/chicolucio/estatistica-pratica-buretas). Ordinary: re-settings of
// a 1 mL syringe by eye, 0.25 to 0.28 of a division, and fillings of twelve
// 100 mL flasks, 0.25 mm (github.com/evanmascitti/asi468).
const (
	Careful   Reading = "careful"
	ordinary  Reading = "ordinary"
	firstTime Reading = "first-time"
	// noReading: the tolerance already holds the error of reading (Kadis,
	// Talanta 64 (2004) 167).
	noReading Reading = "none"
)

// Readings lists the words that a file may use.
func Readings() []string {
	return []string{string(Careful), string(ordinary), string(firstTime), string(noReading)}
}

// readingSizes are the half-widths on a scale, in divisions, and the standard deviations in a
// neck, in mm of level.
var readingSizes = map[Reading]struct{ divisions, level float64 }{Careful: {0.2, 0.15}, ordinary: {0.5, 0.25}, firstTime: {1.2, 0.6}}

// readingError is the distribution of one reading: of a scale by its division in mL, and of the
// level at one mark by the bore of its neck in mm.
func (k *Measure) readingError(how Reading) uncertainty.Distribution {
	if k.Division > 0 {
		return uncertainty.Peaked(readingSizes[how].divisions * k.Division)
	}
	return uncertainty.Normal{Sigma: readingSizes[how].level * PerMillimetre(k.Bore)}
}

// PerMillimetre is the volume in mL of 1 mm of a neck of the given bore in mm.
func PerMillimetre(bore float64) float64 { return math.Pi / 4 * bore * bore / 1000 }
