package words

import "minim/report/words/inline"

// Symbols of an uncertainty: expanded, standard and the factor between them.
var symbolU, symbolu, symbolk = inline.Symbol("U"), inline.Symbol("u"), inline.Symbol("k")

var gramsPerLitre = inline.GramsPerLitre
