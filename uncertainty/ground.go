package uncertainty

// By is a kind of ground: by what a figure is known.
type By string

// The kinds of grounds that any figure may have; there are more in the packages above.
const (
	// Stated: by whoever describes its owner.
	Stated By = ""
	// Tabled: by a standard or a table.
	Tabled By = "table"
	// Observed: by readings of one's own, and ObservedWithin by them and a limit together.
	Observed       By = "readings"
	ObservedWithin By = "readings within a limit"
	// Computed from other figures, and by Definition of a unit.
	Computed   By = "computed"
	Definition By = "definition"
	// Remembered: by nothing that was seen.
	Remembered By = "memory"
)

// Ground is what the figure of an influence, or of a constant, rests on. It is for reading: no
// figure depends on it.
type Ground struct {
	By By
	// Of is the standard, the table or the word that it goes by, and Trust how that was seen.
	Of, Trust string
	// Figures that it was made of, in the order that the kind of ground has.
	Figures [3]float64
}

// IsStatistical reports whether the figure was found from readings alone, or from readings and
// other knowledge together (Type A of JCGM 100, 2.3.2).
func (g Ground) IsStatistical() (alone, together bool) {
	return g.By == Observed, g.By == ObservedWithin
}

// isRecalled reports whether it was seen by nobody.
func (g Ground) isRecalled() bool { return g.By == Remembered || g.Trust == "from "+string(Remembered) }
