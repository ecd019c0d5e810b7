package page

import "strconv"

// Work is a table of steps to work by, with boxes to write in. As text and as Markdown it is a table
// with a column for each part; in HTML what to take care of stands below what to do.
type Work struct {
	// Do, Care, Planned, Read, Sign and Again head the parts of the steps.
	Do, Care, Planned, Read, Sign, Again string
	Steps                                []WorkStep
}

// WorkStep is a step: what to do and to take care of, what is planned, with the room for it, what to write
// what was read into, and the step from which to begin again. What is not planned has a dash.
type WorkStep struct {
	Do, Care, Planned, Room, Again string
	Boxes                          []WriteBox
}

// WriteBox is a box to write a reading in: with its unit, and of what it is where there are several.
type WriteBox struct{ Of, Unit string }

// table has a column for each part.
func (w Work) table() *Table {
	t := &Table{Head: []string{"", w.Do, w.Care, w.Planned, w.Read, w.Sign, w.Again}, Numbers: 7, Class: "form"}
	for i := range w.Steps {
		s := &w.Steps[i]
		planned, read := s.Planned, "–"
		if s.Room != "" {
			planned += "; " + s.Room
		}
		if len(s.Boxes) > 0 {
			read = ""
		}
		t.Rows = append(t.Rows, Row{Cells: []string{w.Number(i), s.Do, s.Care, planned, read, "", s.Again}})
	}
	return t
}

func (w Work) text(s *screen)       { w.table().text(s) }
func (w Work) markdown(m *markdown) { w.table().markdown(m) }

// Number is that of a step.
func (w Work) Number(i int) string { return strconv.Itoa(i + 1) }
