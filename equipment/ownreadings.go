package equipment

import (
	"cmp"
	"math"

	"minim/uncertainty"
	"minim/uncertainty/portable"
)

// Held says what readings of one's own are of.
type Held string

// What was measured: what came out of an instrument, or what it held up to the mark.
const (
	Delivered Held = "delivered"
	Contained Held = "contained"
)

// Own is what readings of one's own at one mark of a measure came to, as volumes at 20 °C in mL.
type Own struct {
	// Of is "" where it is not said and may be either.
	Of Held
	// Liquid that they were taken with; "" is water, or what a drop of the dropper is one of.
	Liquid string
	// Spread has their mean, their standard deviation, and the mark, 0 where that is not said.
	Spread
	// Common is the standard uncertainty of what is wrong with all of them alike: the balance, the
	// temperature.
	Common float64
	// Weighed: they are masses of the liquid, at Temperature within Within, in °C, and of a Density
	// there in g/mL, which is 0 for water.
	Weighed                      bool
	Temperature, Within, Density float64
}

// usualHeld is what readings of such an instrument are of when it is not said: what is made for
// both tells nothing.
func (k *Measure) usualHeld() Held {
	switch is := k.Kind.Traits(); {
	case is.Receives && is.Delivers:
		return ""
	case is.Receives:
		return Contained
	}
	return Delivered
}

// Standing is how the mean of readings counts beside the limit of error.
type Standing string

// The standings.
const (
	// Combined: the mean and the limit together.
	Combined Standing = "combined"
	// Alone: the mean lies too far off for the limit to be true of the piece, nothing is known of
	// what stays in the instrument, or the liquid is not water, for which limits hold; the mean
	// counts, and the limit does not.
	Alone Standing = "alone"
	// Few: fewer than three degrees of freedom; the limit stands.
	Few Standing = "few"
	// NotTold: it is not said what the readings are of, or at which mark.
	NotTold Standing = "not-told"
	// OfOthers: there are several pieces, or a new one each time, and the readings are of one.
	OfOthers Standing = "of-others"
	// Unused: what the kit states of a balance leaves no room for it, an error anew in each reading, or
	// the uncertainty of a weighing in place of all others.
	Unused Standing = "unused"
)

// Judged is what the mean of own readings says of a piece beside its limit.
type Judged struct {
	Own
	Standing Standing
	// Mark at which the readings were taken, 0 where that cannot be told.
	Mark float64
	// Expected is what the limit and all else that is known let the mean be, and Chance how
	// likely it lies as far off as it does, or further; 1 where there is nothing to compare with.
	Expected, Chance float64
	// whole: the error is that of all that comes out, what stays behind and clings included.
	whole bool
	// error of the piece in mL at the mark, with its degrees of freedom where it is a Student t.
	error            uncertainty.Distribution
	degreesOfFreedom float64
	// flat is the error if the assumed shape of the limit were rectangular, nil where none is assumed,
	// and assumedPart the part that the limit has in what is known of the error.
	flat        uncertainty.Distribution
	assumedPart float64
	// scatter by which the mean is judged.
	scatter Spread
	// together: the standard deviation is that of all sets of readings. markAssumed: the mark is taken
	// to be the capacity.
	together, markAssumed bool
}

// Compared reports whether there is something that the mean is compared with. Limits hold for
// water, and there is none for another liquid.
func (j *Judged) Compared() bool { return j.Expected > 0 && j.Liquid == "" }

// Counts reports whether the mean counts.
func (j *Judged) Counts() bool { return j.Standing == Combined || j.Standing == Alone }

// The chances below which a mean that lies so far off is a finding, and a hint.
const (
	tooFar = 0.01
	farOff = 0.05
)

// leastNu is the number of degrees of freedom from which on a mean counts.
const leastNu = 3

// isTooFar reports a mean that shows that the piece is not as its limit says, or not used so.
func (j *Judged) isTooFar() bool { return j.Chance < tooFar }

// judge weighs each set of readings against the limit, once all else is known of the measure.
func (k *Measure) judge() {
	var judged []Judged // the limit by itself, without what is found, is compared with
	for _, own := range k.Own {
		judged = append(judged, k.judged(own))
	}
	k.Judged = judged
}

func (k *Measure) judged(own Own) Judged {
	j := Judged{Own: own, Chance: 1}
	j.Of = cmp.Or(j.Of, k.usualHeld())
	j.scatter, j.together = k.scatterOf(own)
	j.Mark = j.At
	if j.Mark == 0 {
		j.Mark, j.markAssumed = k.usualMark(j.Mean)
	}
	switch {
	case j.Of == "" || j.Mark == 0:
		j.Standing = NotTold
		return j
	case k.Count > 1 || k.SingleUse:
		j.Standing = OfOthers
		return j
	}
	k.compare(&j)
	return j
}

// scatterOf is the spread by which a mean is judged: its own, or of few readings that of all sets
// of the liquid together.
func (k *Measure) scatterOf(own Own) (s Spread, pooled bool) {
	var same []Spread
	for i := range k.Own {
		if k.Own[i].Liquid == own.Liquid {
			same = append(same, k.Own[i].Spread)
		}
	}
	return own.pooled(same)
}

// SetCommon sets what is wrong with all readings alike, of which the relative standard uncertainty
// is stated, and the limit of the relative error of what they were read with.
func (o *Own) SetCommon(relative, span float64) {
	o.Common = o.Mean * portable.Hypot(relative, span/math.Sqrt(3))
}
