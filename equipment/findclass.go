package equipment

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"minim/equipment/quantity"

	"gonum.org/v1/gonum/floats/scalar"
)

// classQuery is what a kit states about a piece. Zero fields are not stated.
// Capacity and Division are in mL.
type classQuery struct {
	Kind, Form, Standard, Name string
	Capacity, Division         float64
}

// classError says which statement about a piece the class tables do not bear out,
// and in Hint what would be right.
type classError struct{ Message, Hint string }

// Error gives the message and the hint in one line.
func (e classError) Error() string { return e.Message + "; " + e.Hint }

// findClass returns the one row that fits. A standard or form that is not stated is
// taken to be the one that the tables list first: ISO for glass, pistons and syringes,
// USP for a dropper, the tall cylinder, air displacement, the beaker that is marked; a
// class is never assumed. The division is needed only where the standard knows several
// for one capacity. A piston between two sizes gets the row of the next larger one (ISO
// 8655-2 and -5), whose Capacity is then not the piece's. The error is a [classError].
func findClass(q classQuery) (Class, error) {
	rows, asked := classTable(), q.withDefaults()
	for i, field := range classFields {
		kept := slices.DeleteFunc(slices.Clone(rows), func(c Class) bool { return !field.fits(c, asked) })
		if len(kept) == 0 {
			return Class{}, noSuchClass(asked, classFields[:i], field, rows)
		}
		rows = kept
	}
	if rows[0].Kind == "piston" {
		return slices.MinFunc(rows, func(a, b Class) int { return cmp.Compare(a.Capacity, b.Capacity) }), nil
	}
	if len(rows) > 1 {
		return Class{}, classError{
			Message: "the class table" + describe(asked, classFields[:len(classFields)-1]) + " has several divisions",
			Hint:    "state which: " + choices(rows, classFields[len(classFields)-1]),
		}
	}
	return rows[0], nil
}

// withDefaults writes the query as a row, so that both print in the same words.
func (q classQuery) withDefaults() Class {
	c := Class{Kind: q.Kind, Form: q.Form, Standard: q.Standard, Name: q.Name, Capacity: q.Capacity, Division: q.Division}
	if first, ok := firstRow(func(row Class) bool { return row.Kind == c.Kind }); ok && c.Standard == "" {
		c.Standard = first.Standard
	}
	if first, ok := firstRow(func(row Class) bool { return row.Kind == c.Kind && row.Standard == c.Standard }); ok && c.Form == "" {
		c.Form = first.Form
	}
	return c
}

func firstRow(fits func(Class) bool) (Class, bool) {
	rows := classTable()
	i := slices.IndexFunc(rows, fits)
	if i < 0 {
		return Class{}, false
	}
	return rows[i], true
}

// classField is one thing a kit can state, in the order in which it narrows the table.
type classField struct {
	key  string
	text func(Class) string // empty when not stated
	fits func(row, asked Class) bool
}

var classFields = []classField{
	{"kind", func(c Class) string { return quoted(c.Kind) }, func(row, asked Class) bool { return row.Kind == asked.Kind }},
	{"standard", func(c Class) string { return quoted(c.Standard) }, func(row, asked Class) bool { return row.Standard == asked.Standard }},
	{"form", func(c Class) string { return quoted(c.Form) }, func(row, asked Class) bool { return row.Form == asked.Form }},
	{"class", func(c Class) string { return quoted(c.Name) }, func(row, asked Class) bool {
		return row.Name == asked.Name || asked.Name == "AS" && row.alsoAS()
	}},
	{"capacity", func(c Class) string { return millilitres(c.Capacity) }, func(row, asked Class) bool {
		nextLarger := row.Kind == "piston" && asked.Capacity > 0 && row.Capacity > asked.Capacity
		return nextLarger || sameVolume(row.Capacity, asked.Capacity)
	}},
	{"division", func(c Class) string { return millilitres(c.Division) }, func(row, asked Class) bool {
		return asked.Division == 0 || row.makersScale() || sameVolume(row.Division, asked.Division)
	}},
}

// makersScale reports whether a scale is there but its division is left to the maker.
func (c Class) makersScale() bool {
	scales := []string{"piston", "syringe", "beaker", "conical-flask", "conical-measure"}
	return c.Division == 0 && slices.Contains(scales, c.Kind)
}

// noSuchClass says that none of rows, which fit the fields before, fits field as well.
func noSuchClass(asked Class, before []classField, field classField, rows []Class) classError {
	var e classError
	if text := field.text(asked); text != "" {
		e.Message = "the class table" + describe(asked, before) + " has no " + field.key + " " + text
	} else {
		e.Message = field.key + " is not stated" + describe(asked, before)
	}
	right := choices(rows, field)
	switch {
	case right == "":
		e.Hint = "leave " + field.key + " out"
	case field.key == "kind":
		e.Hint = "kind can be " + right
	case rows[0].Division == 0:
		e.Hint = field.key + " can be " + right + ", or state an own tolerance instead of the class"
	default:
		e.Hint = field.key + " can be " + right + ", or state an own tolerance and division instead of the class"
	}
	return e
}

// describe writes the stated ones of fields: ` for kind "flask", standard "ISO"`.
func describe(asked Class, fields []classField) string {
	var parts []string
	for _, field := range fields {
		if text := field.text(asked); text != "" {
			parts = append(parts, field.key+" "+text)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return " for " + strings.Join(parts, ", ")
}

// choices lists the different values of field in rows, in table order.
func choices(rows []Class, field classField) string {
	var texts []string
	for _, row := range rows {
		if text := field.text(row); text != "" && !slices.Contains(texts, text) {
			texts = append(texts, text)
		}
	}
	return strings.Join(texts, ", ")
}

// sameVolume allows for the rounding of a conversion of units.
func sameVolume(a, b float64) bool { return scalar.EqualWithinRel(a, b, 1e-9) }

func quoted(text string) string {
	if text == "" {
		return ""
	}
	return strconv.Quote(text)
}

func millilitres(volume float64) string {
	if volume == 0 {
		return ""
	}
	return quantity.Exact(volume) + " mL"
}
