package route

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Constructed: thresholds of 2 and 6 in the unit of the target.
func TestHazardsAt(t *testing.T) {
	solute := []string{"Toxic"}
	two := Hazard{From: Strength{Value: 2, Text: "2"}, Words: []string{"irritant"}}
	six := Hazard{From: Strength{Value: 6, Text: "6"}, Words: []string{"corrosive"}}
	instead := six
	instead.Replaces = true
	for _, test := range []struct {
		name         string
		hazards      []Hazard
		lower, upper float64
		words        []string
		straddled    int
	}{
		{"nothing stated for any strength", nil, 1, 1, nil, 0},
		{"weaker than all", []Hazard{two, six}, 1, 1.9, nil, 0},
		{"the upper end decides", []Hazard{two, six}, 1, 2, []string{"irritant"}, 1},
		{"words of weaker strengths stay", []Hazard{six, two}, 7, 8, []string{"irritant", "corrosive"}, 0},
		{"unless they are replaced", []Hazard{two, instead}, 7, 8, []string{"corrosive"}, 0},
		{"which the lower end decides", []Hazard{two, instead}, 5, 8, []string{"irritant", "corrosive"}, 1},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := &Prep{Hazards: test.hazards, Solute: Solute{Hazards: solute}}
			h := p.HazardsAt(test.lower, test.upper)
			assert.Equal(t, test.words, h.Solution)
			assert.Equal(t, solute, h.Undiluted)
			assert.Len(t, h.Straddled, test.straddled)
		})
	}
}

func TestStrongOrUnknown(t *testing.T) {
	for _, test := range []struct {
		h    SolutionHazards
		want bool
	}{
		{SolutionHazards{}, true},
		{SolutionHazards{Undiluted: []string{"none known"}}, false},
		{SolutionHazards{Undiluted: []string{"flammable"}, Solution: []string{" Alkali"}}, true},
		{SolutionHazards{Undiluted: []string{"ACID"}, Solution: []string{"irritant"}}, true},
		{SolutionHazards{Undiluted: []string{"toxic"}}, false},
	} {
		assert.Equal(t, test.want, test.h.Strong(), "%+v", test.h)
	}
}
