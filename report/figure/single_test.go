package figure

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/plot/vg"

	"minim/report/words/picture"
	"minim/uncertainty/route"
)

// ofUsed are the figures of one route.
var ofUsed = map[string]func(*route.Comparison, *route.Result) (*Figure, error){"vessels": RowOf, "result": OneResult}

func useOf(c *route.Comparison) *route.Result { return &c.Results[c.Verdict.Use] }

// No two words of a figure of one route overlap, and none leaves it.
func TestFiguresOfOneRoute(t *testing.T) {
	skipIfSlow(t)
	for of, prep := range cases {
		c := compare(t, prep)
		for name, draw := range ofUsed {
			t.Run(name+" "+of, func(t *testing.T) {
				one := func(c *route.Comparison) (*Figure, error) { return draw(c, useOf(c)) }
				list, width, height := boxes(t, one, c)
				checkBoxes(t, list, width, height, -1)
				svg := string(svgOf(t, one, c))
				assert.NotContains(t, svg, "NaN")
				assert.NotContains(t, svg, "Inf")
			})
		}
	}
}

// The figure of one result is 85 × 45 mm, with letters of 8 points.
func TestOneResultIsPrintedAsItIs(t *testing.T) {
	c := compare(t, cases["usual"])
	f, err := OneResult(c, useOf(c))
	require.NoError(t, err)
	assert.InDelta(t, 85.0, f.width.Points()*25.4/72, 0.01)
	assert.InDelta(t, 45.0, f.height.Points()*25.4/72, 0.01)
	svg := string(svgOf(t, func(c *route.Comparison) (*Figure, error) { return OneResult(c, useOf(c)) }, c))
	for _, found := range fontSize.FindAllStringSubmatch(svg, -1) {
		assert.Equal(t, "8", found[1])
	}
	words := strings.Join(texts(t, []byte(svg)), "\n")
	for _, said := range []string{"Fine, diluted: ", " in 100 inside", " ± ", "that is ± ", "(95 %)", "a", "% w/v"} {
		assert.Contains(t, words, said)
	}
}

// Hatched is what is assumed in one figure and what is left over in another; the bar of one result has
// shares of any kind, and so no hatch.
func TestBarOfOneResultHasNoHatch(t *testing.T) {
	c := demo(t)
	svg := string(svgOf(t, func(c *route.Comparison) (*Figure, error) { return OneResult(c, useOf(c)) }, c))
	assert.False(t, strings.Contains(svg, "stroke:#D55E00;stroke-width:0.9"), "hatched")
}

// All hundred dots of one result are within the picture, and no two are at one place.
func TestOneResultHasAHundredDots(t *testing.T) {
	skipIfSlow(t)
	for name, prep := range cases {
		c := compare(t, prep)
		alone := *c
		alone.Results, alone.Verdict.Use = []route.Result{*useOf(c)}, 0
		o := &oneResult{c: &alone, window: holding(&alone)}
		values := hundred(&alone.Results[0])
		stacks, tallest := stack(o.held(values), o.window)
		places := make(map[vg.Point]bool)
		for i, v := range o.held(values) {
			places[vg.Point{X: vg.Length(int(o.window.at(v))), Y: vg.Length(stacks[i])}] = true
			assert.InDelta(t, v, values[i], o.window.step, name)
		}
		assert.Len(t, places, 100, name)
		assert.LessOrEqual(t, tallest, 100, name)
	}
}

// What is left over at the vessels is what the route leaves over, and the title says where most of it is.
func TestVesselsAddUp(t *testing.T) {
	skipIfSlow(t)
	c := compare(t, cases["usual"])
	row, err := picture.OfVessels(c.Prep, useOf(c))
	require.NoError(t, err)
	require.Len(t, row.Vessels, 2)
	// 25 mL of which 1 mL goes on, and 25 mL of which 15 mL are wanted (constructed).
	assert.InDelta(t, 24.0/25, row.Vessels[0].Stays, 1e-9)
	assert.InDelta(t, 10.0/25, row.Vessels[1].Stays, 1e-9)
	assert.InDelta(t, 34.0, useOf(c).LeftOverML, 1e-9)
	assert.Equal(t, "Fine, diluted: 34 mL left over, most of it (24 mL) at "+row.Vessels[0].Strength, row.Title.String())
	assert.Equal(t, []string{"0.2500 g of dye"}, row.Vessels[0].In)
	assert.Equal(t, []string{"1 mL"}, row.Vessels[1].In)
	assert.Equal(t, "24 mL left over", row.Vessels[0].Left)
	assert.True(t, row.Vessels[1].Last)
}

// The shares of a bar are those of the whole variance.
func TestPortionsAddUp(t *testing.T) {
	skipIfSlow(t)
	for name, prep := range cases {
		c, sum := compare(t, prep), 0.0
		for i := range c.Results {
			if !c.Results[i].Possible {
				continue
			}
			list := picture.Portions(&c.Results[i])
			assert.LessOrEqual(t, len(list), 6, name)
			for sum = 0; len(list) > 0; list = list[1:] {
				sum += list[0].Part
			}
			assert.False(t, math.Abs(sum-1) > 1e-9, "%s: %v", name, sum)
		}
	}
}

// What a comparison comes to is said of every kind of question.
func TestFindings(t *testing.T) {
	skipIfSlow(t)
	for name, want := range map[string][]string{
		"usual":        {"Fine, diluted: ", " in 100 inside, 34 mL left over; "},
		"one route":    {" in 100 inside, 34 mL left over"},
		"no tolerance": {"Fine, diluted: 95 in 100 within ", " of target, 34 mL left over; direct: could be nothing at all"},
		"not above":    {" in 100 not above 0.044 % w/v, "},
		"far off":      {": under 0.1 in 100 inside (95 asked for), "},
	} {
		finding := picture.Finding(compare(t, cases[name])).String()
		for _, part := range want {
			assert.Contains(t, finding, part, name)
		}
	}
}
