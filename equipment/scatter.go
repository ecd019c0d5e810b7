package equipment

import (
	"cmp"
	"math"
	"slices"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// deliveriesAt10 are the standard deviations of what a pipette with one mark delivers, in mL of
// 10 mL, reading and what stays in it together. Careful: 0.0056 and 0.006 mL in the tables
// of two textbooks (Skoog; Harvey, Analytical Chemistry 2.1, chapter 4; both from memory).
// Ordinary: sets of 3 to 10 by students, 0.008, 0.015, 0.022 mL (id.scribd.com/document/406167385,
// studymode.com/essays/C311-60700474.html, clubensayos.com/Ciencia/Mediciones/1608798.html).
// First-time: 0.065 and 0.10 mL (scribd.com/document/823213592, scribd.com/document/728454861).
// The reading alone gives 3 to 9 times less.
var deliveriesAt10 = map[Reading]float64{Careful: 0.006, ordinary: 0.02, firstTime: 0.065}

// deliveries is the standard deviation for another capacity in mL. It grows with the square root,
// as the limits of class A do about (judgement; 25 mL with ordinary care then have 0.032 mL,
// which is what five weighings gave in github.com/evanmascitti/asi468).
func deliveries(how Reading, capacity float64) float64 {
	return deliveriesAt10[how] * math.Sqrt(capacity/10)
}

// partOfSetting is the part of a division within which a scale is set by eye: three people who
// set a 1 mL syringe three times each at three marks scattered by 0.18, 0.25 and 0.28 of a division
// (github.com/Biological-Microsystems-Laboratory/micropipette).
const partOfSetting = 0.25

// knownScatter reports whether a stated repeatability, readings of the liquid, or the limit of a
// piston already hold the scatter of what is retained.
func (k *Measure) knownScatter(u Use) bool {
	read := func(j Judged) bool { return j.ofLiquid(u) }
	return k.Repeatability.Known || k.Random > 0 || slices.ContainsFunc(k.Judged, read)
}

// holdsRetained reports whether the scatter of what is retained is in that of the use, be it
// known or assumed.
func (k *Measure) holdsRetained(u Use) bool {
	return k.knownScatter(u) || k.Kind.Traits().scatters == withCare && k.scatters(u)
}

// care is how carefully a step is read: the word of the step beats that of the instrument,
// which beats that of the bench; "" where there is none.
func (k *Measure) care(u Use) Reading { return cmp.Or(u.StepReading, k.Reading, u.BenchReading) }

// scatters reports whether an assumed scatter of use counts: not where one is known, where reading
// is not to count, or where the kit states that of what stays.
func (k *Measure) scatters(u Use) bool {
	switch k.Kind.Traits().scatters {
	case withCare:
		return !k.knownScatter(u) && !k.Retained.Spread.Known && k.care(u) != noReading
	case ofSetting:
		return !k.knownScatter(u) && k.Numbered > 0 && k.care(u) != noReading
	}
	return false
}

// assumedScatter appends e_rep where [Measure.scatters].
func (k *Measure) assumedScatter(u Use) uncertainty.Node {
	s, how := 0.0, k.care(u)
	switch {
	case k.Kind.Traits().scatters == ofSetting:
		s = partOfSetting * k.Finest()
		u.Notes.Assume("scatter-of-setting", k.Name, ML(quantity.Round(s, 2)), ML(k.Finest()))
	case how == "":
		u.Notes.Assume("ordinary-reading", "")
		fallthrough
	default:
		how = cmp.Or(how, ordinary)
		s = deliveries(how, k.Capacity)
		u.Notes.Assume("scatter-of-deliveries", k.Name, ML(quantity.Round(s, 2)), string(how))
	}
	in := k.ofUse(u, repeatability, uncertainty.Normal{Sigma: s})
	in.Assumed = true
	return u.Model.Influence(in)
}
