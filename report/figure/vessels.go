package figure

import (
	"gonum.org/v1/plot/vg"

	"minim/report/words/picture"
	"minim/uncertainty/route"
)

// Sizes of the row of vessels, in points. It is as wide as the text of a bench sheet on A4, so
// that letters are printed at their size.
const (
	rowWide    = 179 * vg.Millimeter
	rowEdge    = vg.Length(2)
	mostInRow  = 5
	widestCell = vg.Length(150)
	vesselWide = vg.Length(40)
	vesselHigh = vg.Length(44)
	// fullTo is how far a vessel is filled.
	fullTo = 0.84
	// rowGap stands between two rows of vessels.
	rowGap = vg.Length(8)
)

// vessels is the layout of a route as a row of vessels.
type vessels struct {
	hand
	*picture.Row
	title, wanted, notes []string
	rows                 []vesselRow
	cell                 vg.Length
}

// vesselRow is as many vessels as stand beside each other.
type vesselRow struct {
	list []vesselCell
	high vg.Length
}

// vesselCell is one with the lines beside and below it.
type vesselCell struct {
	*picture.Vessel
	in    []string
	below []paragraph
}

// Vessels lays out a route as a row of vessels: what goes into each, how strong it becomes, and
// what of it is left over. The route must be possible.
func Vessels(p *route.Prep, r *route.Result) (*Figure, error) {
	row, err := picture.OfVessels(p, r)
	if err != nil {
		return nil, err
	}
	return lettered(p, []string{r.Route.Name}, func(h hand) (*Figure, error) { return layVessels(h, row), nil })
}

func layVessels(h hand, row *picture.Row) *Figure {
	v := &vessels{hand: h, Row: row, title: h.title(boldTitle, rowWide-2*rowEdge, 2, row.Title), wanted: h.wrap(smallText, rowWide-2*rowEdge, 2, row.Wanted)}
	notes := row.Notes
	if h.note != "" {
		notes = append(notes[:len(notes):len(notes)], h.note)
	}
	for _, note := range notes {
		v.notes = append(v.notes, h.wrap(smallText, rowWide-2*rowEdge, 2, note)...)
	}
	v.cell = min(widestCell, (rowWide-2*rowEdge)/vg.Length(min(len(row.Vessels), mostInRow)))
	for from := 0; from < len(row.Vessels); from += mostInRow {
		v.rows = append(v.rows, v.layRow(row.Vessels[from:min(from+mostInRow, len(row.Vessels))]))
	}
	height := v.headHeight() + linesHigh(smallText, len(v.notes)) + 4
	for _, r := range v.rows {
		height += r.high + rowGap
	}
	return &Figure{width: rowWide, height: height, Printed: "row", Alt: clean(row.Alt), paint: func(on *sheet) { v.draw(on, height) }}
}

// RowOf is [Vessels] of a route of a comparison.
func RowOf(c *route.Comparison, r *route.Result) (*Figure, error) { return Vessels(c.Prep, r) }

// linesHigh is the room that so many lines take.
func linesHigh(style textStyle, n int) vg.Length { return leading * style.Font.Size * vg.Length(n) }

func (v *vessels) headHeight() vg.Length {
	return 2 + linesHigh(boldTitle, len(v.title)) + linesHigh(smallText, len(v.wanted)) + 8
}

func (v *vessels) layRow(list []picture.Vessel) (row vesselRow) {
	for i := range list {
		c := vesselCell{Vessel: &list[i]}
		for k, in := range list[i].In {
			if k == 3 && len(list[i].In) > 4 {
				c.in = append(c.in, picture.More(len(list[i].In)-k))
				break
			}
			c.in = append(c.in, v.wrap(smallInk, v.inWide(), 2, in)...)
		}
		strength := smallBold
		add := func(style textStyle, words string) {
			c.below = append(c.below, paragraph{style, v.wrap(style, v.cell-6, 2, words)})
		}
		add(strength, list[i].Strength)
		add(smallText, list[i].Made)
		add(smallInk, list[i].Left)
		row.list = append(row.list, c)
		row.high = max(row.high, max(vesselHigh, linesHigh(smallInk, len(c.in))+10)+heightOf(c.below)+4)
	}
	return row
}

// inWide is the room for the words on the way into a vessel.
func (v *vessels) inWide() vg.Length { return v.cell - vesselWide - 8 }
