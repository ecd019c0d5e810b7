package figure

import (
	"bytes"
	"context"
	"encoding/xml"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/plot/vg"

	pixels "minim/report/figure/png"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// texts reads an SVG strictly and returns the words of its text elements.
func texts(t *testing.T, svg []byte) (words []string) {
	t.Helper()
	require.True(t, utf8.Valid(svg))
	d := xml.NewDecoder(bytes.NewReader(svg))
	inside := false
	for {
		token, err := d.Token()
		if err == io.EOF {
			return words
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			inside = token.Name.Local == "text"
			assert.Contains(t, []string{"svg", "g", "path", "text"}, token.Name.Local)
		case xml.EndElement:
			inside = false
		case xml.CharData:
			if inside {
				words = append(words, string(token))
			}
		}
	}
}

// kind is one of the figures of the package.
type kind func(*route.Comparison) (*Figure, error)

var kinds = map[string]kind{"spread": Spread, "budget": Budgets}

func svgOf(t *testing.T, draw kind, c *route.Comparison) []byte {
	t.Helper()
	f, err := draw(c)
	require.NoError(t, err)
	svg, err := f.SVG()
	require.NoError(t, err)
	return svg
}

func TestFiguresStandEveryCase(t *testing.T) {
	skipIfSlow(t)
	for name, prep := range cases {
		t.Run(name, func(t *testing.T) {
			c := compare(t, prep)
			for _, draw := range kinds {
				checkFigure(t, draw, c)
			}
		})
	}
}

func TestFiguresStandHostileWords(t *testing.T) {
	c := hostile(compare(t, cases["usual"]))
	for _, draw := range kinds {
		checkFigure(t, draw, c)
		words := strings.Join(texts(t, svgOf(t, draw, c)), "\n")
		assert.Contains(t, words, `dye "<!--" in`)
		assert.Contains(t, words, "<b>&\"'")
	}
}

// checkFigure draws a figure and checks what must hold of every one.
func checkFigure(t *testing.T, draw kind, c *route.Comparison) {
	f, err := draw(c)
	require.NoError(t, err)
	svg, err := f.SVG()
	require.NoError(t, err)
	assert.Less(t, len(svg), 400_000)
	words := strings.Join(texts(t, svg), "\n")
	for _, r := range c.Results {
		start := []rune(runs(clean(r.Route.Name) + " ")[0].words)
		assert.Contains(t, words, strings.TrimSpace(string(start[:min(10, len(start))])))
	}
	assert.NotContains(t, string(svg), "NaN")
	assert.NotContains(t, string(svg), "Inf")
}

// thorough is false under the race detector.
var thorough = true

// skipIfSlow leaves out under the race detector what simulates or draws often.
func skipIfSlow(t *testing.T) {
	t.Helper()
	if !thorough {
		t.Skip("run without the race detector")
	}
}

// dotsPerInch that a PNG is said to have.
const dotsPerInch = 200

// A PNG has the size of the figure, and a few hundred thousand bytes. These are few, since they take long to draw.
func TestSizeOfPNG(t *testing.T) {
	skipIfSlow(t)
	for _, c := range []*route.Comparison{compare(t, cases["usual"]), hostile(compare(t, cases["usual"]))} {
		for _, draw := range kinds {
			f, err := draw(c)
			require.NoError(t, err)
			raw, err := pixels.Of(f)
			require.NoError(t, err)
			assert.Less(t, len(raw), 250_000)
			picture, err := png.Decode(bytes.NewReader(raw))
			require.NoError(t, err)
			assert.Equal(t, 8*dotsPerInch, picture.Bounds().Dx())
			assert.Equal(t, int(math.Round(float64(f.InPixels().height/vg.Inch)*dotsPerInch)), picture.Bounds().Dy())
		}
	}
}

func TestSpreadSaysWhatItShows(t *testing.T) {
	words := texts(t, svgOf(t, Spread, compare(t, cases["usual"])))
	for _, want := range []string{
		"An invented recipe: 15 mL of 0.04 % w/v dye in water, within 8 % of target", "Note: invented for a test",
		"fine, diluted", "rough, diluted", "direct", "could be nothing at all", "USE THIS ROUTE", "inside the tolerance",
		"strength / % w/v", "difference from the target / %",
		"Not possible: too little. 0.004 g shows as 0.00 g on the rough scale; the least it can show is 0.01 g.",
	} {
		assert.Contains(t, words, want)
	}
	foot := strings.Join(words, " ")
	assert.Contains(t, foot, "10 000 simulated batches (seed 1)")
	assert.Contains(t, foot, "coverage probability 95 %")
}

func TestSpreadDrawsTolerancesAsStated(t *testing.T) {
	several := texts(t, svgOf(t, Spread, compare(t, cases["several"])))
	assert.Contains(t, several, "within 10 % of target")
	assert.Contains(t, several, "within 2 % of target")

	none := strings.Join(texts(t, svgOf(t, Spread, compare(t, cases["no tolerance"]))), "\n")
	assert.NotContains(t, none, "inside the tolerance")
	assert.Contains(t, none, "95 % of batches stay")

	above := strings.Join(texts(t, svgOf(t, Spread, compare(t, cases["not above"]))), "\n")
	assert.Contains(t, above, "not above 0.044 % w/v")
	assert.NotContains(t, above, "too weak")
	assert.Contains(t, above, "too strong")
}

func TestFiguresRepeatByteForByte(t *testing.T) {
	for name, draw := range kinds {
		checkRepeats(t, name, func() (*Figure, error) { return draw(compare(t, cases["usual"])) })
	}
}

// checkRepeats draws a figure twice and compares the bytes.
func checkRepeats(t *testing.T, name string, draw func() (*Figure, error)) {
	t.Helper()
	both := func() (svg, raw []byte) {
		f, err := draw()
		require.NoError(t, err)
		svg, err = f.SVG()
		require.NoError(t, err)
		if thorough {
			raw, err = pixels.Of(f)
			require.NoError(t, err)
		}
		return svg, raw
	}
	svg1, png1 := both()
	svg2, png2 := both()
	assert.True(t, bytes.Equal(svg1, svg2), name)
	assert.True(t, bytes.Equal(png1, png2), name)
}

func TestEveryTextKeepsItsLength(t *testing.T) {
	for _, draw := range kinds {
		svg := string(svgOf(t, draw, compare(t, cases["usual"])))
		assert.Equal(t, strings.Count(svg, "<text "), strings.Count(svg, " textLength="))
		assert.Equal(t, strings.Count(svg, "<text "), strings.Count(svg, "'Liberation Sans',Arial,Helvetica,sans-serif"))
	}
}

// certain makes a route of a comparison end in exactly the given strength.
func certain(t *testing.T, c *route.Comparison, i int, strength float64) {
	t.Helper()
	var m uncertainty.Model
	out := m.Constant(strength)
	r := &c.Results[i]
	var err error
	r.Analytic, err = m.Propagate(out, 0.95)
	require.NoError(t, err)
	r.MonteCarlo, err = m.Simulate(context.Background(), out, uncertainty.Settings{Trials: 10_000, Coverage: 0.95})
	require.NoError(t, err)
	r.HoldsWithin = math.Abs(strength/c.Prep.Target.Value - 1)
}

func TestNothingUncertainIsASpike(t *testing.T) {
	skipIfSlow(t)
	for _, name := range []string{"one route", "no tolerance"} {
		for _, strength := range []float64{0.04, 0.0368, 0.0432, 0, -1e6, 1e300} {
			c := compare(t, cases[name])
			certain(t, c, c.Verdict.Use, strength)
			for _, draw := range kinds {
				checkFigure(t, draw, c)
			}
		}
	}
}

func TestNoRouteIsAnError(t *testing.T) {
	c := compare(t, cases["one route"])
	c.Results[0].Possible, c.Verdict.Use = false, -1
	_, err := Spread(c)
	assert.EqualError(t, err, "no route can be done, so there is no spread to draw")
	_, err = Budget(c)
	assert.EqualError(t, err, "no route can be done, so there is no budget to draw")
	assert.Equal(t, "No route can be done to make 15 mL of 0.04 % w/v dye in water, within 8 % of target.", altOfSpread(c))
	assert.Equal(t, altOfSpread(c), altOfBudget(c))
}

func TestSpreadAlt(t *testing.T) {
	c := compare(t, cases["usual"])
	c.Results[0].Inside[0].Simulated = 0.039
	assert.Equal(t, "How the strength spreads by each route (3) to make 15 mL of 0.04 % w/v dye in water, within 8 % of target: "+
		"a row of a hundred dots for each. Marked \"use this route\": fine, diluted, over 99.9 in 100 inside; "+
		"at the end: direct, 3.9 in 100 inside, which could be nothing at all; not possible: 1.", altOfSpread(c))
}
