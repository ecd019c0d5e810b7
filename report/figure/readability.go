package figure

import (
	"errors"
	"math"

	"gonum.org/v1/plot/vg"

	"minim/report/words/picture"
	"minim/uncertainty/purchase"
	"minim/uncertainty/tolerances"
)

// readable is the layout of the figure of what the readability of a balance does.
type readable struct {
	plane
	picture.Readability
	curves   []curve
	balances []balance
	// half is the half-width of the tolerance in percent of the target, to the
	// nearer limit; 0 without one.
	half   float64
	labels []label
}

// curve is a line with its gaps: runs of points of readability in g and relative
// expanded uncertainty in percent.
type curve struct {
	dilutions int
	runs      [][]curvePoint
	// cut: a search for one of its points was cut short.
	cut bool
}

// curvePoint is a readability in g with a relative expanded uncertainty in percent. Cut:
// there may be a tighter route, since the search was cut short.
type curvePoint struct {
	readability, relative float64
	cut                   bool
}

// balance is one that is owned or could be had, as a point.
type balance struct {
	choice                *purchase.Choice
	readability, relative float64
}

// Readability lays out the figure of the least give or take, in percent of the
// strength, against the readability of the balance: a line for a direct weighing
// and for each number of dilutions, the tolerance, and the balances that are owned
// or could be had. A line has a gap where there is no route. Readability returns an
// error when there is neither a line nor a balance with a route.
func Readability(p *purchase.Purchase) (*Figure, error) {
	f := newReadable(p)
	if len(f.curves) == 0 && len(f.balances) == 0 {
		return nil, errors.New("no route was found on any balance, so there is nothing to draw against readability")
	}
	f.setScales()
	f.name()
	return planeFigure(p.Prep, f.y.to, f.key(), f.paragraphs(), f.Caption().Alt, f.drawPlot), nil
}

// newReadable sorts out what is drawn.
func newReadable(p *purchase.Purchase) *readable {
	f := &readable{Readability: picture.Readability{Purchase: p}, half: halfWidth(p)}
	f.Shaded = f.half > 0
	if p.Like != nil {
		f.LikeName = cut(smallText, footWide/3, clean(p.Like.Name))
	}
	for i := range p.Curves {
		if c := curveOf(&p.Curves[i]); len(c.runs) > 0 {
			f.curves, f.Lines = append(f.curves, c), append(f.Lines, c.dilutions)
			f.Hollow = f.Hollow || c.cut
		}
	}
	for i := range p.Choices {
		o := &p.Choices[i]
		switch {
		case o.Balance == nil:
		case !o.Found || !logable(relative(&o.Best)):
			f.Without = append(f.Without, o.Name)
		default:
			f.balances, f.Balances = append(f.balances, balance{o, o.Balance.Readability, relative(&o.Best)}), append(f.Balances, o)
			f.Coverage = f.Balances[0].Best.Analytic.CoverageProbability
		}
	}
	return f
}

// halfWidth is the half-width of the first tolerance, in percent of the target, to
// the nearer limit; 0 without one, and where that limit is the target itself.
func halfWidth(p *purchase.Purchase) float64 {
	const nothing = 1e-9 // of rounding, when a limit is stated in another unit
	if half := tolerances.HalfWidth(p.Prep); half > nothing {
		return 100 * half
	}
	return 0
}

// logable reports whether a value has a place on a logarithmic scale.
func logable(v float64) bool { return v > 0 && !math.IsInf(v, 0) }

func curveOf(c *purchase.Curve) curve {
	drawn := curve{dilutions: c.Dilutions}
	gap := true
	for i, r := range c.Relative {
		if !logable(r) {
			gap = true
			continue
		}
		if gap {
			drawn.runs = append(drawn.runs, nil)
		}
		last := &drawn.runs[len(drawn.runs)-1]
		point := curvePoint{c.Readability[i], 100 * r, i < len(c.CutShort) && c.CutShort[i]}
		*last, gap = append(*last, point), false
		drawn.cut = drawn.cut || point.cut
	}
	return drawn
}

// end is the last point of a curve, at the coarsest readability.
func (c curve) end() curvePoint {
	run := c.runs[len(c.runs)-1]
	return run[len(run)-1]
}

// setScales fits both scales to all points, and to the tolerance.
func (f *readable) setScales() {
	var across, up []float64
	for _, c := range f.curves {
		for _, run := range c.runs {
			for _, q := range run {
				across, up = append(across, q.readability), append(up, q.relative)
			}
		}
	}
	for _, b := range f.balances {
		across, up = append(across, b.readability), append(up, b.relative)
	}
	if f.half > 0 {
		up = append(up, f.half)
	}
	bottom := footHeight(f.paragraphs()) + underPlane
	// The names of the lines stand at the right of the panel.
	f.x = logarithmicOf(planeFrom, rightTo-linesWide, across)
	f.y = logarithmicOf(bottom, bottom+planeHigh, up)
	f.setTicks()
}

// linesWide is the room for the names of the lines.
const linesWide = vg.Length(84)

func (f *readable) place(readability, relative float64) vg.Point {
	return vg.Point{X: f.x.at(readability), Y: f.y.at(relative)}
}
