package policy

// Reading is what a step of a route is read at.
type Reading struct {
	Amount float64
	// Scaled: there is more than one mark, so that the amount is read off. Low: below the part of the
	// scale from which on it is read well.
	Scaled, Low bool
	// Piece of an instrument whose error counts in all its uses, nil without one; Rises: the
	// strength rises with the amount.
	Piece any
	Rises bool
}

// Handling is what of the figures follows from the readings, and from whether a vessel is larger than needed.
func Handling(list []Reading, tooLarge bool) Figures {
	return Figures{LowOnScale: FirstLow(list) >= 0, BothWays: FirstBothWays(list) >= 0, TooLarge: tooLarge, Roundness: RoundnessIn(list)}
}

// RoundnessIn is that of some readings, of which what has one mark is none.
func RoundnessIn(list []Reading) (sum float64) {
	for _, r := range list {
		if r.Scaled {
			sum += RoundnessOf(r.Amount)
		}
	}
	return sum
}

// FirstLow is the place of the first that is low, -1 without one.
func FirstLow(list []Reading) int {
	for i, r := range list {
		if r.Low {
			return i
		}
	}
	return -1
}

// FirstBothWays is the place of the first by which a piece makes the solution weaker that made it stronger
// before, or stronger that made it weaker, so that its error may cancel; -1 without one.
func FirstBothWays(list []Reading) int {
	rises := make(map[any]bool)
	for i, r := range list {
		if r.Piece == nil {
			continue
		}
		if before, used := rises[r.Piece]; used && before != r.Rises {
			return i
		}
		rises[r.Piece] = r.Rises
	}
	return -1
}
