package equipment

import (
	"fmt"
	"math"
	"slices"
)

// Class is one row of a class table: what a standard, or the trade where there is
// none, allows an instrument of one size. The error of a new piece at 20 °C, read as
// the standard says, lies within ± [Class.Limit].
//
// Rows of kind "balance" hold what is typical of balances, with g for mL: Division is
// the readability, Tolerance the linearity, Random the standard deviation.
type Class struct {
	// Kind: "cylinder", "flask", "one-mark", "graduated" and "transfer" (pipettes),
	// "burette", "piston", "syringe", "beaker", "conical-flask", "conical-measure",
	// "dropper", "balance".
	Kind string
	// Form, where a kind has several. Cylinder: "tall", "squat", "plastic". Piston:
	// "air" (air displacement, one channel), "direct reusable", "direct single-use",
	// "dispenser". Beaker: "marked"; "unmarked" when it has no limit printed on it or
	// is of plastic. Dropper: "standard"; "calibrated" for its own liquid.
	Form     string
	Standard string // "ISO", "ASTM", "DIN", "GOST", "USP", "Ph. Eur.", or empty: the trade alone
	Number   string // the standard with its number: "ISO 4788"
	Edition  string // the year; a reapproval in brackets: "2002(2012)"
	Name     string // "A" or "B", empty where there are no classes; class AS counts as A
	Marked   string // "In", "Ex", or "In/Ex" where the maker adjusts to either

	Capacity  float64 // mL; one drop for a standard dropper
	Division  float64 // mL, 0 for one mark and where the maker chooses it
	Tolerance float64 // mL, half-width of the limit at the capacity
	Bore      float64 // mm inside at the marks, 0 when not known; Note says when it is an upper limit

	Random    float64 // mL, limit of the standard deviation of deliveries, 0 where there is none
	Share     float64 // the limit as a share of the volume measured, 0 where Tolerance holds at every mark
	BelowHalf Sloped  // the limit below half of the capacity instead, zero where there is no such rule
	DeadSpace float64 // mL that stay in a syringe pressed home, at most; 0 elsewhere
	Numbered  float64 // mL from one numbered mark of the scale to the next, 0 without a scale

	Source         string // where the figures were seen
	Trust          string // "two sources", "one source", "derived" (twice class A by rule, no row seen) or "from memory"
	DivisionTrust  string // the same for Division, where it was seen elsewhere than the limit
	RandomTrust    string // the same for Random of a balance
	BoreTrust      string // the same for Bore, empty when Bore is 0
	DeadSpaceTrust string // the same for DeadSpace
	NumberedTrust  string // the same for Numbered
	Note           string // conflicts and derivations
}

// Sloped is a limit that grows with the volume V measured, from a fixed part:
//
//	Fixed + Share V
type Sloped struct{ Fixed, Share float64 }

// Limit is the half-width in mL of the limit of error at a volume in mL. It is
// Tolerance at every mark for glass and pistons; a share of the volume V for what is
// allowed a share; and for a syringe of capacity C (ISO 7886-1), which is allowed
// relatively more when little of it is used,
//
//	BelowHalf.Fixed + BelowHalf.Share V  for V < C/2
//	Share V                              for V >= C/2
//
// It panics when the volume is negative or not finite.
func (c Class) Limit(volume float64) float64 {
	half := c.Capacity / 2
	switch {
	case !(volume >= 0) || math.IsInf(volume, 1):
		panic(fmt.Sprintf("equipment: limit at a volume of %v mL", volume))
	case c.BelowHalf != Sloped{} && volume < half && !sameVolume(volume, half):
		return c.BelowHalf.Fixed + float64(c.BelowHalf.Share*volume)
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
	switch c.Form {
	case "":
		return text
	case "tall", "squat":
		return text + ", " + c.Form + " form"
	default:
		return text + ", " + c.Form
	}
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
	delivers := c.Kind == "one-mark" || c.Kind == "graduated" || c.Kind == "burette"
	return delivers && c.Standard == "ISO" && c.Name == "A"
}

// Classes returns every row of the class tables, in table order, and what is typical
// of balances after them.
func Classes() []Class { return slices.Concat(classTable(), balanceTable()) }
