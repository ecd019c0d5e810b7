package influence

import (
	"fmt"

	"minim/uncertainty"
)

// Owner says whose an influence is: an instrument's, a material's, the day's, or that
// of one use, "step 3 of two dilutions".
func Owner(o uncertainty.Owner) string {
	switch o.Kind {
	case uncertainty.OneUse:
		return fmt.Sprintf("step %d of %s", o.Step, o.Name)
	case uncertainty.Tare:
		return fmt.Sprintf("step %d of %s, tare", o.Step, o.Name)
	case uncertainty.Rung:
		return fmt.Sprintf("rung %d of %s", o.Step, o.Name)
	case uncertainty.Fill:
		return fmt.Sprintf("fill %d for the line of the %s", o.Step, pieceOf(o))
	case uncertainty.Day:
		return "day of " + o.Name
	case uncertainty.Bench:
		return "the bench"
	default:
		return pieceOf(o)
	}
}

// pieceOf is an instrument or a material, and the number of the piece where there are several.
func pieceOf(o uncertainty.Owner) string {
	if o.Piece == 0 {
		return o.Name
	}
	return fmt.Sprintf("%s, piece %d", o.Name, o.Piece)
}
