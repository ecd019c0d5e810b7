package influence

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty"
)

// Whose an influence is, in words.
func TestOwners(t *testing.T) {
	for want, o := range map[string]uncertainty.Owner{
		"step 3 of two dilutions":                 {Kind: uncertainty.OneUse, Name: "two dilutions", Step: 3, With: "pipette"},
		"step 3 of two dilutions, tare":           {Kind: uncertainty.Tare, Name: "two dilutions", Step: 3},
		"rung 1 of two dilutions":                 {Kind: uncertainty.Rung, Name: "two dilutions", Step: 1},
		"fill 2 for the line of the jar, piece 1": {Kind: uncertainty.Fill, Name: "jar", Step: 2, Piece: 1},
		"day of two dilutions":                    {Kind: uncertainty.Day, Name: "two dilutions"},
		"the bench":                               {Kind: uncertainty.Bench, Name: "ethanol"},
		"flask, piece 2":                          {Kind: uncertainty.Instrument, Name: "flask", Piece: 2},
		"flask":                                   {Kind: uncertainty.Instrument, Name: "flask"},
		"urea":                                    {Kind: uncertainty.Substance, Name: "urea"},
		"urea in water":                           {Kind: uncertainty.Dropped, Name: "urea in water"},
	} {
		assert.Equal(t, want, Owner(o))
	}
}
