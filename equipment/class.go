package equipment

import (
	"fmt"
	"math"
	"slices"
	"sync"
)

// Class is one row of a class table: what a standard, or the trade where there is
// none, allows an instrument of one size. The error of a new piece at 20 °C, read as
// the standard says, lies within ± its limit.
//
// Rows of kind "balance" hold what is typical of balances, with g for mL: Division is
// the readability, Tolerance the linearity, Random the standard deviation.
type Class struct {
	// Kind of instrument: a [Kind], or "balance".
	Kind string `csv:"kind"`
	// Form, where a kind has several. Cylinder: "tall", "squat", "plastic". Piston:
	// "air" (air displacement, one channel), "direct reusable", "direct single-use",
	// "dispenser". Beaker: "marked"; "unmarked" when it has no limit printed on it or
	// is of plastic. Dropper: "standard"; "calibrated" for its own liquid.
	Form     string `csv:"form"`
	Standard string `csv:"standard,none"` // "ISO", "ASTM", "DIN", "GOST", "USP", "Ph. Eur.", or empty: the trade alone
	Number   string `csv:"number,none"`   // the standard with its number: "ISO 4788"
	Edition  string `csv:"edition,none"`  // the year; a reapproval in brackets: "2002(2012)"
	Name     string `csv:"class,none"`    // "A" or "B", empty where there are no classes; class AS counts as A
	Marked   string `csv:"marked,none"`   // "In", "Ex", or "In/Ex" where the maker adjusts to either

	// Superseded is the year of a later edition that takes the place of this one, of which the
	// table was not seen, as editions.csv has it, with SupersededTrust.
	Superseded, SupersededTrust string

	Capacity  float64 `csv:"capacity_mL|capacity_g"`      // mL; one drop for a standard dropper
	Division  float64 `csv:"division_mL|division_g,none"` // mL, 0 for one mark and where the maker chooses it
	Tolerance float64 `csv:"tolerance_mL|tolerance_g"`    // mL, half-width of the limit at the capacity
	Bore      float64 `csv:"bore_mm,none"`                // mm inside at the marks, 0 when not known; Note says when it is an upper limit

	Random    float64 `csv:"random_mL|random_g,none"` // mL, limit of the standard deviation of deliveries, 0 where there is none
	Share     float64 `csv:"share,none"`              // the limit as a share of the volume measured, 0 where Tolerance holds at every mark
	DeadSpace float64 `csv:"dead_space_mL,none"`      // mL that stay in a syringe pressed home, at most; 0 elsewhere
	Numbered  float64 `csv:"numbered_mL,none"`        // mL from one numbered mark of the scale to the next, 0 without a scale

	// BelowHalfFixed in mL and BelowHalfShare are the limit below half of the capacity
	// instead, a fixed part and a share of the volume measured; 0 where there is no such rule.
	BelowHalfFixed float64 `csv:"below_half_fixed_mL,none"`
	BelowHalfShare float64 `csv:"below_half_share,none"`

	Source         string `csv:"source"`                // where the figures were seen
	Trust          string `csv:"trust"`                 // "two sources", "one source", "derived" (twice class A by rule, no row seen) or "from memory"
	DivisionTrust  string `csv:"division_trust,none"`   // the same for Division, where it was seen elsewhere than the limit
	RandomTrust    string `csv:"random_trust,none"`     // the same for Random of a balance
	BoreTrust      string `csv:"bore_trust,none"`       // the same for Bore, empty when Bore is 0
	DeadSpaceTrust string `csv:"dead_space_trust,none"` // the same for DeadSpace
	NumberedTrust  string `csv:"numbered_trust,none"`   // the same for Numbered
	Note           string `csv:"note"`                  // conflicts and derivations
}

// limit is the half-width in mL of the limit of error at a volume in mL. It is
// Tolerance at every mark for glass and pistons; a share of the volume V for what is
// allowed a share; and for a syringe of capacity C (ISO 7886-1), which is allowed
// relatively more when little of it is used,
//
//	BelowHalfFixed + BelowHalfShare V  for V < C/2
//	Share V                              for V >= C/2
//
// It panics when the volume is negative or not finite.
func (c Class) limit(volume float64) float64 {
	half := c.Capacity / 2
	switch {
	case !(volume >= 0) || math.IsInf(volume, 1):
		panic(fmt.Sprintf("equipment: limit at a volume of %v mL", volume))
	case c.belowHalf() && volume < half && !sameVolume(volume, half):
		return c.BelowHalfFixed + float64(c.BelowHalfShare*volume)
	case c.Share > 0:
		return c.Share * volume
	default:
		return c.Tolerance
	}
}

// fromMemory is the trust of a figure that was not seen in print.
const fromMemory = "from memory"

// String names the class as a report does: "ISO 4788:2005 class B, tall form".
func (c Class) String() string {
	text := c.Published()
	if c.Name != "" {
		text += " class " + c.Name
	}
	if c.Form != "" {
		text += ", " + c.Form
	}
	if c.Form == "tall" || c.Form == "squat" {
		text += " form"
	}
	return text
}

// Published names the standard as it is cited: "ISO 4788:2005", "ASTM E288-10".
func (c Class) Published() string {
	switch {
	case c.Standard == "":
		return "no standard"
	case c.Edition == "":
		return c.Number
	case c.Standard == "ASTM" || c.Standard == "GOST": // two digits of the year
		return c.Number + "-" + c.Edition[2:]
	case c.Standard == "USP":
		return c.Number + ", edition " + c.Edition
	default:
		return c.Number + ":" + c.Edition
	}
}

// alsoAS reports whether class AS (swift delivery) has the limit of this row:
// ISO 648, ISO 835 and ISO 385 give classes A and AS one column.
func (c Class) alsoAS() bool {
	is := Kind(c.Kind).Traits()
	return is.Lettered && !is.Receives && c.Standard == "ISO" && c.Name == "A"
}

// belowHalf reports whether another limit holds below half of the capacity.
func (c Class) belowHalf() bool { return c.BelowHalfFixed > 0 || c.BelowHalfShare > 0 }

// varies reports whether the limit depends on the volume measured.
func (c Class) varies() bool { return c.Share > 0 || c.belowHalf() }

// classTable holds what [findClass] searches. What a table lists first is what is
// assumed when a kit does not state it.
var classTable = sync.OnceValue(func() (classes []Class) {
	for _, name := range []string{"cylinders", "cylinders_plastic", "flasks", "pipettes_one_mark", "pipettes_graduated", "burettes",
		"pipettes_piston", "syringes", "printed_scales", "droppers"} {
		classes = append(classes, readTable[Class](tableFiles, name)...)
	}
	for _, e := range readTable[edition](tableFiles, "editions") {
		for i := range classes {
			if c := &classes[i]; c.Number == e.Number && c.Edition == e.Edition {
				c.Superseded, c.SupersededTrust = e.Superseded, e.Trust
			}
		}
	}
	return classes
})

// edition is one of a standard that a later one has superseded.
type edition struct {
	Number     string `csv:"number"`
	Edition    string `csv:"edition"`
	Superseded string `csv:"superseded"`
	Source     string `csv:"source"`
	Trust      string `csv:"trust"`
}

// Classes returns every row of the class tables, in table order, and after them what is
// typical of balances, for information: no kit states a class for a balance.
func Classes() []Class { return slices.Concat(classTable(), readTable[Class](tableFiles, "balances")) }
