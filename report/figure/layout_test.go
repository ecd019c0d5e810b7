package figure

import (
	"encoding/xml"
	"math"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/plot/vg"

	"minim/uncertainty"
	"minim/uncertainty/route"
)

// box is the place of a text element, in points from the top left.
type box struct {
	words                    string
	left, right, top, bottom float64
}

var fontSize = regexp.MustCompile(`font-size:([0-9.]+)px`)

// boxes returns the places that the text elements of the SVG of a comparison say
// they fill.
func boxes(t *testing.T, draw kind, c *route.Comparison) (list []box, width, height float64) {
	var doc struct {
		G struct {
			Text []struct {
				X      float64 `xml:"x,attr"`
				Y      float64 `xml:"y,attr"`
				Length float64 `xml:"textLength,attr"`
				Anchor string  `xml:"text-anchor,attr"`
				Style  string  `xml:"style,attr"`
				Words  string  `xml:",chardata"`
			} `xml:"text"`
		} `xml:"g"`
	}
	f, err := draw(c)
	require.NoError(t, err)
	svg, err := f.SVG()
	require.NoError(t, err)
	require.NoError(t, xml.Unmarshal(svg, &doc))
	width, height = float64(f.width), float64(f.height)
	for _, e := range doc.G.Text {
		size, err := strconv.ParseFloat(fontSize.FindStringSubmatch(e.Style)[1], 64)
		require.NoError(t, err)
		from := e.X - map[string]float64{"start": 0, "middle": 0.5, "end": 1}[e.Anchor]*e.Length
		list = append(list, box{e.Words, from, from + e.Length, height + e.Y - 0.72*size, height + e.Y + 0.15*size})
	}
	return list, width, height
}

func TestNoWordsOverlap(t *testing.T) {
	skipIfSlow(t)
	for name, draw := range kinds {
		for of, prep := range cases {
			t.Run(name+" "+of, func(t *testing.T) { checkPlaces(t, draw, compare(t, prep)) })
		}
		t.Run(name+" hostile", func(t *testing.T) { checkPlaces(t, draw, hostile(compare(t, cases["usual"]))) })
	}
}

func checkPlaces(t *testing.T, draw kind, c *route.Comparison) {
	list, width, height := boxes(t, draw, c)
	checkBoxes(t, list, width, height, 8)
}

// checkBoxes holds that no two texts overlap, and that none comes nearer to the edge.
func checkBoxes(t *testing.T, list []box, width, height, edge float64) {
	require.NotEmpty(t, list)
	for i, a := range list {
		inside := a.left >= edge && a.right <= width-edge && a.top >= edge && a.bottom <= height-edge
		assert.True(t, inside, "%q leaves the page: %+v", a.words, a)
		for _, b := range list[:i] {
			const slack = 0.05 // places are rounded
			apart := a.right <= b.left+slack || b.right <= a.left+slack || a.bottom <= b.top || b.bottom <= a.top
			assert.True(t, apart, "%q and %q overlap", a.words, b.words)
		}
	}
}

func TestLimitsLieBetweenBins(t *testing.T) {
	inf := math.Inf(1)
	for _, l := range []uncertainty.Limits{
		{Lower: 0.0368, Upper: 0.0432}, {Lower: 0.0399, Upper: 0.0401}, {Lower: -inf, Upper: 0.0432},
		{Lower: 0.0368, Upper: inf}, {Lower: -inf, Upper: inf}, {Lower: 0.0305, Upper: 0.0495},
	} {
		w := around(l, 0.03, 0.05)
		for _, end := range ends(l) {
			at := w.at(end)
			assert.True(t, math.Abs(at-math.Round(at)) < 1e-9, "%v: %v lies at %v", l, end, at)
			assert.True(t, at >= 0 && at <= bins, "%v: %v lies at %v", l, end, at)
		}
	}
}

func TestWindowFollowsTheRoutes(t *testing.T) {
	width := func(name string) float64 {
		c := compare(t, cases[name])
		w, l := windowOf(c), limitsOf(c)
		return (w.high() - w.low) / (l.Upper - l.Lower)
	}
	// Narrow routes let the tolerance fill the window, usual ones a good half of
	// it; where all are wide it stays a tenth at least.
	assert.True(t, width("all narrow") < 1.5)
	assert.True(t, width("usual") > 2 && width("usual") < 2.6)
	assert.True(t, width("all wide") > 3 && width("all wide") < 8)
}

func TestEveryRowHasAHundredDots(t *testing.T) {
	skipIfSlow(t)
	for name, prep := range cases {
		c := compare(t, prep)
		w := windowOf(c)
		for _, r := range ranked(c) {
			if !r.Possible {
				continue
			}
			row := newRow(c, r, w)
			all := append(append(append([]vg.Point{}, row.inside...), row.outside...), row.empty...)
			assert.Equal(t, 100, len(all), name)
			places := map[vg.Point]bool{}
			for _, p := range all {
				places[p] = true
				assert.True(t, p.Y > 0 && p.Y <= stackHeight, "%s: a dot at %v", name, p)
				assert.True(t, p.X > -56 && p.X < bins*dot+56, "%s: a dot at %v", name, p)
			}
			assert.Equal(t, 100, len(places), "%s: dots lie on each other", name)
			if len(r.Inside) > 0 {
				assert.True(t, math.Abs(float64(100-row.weak-row.strong)-100*r.Chance()) <= 1.01, name)
			}
		}
	}
}

func TestRankedPutsTheBestFirst(t *testing.T) {
	var names []string
	for _, r := range ranked(compare(t, cases["usual"])) {
		names = append(names, r.Route.Name)
	}
	assert.Equal(t, []string{"fine, diluted", "rough, diluted", "direct", "too little"}, names)
}
