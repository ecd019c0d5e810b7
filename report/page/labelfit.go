package page

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// setLabel is a label as it is set: with its lines as they stand on it, and the size of its type.
type setLabel struct {
	Lines []setLine
	// Type is the class of the size of its type.
	Type  string
	level int
}

// setLine is a line of a label: with a field to write in where Field says what for.
type setLine struct{ Style, Text, Field string }

// lineType is the size of the type of a line over that of the small ones, and what its edges take beside
// the text and above and below it, in pt.
type lineType struct{ size, beside, round float64 }

// labelTypes are those of the lines by their styles, and tightTypes where there is little room; the
// strength is largest (common practice, no source).
var (
	labelTypes = map[string]lineType{"bar": {1.1, 6, 1}, "name": {1.25, 0, 0}, "strength": {1.6, 0, 0}, "hazard": {1.1, 6, 2.4}, "small": {1, 0, 0}}
	tightTypes = map[string]lineType{"bar": {1, 6, 1}, "name": {1.1, 0, 0}, "strength": {1.3, 0, 0}, "hazard": {1, 0, 0}, "small": {1, 0, 0}}
)

const (
	pointsPerMM = 72 / 25.4
	lineHeight  = 1.18
	// betweenLines is what parts two lines, in pt.
	betweenLines = 0.6
	// labelEdge is kept free at each side, in mm.
	labelEdge = 1.2
	// fieldWidth and fieldHeight of a field to write in, in mm; lowField on labels that are lower
	// than lowLabel.
	fieldWidth, fieldHeight, lowField, lowLabel = 35, 6, 4.5, 30
	// mostType and leastType are the sizes of small type between which it is fitted, and smallestType
	// where fewer words do not fit otherwise (common practice, no source).
	mostType, leastType, smallestType = 10, 7, 6
	// ways to say what stands on a label: all of it; what must stand there; that in fewer words; in the
	// fewest.
	ways = 4
)

// fit sets a label as large as it can be with as much as it can hold; nil where even the fewest
// words do not fit.
func (l Labels) fit(label *Label) *setLabel {
	size, grows := l.size()
	if set := fitted(label, size); set != nil || !grows {
		return set
	}
	return l.setAs(label, 0, leastType)
}

func fitted(label *Label, size Size) *setLabel {
	for way := range ways {
		least := float64(leastType)
		if way > 1 {
			least = smallestType
		}
		for points := float64(mostType); points >= least; points -= 0.5 {
			if set := (Labels{}).setAs(label, way, points); set.fits(points, size) {
				return set
			}
		}
	}
	return nil
}

// setAs sets a label in one of the ways.
func (Labels) setAs(label *Label, way int, points float64) *setLabel {
	set := &setLabel{Type: "type" + strings.Replace(strconv.FormatFloat(points, 'f', -1, 64), ".", "-", 1), level: way}
	if way == ways-1 {
		set.Type += " tight"
	}
	for i := range label.Lines {
		line := &label.Lines[i]
		text := line.Text
		switch {
		case way > 0 && line.May:
			continue
		case line.Field != "":
			text = line.Known
		case way == ways-1 && line.Shortest != "":
			text = line.Shortest
		case way > 1 && line.Short != "":
			text = line.Short
		}
		set.Lines = append(set.Lines, setLine{line.Style, text, line.Field})
	}
	return set
}

// fits reports whether a label holds its lines, none of them broken inside a word.
func (s *setLabel) fits(points float64, size Size) bool {
	width, height := float64((size.Width-2*labelEdge)*pointsPerMM), float64((size.Height-2*labelEdge)*pointsPerMM)
	types := labelTypes
	if s.level == ways-1 {
		types = tightTypes
	}
	for _, line := range s.Lines {
		t := types[line.Style]
		if line.Text != "" {
			n := linesOf(line.Text, float64(t.size*points), width-t.beside)
			if n == 0 {
				return false
			}
			height -= float64(float64(n)*t.size*points*lineHeight) + t.round + betweenLines
		}
		if line.Field != "" {
			height -= fieldHigh(line.Field, points, width, size)
		}
	}
	return height >= 0
}

// fieldHigh is how much a field to write in takes with what stands before it, or above it where the
// label is not wide enough for both.
func fieldHigh(what string, points, width float64, size Size) float64 {
	field := float64(fieldHeight)
	if size.Height < lowLabel {
		field = lowField
	}
	high := float64(field*pointsPerMM) + 2 + betweenLines
	if textWidth(what, points)+float64(fieldWidth*pointsPerMM)+points > width {
		high += float64(points * lineHeight)
	}
	return high
}

// linesOf is how many lines a text takes that is broken at spaces alone; 0 where a word is too wide.
func linesOf(text string, points, width float64) int {
	lines, at := 1, 0.0
	space := textWidth(" ", points)
	for _, word := range strings.FieldsFunc(visible(text), func(r rune) bool { return r == ' ' }) {
		w := textWidth(word, points)
		switch {
		case w > width:
			return 0
		case at == 0:
			at = w
		case at+space+w > width:
			lines++
			at = w
		default:
			at += space + w
		}
	}
	return lines
}

// Refused says which label has no room for what must stand on it, and which size would do; nil
// where all have.
func (l Labels) Refused() error {
	size, grows := l.size()
	if grows {
		return nil
	}
	for i := range l.List {
		if fitted(&l.List[i], size) != nil {
			continue
		}
		would, found := l.enough(size)
		if !found {
			return fmt.Errorf("a label of %s has no room for what must stand on that of %s, and one of %s neither", size, l.List[i].Of, MostLabel)
		}
		return fmt.Errorf("a label of %s has no room for what must stand on that of %s; one of %s would do", size, l.List[i].Of, would)
	}
	return nil
}

// enough is the size of least area on which all labels have room, in steps of 5 mm, no side of which is
// smaller.
func (l Labels) enough(size Size) (least Size, found bool) {
	up := func(x float64) float64 { return float64(math.Ceil(x/5) * 5) }
	for w := up(size.Width); w <= MostLabel.Width; w += 5 {
		for h := up(size.Height); h <= MostLabel.Height; h += 5 {
			if found && w*h >= least.Width*least.Height || !l.allFit(Size{w, h}) {
				continue
			}
			least, found = Size{w, h}, true
		}
	}
	return least, found
}

func (l Labels) allFit(size Size) bool {
	for i := range l.List {
		if fitted(&l.List[i], size) == nil {
			return false
		}
	}
	return true
}
