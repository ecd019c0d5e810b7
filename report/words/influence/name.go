package influence

import (
	"strconv"
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// names of influences by their codes. {of} is what it is an influence of, {piece} the same
// with the number of the piece, {mark} where it is read, {load} what is on a balance, {part}
// which of several it is, {beside} what it is compared with.
var names = map[string]string{
	// Of volumetric instruments.
	"bias":                       "bias of the {piece} at {mark}",
	"bias of the piece":          "bias of the {piece}",
	"bias common to marks":       "bias of the {piece}, common to its marks",
	"bias own to a mark":         "bias of the {piece} at {mark}, own",
	"bias relative to its limit": "bias of the {piece}, relative to its limit",
	"correction":                 "correction of the {piece}",
	"bias by readings":           "bias of the {piece} at {mark}, by its readings",
	"bias by readings with":      "bias of the {piece} with {beside} at {mark}, by its readings",
	"delivered by readings with": "what the {piece} delivers of {beside} at {mark}, by its readings",
	"delivered by readings":      "what the {piece} delivers at {mark}, by its readings",
	"pen line":                   "line of the {of}",
	"retained":                   "retained in the {of}",
	"scatter of pours":           "scatter of what stays in the {of}",
	"should have kept":           "what the {of} should have kept",
	"retained by design":         "retained in the {of} by design",
	"film":                       "film carried over in the {of}",
	"scatter of drops":           "scatter of the drops of the {of}",
	"size of drops":              "size of a drop of {of} beside one of {beside}",
	"repeatability":              "repeatability of the {of}",
	"reading":                    "reading of the {of}",
	secondReading:                "second reading of the {of}",
	"clinging drops":             "drops clinging in the {of}",
	"meniscus":                   "meniscus of {of}",
	"bore":                       "bore of the {piece}",
	"wetting":                    "how far {beside} rises in the plastic of the {piece}",
	"meniscus of a mixture":      "where the meniscus of {of} lies between those of its parts",
	"expansion of a mixture":     "where the thermal expansion of {beside} lies between those of its parts",
	"cushion":                    "bias of the {piece} with {beside} at {mark}, relative to its limit",
	"cushion of the piece":       "bias of the {piece} with {beside}, relative to its limit",
	"cushion common to marks":    "bias of the {piece} with {beside}, common to its marks, relative to its limit",
	"cushion own to a mark":      "bias of the {piece} with {beside} at {mark}, own, relative to its limit",
	// Of balances.
	"weighing":                        "weighing, {of}",
	repeatedWeighing:                  "repeatability, {of}",
	"rounding at zero":                "rounding at zero, {of}",
	"rounding at load":                "rounding at load, {of}",
	"linearity":                       "linearity, {of}",
	"linearity at zero":               "linearity at zero, {of}",
	"linearity at a load":             "linearity near {load}, {piece}",
	"linearity at a load in a boat":   "linearity near {load} in a boat, {piece}",
	"linearity at a load in a vessel": "linearity near {load} in a vessel, {piece}",
	emptyBoat:                         "linearity at the empty boat, {piece}",
	emptyVessel:                       "linearity at the empty vessel, {piece}",
	"curve of linearity":              "curve of linearity, part {part}, {piece}",
	"curve of linearity that grows":   "curve of linearity at great loads, part {part}, {piece}",
	"error at a check weight":         "error of the {piece} at {load}, by its readings",
	"sensitivity":                     "sensitivity of the {of}",
	"left on the boat":                "left on the boat, {of}",
	// Of materials and the day.
	"temperature":         "temperature of the bench",
	"evaporation":         "evaporation of {of}",
	"loss with age":       "strength that {of} has lost",
	"buoyancy":            "buoyancy of the air",
	"content":             "content of the {of}",
	"strength":            "strength of {of}",
	"volume":              "volume of {of}",
	"assay":               "assay of the {of}",
	"molar mass":          "molar mass of the {of}",
	"density":             "density of the {of}",
	"activity":            "activity of the {of}",
	"shrinking":           "how much less {of} takes up when it is mixed",
	"specific volume":     "specific volume of the {of}",
	"expansion":           "thermal expansion of the {of}",
	"density of a liquid": "density of {of}",
	// Figures that are taken as exactly known.
	"expansion of a liquid": "thermal expansion of {of}",
	"span of expansion":     "by how much more {of} may expand",
	"limit of error":        "limit of error of the {of}",
	"limit with a cushion":  "limit of the {of} with a liquid other than water, relative",
	"part of a meniscus":    "meniscus in the {of}, constant part",
	"meniscus by bore":      "meniscus in the {of}, change with its bore",
	"part left by a rinse":  "part that a rinse leaves in the {of}",
	"drop":                  "drop of the {of}",
	"conversion":            "conversion, {of}",
	"form factor":           "form factor of the {of}",
	"contraction":           "part that is left of the volume when {of} is mixed",
	"slope of a density":    "change of the density of {of} with its mass fraction",
	"counted of a form":     "part that counts of what the label of {of} states",
	// Quantities on the way.
	"":                            "an unnamed quantity",
	"total mass":                  "the total mass on the {of}",
	"mass of the solution":        "the mass of the solution",
	"density of the solution":     "the density of the solution",
	"solvent in the solution":     "the solvent in the solution",
	"volume of the solution":      "the volume of the solution",
	"volume in a vessel":          "the volume in the {of}",
	"mixed volume":                "the mixed volume",
	"fill of a line":              "a fill of the {of}",
	"error of linearity":          "the error of linearity, {of}",
	"volume measured":             "the volume measured with the {of}",
	"mass weighed":                "the mass of {of} weighed",
	"purity":                      "the part of the {of} that counts",
	"concentration of a solution": "the concentration of the solution",
	"concentration of a stock":    "the concentration of {of}",
	"fraction of a solution":      "the mass fraction of the solution",
	"strength in a unit":          "the strength",
}

// What a code alone does not tell.
const (
	secondReading    = "reading, second"
	repeatedWeighing = "repeatability of a mass"
	emptyBoat        = "linearity at an empty boat"
	emptyVessel      = "linearity at an empty vessel"
)

// Name is how an influence, or a quantity on the way, is called; "" of none. One that has
// no words is called by its code.
func Name(in *uncertainty.Influence) string {
	if in == nil {
		return ""
	}
	code, beside := key(in)
	text, found := names[code]
	if !found {
		return code
	}
	piece := in.Group.Name
	if in.Owner.Kind == uncertainty.Instrument {
		piece = pieceOf(in.Owner)
	}
	return strings.NewReplacer("{of}", in.Group.Name, "{piece}", piece, "{mark}", quantity.Millilitres(in.At),
		"{load}", quantity.Grams(in.At), "{part}", strconv.Itoa(int(in.At)+1), "{beside}", beside).Replace(text)
}

// groups that are not called by their names alone.
var groups = map[uncertainty.Kind]string{
	uncertainty.Day:     "temperature",
	uncertainty.Bench:   "meniscus of {of}",
	uncertainty.Dropped: "size of the drops of {of}",
	"film":              "{of}, not rinsed",
	"evaporation":       "evaporation of {of}",
	"mixing":            "what {of} takes up less when it is mixed",
}

// Group is how a group of influences is called: an instrument, a material, a cause.
func Group(g uncertainty.Group) string {
	if text, found := groups[g.Kind]; found {
		return strings.ReplaceAll(text, "{of}", g.Name)
	}
	return g.Name
}
