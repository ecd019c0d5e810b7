package page

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"minim/equipment/quantity"
)

// Size of something flat in millimetres, or two lengths in its two directions.
type Size struct{ Width, Height float64 }

func (s Size) String() string {
	return fmt.Sprintf("%s x %s mm", quantity.Number(tenth(s.Width)), quantity.Number(tenth(s.Height)))
}

// tenth is a length to a tenth of a millimetre, rounded down: what a label of that size fits on.
func tenth(x float64) float64 { return math.Floor(float64(x*10)+1e-6) / 10 }

// LabelLayout is how large labels are, and how they stand on paper: on a stated sheet, which comes
// cut, or one beside the other with lines to cut along. Without a size they grow with their text.
type LabelLayout struct {
	Size  Size
	Sheet *LabelSheet
}

// LabelSheet is a sheet with labels in rows and columns. Margin is the distance of the first from
// the left and the upper edge of the paper, Gap that between two side by side and one below the
// other.
type LabelSheet struct {
	Paper         Size
	Columns, Rows int
	Margin, Gap   Size
}

// LeastLabel and MostLabel are the sizes between which labels are made.
var LeastLabel, MostLabel = Size{25, 15}, Size{100, 70}

// usual is the size of labels where none is stated; two of that width stand side by side on A4 and
// on Letter.
var usual = Size{90, 54}

// size of the labels, and whether they grow with their text.
func (l LabelLayout) size() (size Size, grows bool) {
	switch {
	case l.Size != Size{}:
		return l.Size, false
	case l.Sheet != nil:
		return l.Sheet.room(), false
	}
	return usual, true
}

// room is how large labels can be that fill a sheet.
func (s *LabelSheet) room() Size {
	along := func(paper, margin, gap float64, n int) float64 {
		return (paper - 2*margin - float64(gap*float64(n-1))) / float64(n)
	}
	return Size{along(s.Paper.Width, s.Margin.Width, s.Gap.Width, s.Columns), along(s.Paper.Height, s.Margin.Height, s.Gap.Height, s.Rows)}
}

// Check says what is wrong with a layout: labels that are too small or too large to be made, or that do
// not stand on their sheet. The margins to the right and below need not be those that are stated.
func (l LabelLayout) Check() error {
	size, grows := l.size()
	if s := l.Sheet; s != nil {
		room := s.room()
		if l.Size == (Size{}) && (room.Width <= 0 || room.Height <= 0) {
			return fmt.Errorf("margins and gaps leave no room for %d x %d labels on %s", s.Columns, s.Rows, s.Paper)
		}
		reach := Size{s.Margin.Width + float64(float64(s.Columns)*(size.Width+s.Gap.Width)) - s.Gap.Width, s.Margin.Height + float64(float64(s.Rows)*(size.Height+s.Gap.Height)) - s.Gap.Height}
		if reach.Width > s.Paper.Width+0.05 || reach.Height > s.Paper.Height+0.05 {
			return fmt.Errorf("%d x %d labels of %s reach to %s on paper of %s", s.Columns, s.Rows, size, reach, s.Paper)
		}
	}
	if grows {
		return nil
	}
	return size.check()
}

// check says what is wrong with the size of a label.
func (s Size) check() error {
	if !within(LeastLabel, s) || !within(s, MostLabel) {
		return fmt.Errorf("labels of %s are not made: they are from %s to %s", s, LeastLabel, MostLabel)
	}
	return nil
}

// within reports whether something fits into a size, but for what rounding leaves.
func within(inner, outer Size) bool {
	return inner.Width <= outer.Width+1e-9 && inner.Height <= outer.Height+1e-9
}

const number = `(\d{1,4}(?:\.\d{1,3})?)`

var (
	twoLengths = regexp.MustCompile(`(?i)^` + number + `\s*(mm|cm)?\s*[x×*]\s*` + number + `\s*(mm|cm)$`)
	oneLength  = regexp.MustCompile(`(?i)^` + number + `\s*(mm|cm)$`)
	rowsOf     = regexp.MustCompile(`(?i)^(\d{1,2})\s*[x×*]\s*(\d{1,2})$`)
	papers     = map[string]Size{"a4": {210, 297}, "a5": {148, 210}, "letter": {215.9, 279.4}}
)

// ParseLabelSize reads width and height, as in "60 x 40 mm".
func ParseLabelSize(text string) (Size, error) {
	size, ok := lengths(text, false)
	if !ok {
		return size, fmt.Errorf("%q is not a width and a height with their unit", text)
	}
	return size, size.check()
}

// lengths are two of them with their unit; one stands for both where that is allowed.
func lengths(text string, orOne bool) (size Size, ok bool) {
	m := twoLengths.FindStringSubmatch(strings.TrimSpace(text))
	if one := oneLength.FindStringSubmatch(strings.TrimSpace(text)); m == nil && orOne && one != nil {
		m = []string{"", one[1], one[2], one[1], one[2]}
	}
	if m == nil {
		return Size{}, false
	}
	length := func(number, unit string) float64 {
		x, _ := strconv.ParseFloat(number, 64) // the pattern has numbers alone
		if strings.EqualFold(unit, "cm") {
			return 10 * x
		}
		return x
	}
	unit := m[2]
	if unit == "" {
		unit = m[4]
	}
	return Size{length(m[1], unit), length(m[3], m[4])}, true
}

// ParseLabelSheet reads paper, columns and rows, margin and gap, as in
// "A4, 3 x 7, margin 7 mm, gap 2.5 mm"; margin and gap may be two lengths, the first from side to side.
func ParseLabelSheet(text string) (*LabelSheet, error) {
	s := &LabelSheet{}
	for _, part := range strings.Split(text, ",") {
		if err := s.read(strings.TrimSpace(part)); err != nil {
			return nil, err
		}
	}
	switch {
	case s.Paper == Size{}:
		return nil, fmt.Errorf("%q does not say which paper", text)
	case s.Columns*s.Rows == 0:
		return nil, fmt.Errorf("%q does not say how many labels stand side by side and below each other", text)
	}
	return s, nil
}

// read takes in one part.
func (s *LabelSheet) read(part string) error {
	word, rest, _ := strings.Cut(part, " ")
	size, isSize := lengths(part, false)
	paper, isPaper := papers[strings.ToLower(part)]
	m := rowsOf.FindStringSubmatch(part)
	switch {
	case isPaper, isSize:
		if s.Paper != (Size{}) {
			return fmt.Errorf("%q is a second paper", part)
		}
		s.Paper = paper
		if isSize {
			s.Paper = size
		}
	case m != nil:
		s.Columns, _ = strconv.Atoi(m[1]) // two digits at most
		s.Rows, _ = strconv.Atoi(m[2])
	case strings.EqualFold(word, "margin") || strings.EqualFold(word, "gap"):
		lengths, ok := lengths(rest, true)
		if !ok {
			return fmt.Errorf("%q has no length with its unit", part)
		}
		if strings.EqualFold(word, "gap") {
			s.Gap = lengths
		} else {
			s.Margin = lengths
		}
	default:
		return fmt.Errorf("%q is neither a paper, nor columns x rows, nor a margin or a gap", part)
	}
	return nil
}
