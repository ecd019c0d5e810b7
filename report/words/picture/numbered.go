package picture

import (
	"strconv"

	"minim/report/words/clause"
)

// What a name can be of that becomes a number.
const (
	Route      = "route"
	Solute     = "the solute"
	Solvent    = "the solvent"
	Instrument = "instrument"
	Stock      = "material"
)

// Numbered stands for the i-th of so many names of a kind: "route 3", "the solute".
func Numbered(kind string, i, of int) string {
	return clause.Either(kind == Solute || kind == Solvent, kind, kind+" "+strconv.Itoa(i+1))
}

// NotShown says that some names are numbers.
const NotShown = "Names in letters that this picture cannot show stand as numbers here, in the order of the files; the SVG and the tables have them."
