package figure

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty/route"
)

// A picture of a changed kit says so, whatever its title is, and how; one of the kit
// as it is says nothing of it.
func TestFigureOfAChangedKit(t *testing.T) {
	c := compare(t, cases["usual"])
	for name, draw := range kinds {
		assert.NotContains(t, strings.ToLower(string(svgOf(t, draw, c))), "changed", name)
	}
	for name, draw := range ofUsed {
		one := func(c *route.Comparison) (*Figure, error) { return draw(c, useOf(c)) }
		assert.NotContains(t, strings.ToLower(string(svgOf(t, one, c))), "changed", name)
	}
	change, err := benchfile.ParseChange("--change", "rough scale: readability = 0.001 g")
	require.NoError(t, err)
	c.Prep.Changes = []equipment.Change{{Name: change.Name, Key: change.Key, Value: change.Value}}
	for name, draw := range kinds {
		svg := svgOf(t, draw, c)
		assert.Contains(t, string(svg), "within 8 % of target, on a changed kit: ", name)
		words := texts(t, svg)
		assert.Contains(t, words, "On a changed kit. An invented recipe: 15 mL of 0.04 % w/v dye in water, within 8 % of target", name)
		assert.Contains(t, words, "Changed: rough scale: readability = 0.001 g", name)
		assert.Contains(t, words, "Note: invented for a test", name)
		checkPlaces(t, draw, c)
	}
	for name, draw := range ofUsed {
		svg := svgOf(t, func(c *route.Comparison) (*Figure, error) { return draw(c, useOf(c)) }, c)
		assert.Contains(t, strings.Join(texts(t, svg), "\n"), "On a changed kit. ", name)
		assert.Regexp(t, `aria-label="[^"]*On a changed kit`, string(svg), name)
	}
	c = hostile(c)
	for name, draw := range kinds {
		assert.Contains(t, strings.Join(texts(t, svgOf(t, draw, c)), "\n"), "\nOn a changed kit. ", name)
		checkFigure(t, draw, c)
	}
}
