package benchfile

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

func TestErrorShowsPlaceLineMarkAndCure(t *testing.T) {
	m := &Mistake{
		place: place{"bench.toml", 12, 12}, Source: `capacity = "10 ML"`, Width: 7,
		Message: `capacity: "10 ML" has the unit "ML", which is not a unit of volume`, Hint: "write mL",
	}
	report := `bench.toml:12:12: capacity: "10 ML" has the unit "ML", which is not a unit of volume
  12 | capacity = "10 ML"
     |            ^^^^^^^`
	assert.Equal(t, report, m.Report())
	assert.Equal(t, report+"\n  write mL", m.Error())
}

func TestErrorWithoutLineOrHintIsOneLine(t *testing.T) {
	m := &Mistake{place: place{"a.toml", 1, 1}, Message: "the file needs `volume`"}
	assert.Equal(t, "a.toml:1:1: the file needs `volume`", m.Error())
}

func TestReportCannotMoveTheCursor(t *testing.T) {
	m := &Mistake{
		place: place{"a\x1b.toml", 1, 1}, Source: "a\x1b[2J\tb\u202ec\r", Width: 1, Message: "x\ry", Hint: "\x07",
	}
	assert.Equal(t, "a�.toml:1:1: x�y\n  1 | a�[2J b�c�\n    | ^\n  �", m.Error())
}

func TestLongLinesAreCutRoundTheFault(t *testing.T) {
	line := strings.Repeat("µ", 300)
	for _, c := range []struct {
		column, width, indent, mark int
		start, end                  bool // whether the start and the end of the line are shown
	}{
		{1, 3, 0, 3, true, false},
		{41, 3, 40, 3, true, false},
		{150, 3, 41, 3, false, false},
		{150, 300, 41, 60, false, false},
		{300, 1, 100, 1, false, true},
		{301, 1, 101, 1, false, true}, // the end of the line itself
	} {
		m := &Mistake{place: place{"a", 1, c.column}, Source: line, Width: c.width}
		lines := strings.Split(m.Report(), "\n")
		shown := strings.TrimPrefix(lines[1], "  1 | ")
		assert.Equal(t, c.start, !strings.HasPrefix(shown, "…"), c)
		assert.Equal(t, c.end, !strings.HasSuffix(shown, "…"), c)
		assert.Equal(t, mostShown, strings.Count(shown, "µ"), c)
		assert.Equal(t, "    | "+strings.Repeat(" ", c.indent)+strings.Repeat("^", c.mark), lines[2], c)
		assert.LessOrEqual(t, utf8.RuneCountInString(shown), mostShown+2, c)
	}
}

func TestNearest(t *testing.T) {
	words := []string{"capacity", "class", "clinging", "AS", "In", "Ex"}
	for word, want := range map[string]string{
		"capcity": "capacity", "capaciyt": "capacity", "Capacity": "capacity", "cass": "class", "as": "AS", "in": "In",
		"Q": "", "": "", "colour": "", "xx": "", strings.Repeat("c", 65): "",
	} {
		assert.Equal(t, want, Nearest(word, words), word)
	}
	assert.Equal(t, "", Nearest("a", nil))
}
