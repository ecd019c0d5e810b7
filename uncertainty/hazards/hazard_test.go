package hazards

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/strengths"
)

// Constructed: thresholds of 2 and 6 in the unit of the target.
func TestAt(t *testing.T) {
	solute := []string{"Toxic"}
	two := Stated{From: strengths.Strength{Value: 2, Text: "2"}, Words: []string{"irritant"}}
	six := Stated{From: strengths.Strength{Value: 6, Text: "6"}, Words: []string{"corrosive"}}
	instead := six
	instead.Replaces = true
	for _, test := range []struct {
		name         string
		hazards      []Stated
		lower, upper float64
		words        []string
		straddled    int
	}{
		{"nothing stated for any strength", nil, 1, 1, nil, 0},
		{"weaker than all", []Stated{two, six}, 1, 1.9, nil, 0},
		{"the upper end decides", []Stated{two, six}, 1, 2, []string{"irritant"}, 1},
		{"words of weaker strengths stay", []Stated{six, two}, 7, 8, []string{"irritant", "corrosive"}, 0},
		{"unless they are replaced", []Stated{two, instead}, 7, 8, []string{"corrosive"}, 0},
		{"which the lower end decides", []Stated{two, instead}, 5, 8, []string{"irritant", "corrosive"}, 1},
	} {
		t.Run(test.name, func(t *testing.T) {
			h := At(test.hazards, solute, test.lower, test.upper)
			assert.Equal(t, test.words, h.Solution)
			assert.Equal(t, solute, h.Undiluted)
			assert.Len(t, h.Straddled, test.straddled)
		})
	}
}

func TestStrongOrUnknown(t *testing.T) {
	for _, test := range []struct {
		h    OfSolution
		want bool
	}{
		{OfSolution{}, true},
		{OfSolution{Undiluted: []string{"none known"}}, false},
		{OfSolution{Undiluted: []string{"flammable"}, Solution: []string{" Alkali"}}, true},
		{OfSolution{Undiluted: []string{"ACID"}, Solution: []string{"irritant"}}, true},
		{OfSolution{Undiluted: []string{"toxic"}}, false},
	} {
		assert.Equal(t, test.want, test.h.Strong(), "%+v", test.h)
	}
}
