package equipment

import (
	"slices"
	"strconv"
	"strings"
	"sync"

	"gonum.org/v1/gonum/floats/scalar"
)

// Class is one row of a class table: what a standard allows a piece of volumetric
// glassware of one size. The error of a new piece at 20 °C, read as the standard
// says, lies within ±Tolerance.
type Class struct {
	Kind     string // "cylinder", "flask", "one-mark" or "graduated" (pipettes)
	Form     string // "tall" or "squat" for a cylinder, else empty
	Standard string // "ISO" or "ASTM"
	Number   string // the standard with its number: "ISO 4788"
	Edition  string // the year; a reapproval in brackets: "2002(2012)"
	Name     string // "A" or "B"; class AS of a pipette counts as A
	Marked   string // "In", "Ex", or "In/Ex" where the maker adjusts to either

	Capacity  float64 // mL
	Division  float64 // mL, 0 for one mark
	Tolerance float64 // mL, half-width
	Bore      float64 // mm inside at the marks, 0 when not known; Note says when it is an upper limit

	Source    string // where the figures were seen
	Trust     string // "two sources", "one source" or "from memory"
	BoreTrust string // the same for Bore, empty when Bore is 0
	Note      string // conflicts and derivations
}

// String names the class as a report does: "ISO 4788:2005 class B, tall form".
func (c Class) String() string {
	edition := ":" + c.Edition
	if c.Standard == "ASTM" {
		edition = "-" + strings.TrimPrefix(c.Edition, "20") // two digits of the year
	}
	text := c.Number + edition + " class " + c.Name
	if c.Form != "" {
		text += ", " + c.Form + " form"
	}
	return text
}

// alsoAS reports whether class AS (swift delivery) has the limit of this row:
// ISO 648 and ISO 835 give classes A and AS one column.
func (c Class) alsoAS() bool {
	pipette := c.Kind == "one-mark" || c.Kind == "graduated"
	return pipette && c.Standard == "ISO" && c.Name == "A"
}

// Classes returns every row of the class tables, in table order.
func Classes() []Class { return slices.Clone(classTable()) }

var classTable = sync.OnceValue(func() []Class {
	var classes []Class
	for _, name := range []string{"cylinders", "flasks", "pipettes_one_mark", "pipettes_graduated"} {
		for _, row := range readTable(tableFiles, name, classColumns) {
			classes = append(classes, newClass(row))
		}
	}
	return classes
})

const classColumns = "kind,form,standard,number,edition,class,marked," +
	"capacity_mL,division_mL,tolerance_mL,bore_mm,source,trust,bore_trust,note"

func newClass(row tableRow) Class {
	return Class{
		Kind:      row.text("kind"),
		Form:      row.text("form"),
		Standard:  row.text("standard"),
		Number:    row.text("number"),
		Edition:   row.text("edition"),
		Name:      row.text("class"),
		Marked:    row.text("marked"),
		Capacity:  row.positive("capacity_mL"),
		Division:  row.positiveOrNone("division_mL"),
		Tolerance: row.positive("tolerance_mL"),
		Bore:      row.positiveOrNone("bore_mm"),
		Source:    row.text("source"),
		Trust:     row.text("trust"),
		BoreTrust: row.text("bore_trust"),
		Note:      row.text("note"),
	}
}

// ClassQuery is what a kit states about a piece. Zero fields are not stated.
// Capacity and Division are in mL.
type ClassQuery struct {
	Kind, Form, Standard, Name string
	Capacity, Division         float64
}

// ClassError says which statement about a piece the class tables do not bear out,
// and in Hint what would be right.
type ClassError struct{ Message, Hint string }

// Error gives the message and the hint in one line.
func (e ClassError) Error() string { return e.Message + "; " + e.Hint }

// FindClass returns the one row that fits. A standard that is not stated is taken to
// be ISO, a form that is not stated the tall one; a class is never assumed. The
// division is needed only where the standard knows several for one capacity.
// The error is a [ClassError].
func FindClass(q ClassQuery) (Class, error) {
	rows, asked := classTable(), q.withDefaults()
	for i, field := range classFields {
		kept := slices.DeleteFunc(slices.Clone(rows), func(c Class) bool { return !field.fits(c, asked) })
		if len(kept) == 0 {
			return Class{}, noSuchClass(asked, classFields[:i], field, rows)
		}
		rows = kept
	}
	if len(rows) > 1 {
		return Class{}, ClassError{
			Message: "the class table" + describe(asked, classFields[:len(classFields)-1]) + " has several divisions",
			Hint:    "state which: " + choices(rows, classFields[len(classFields)-1]),
		}
	}
	return rows[0], nil
}

// withDefaults writes the query as a row, so that both print in the same words.
func (q ClassQuery) withDefaults() Class {
	c := Class{Kind: q.Kind, Form: q.Form, Standard: q.Standard, Name: q.Name, Capacity: q.Capacity, Division: q.Division}
	if c.Standard == "" {
		c.Standard = "ISO"
	}
	if c.Form == "" && c.Kind == "cylinder" {
		c.Form = "tall"
	}
	return c
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
		return sameVolume(row.Capacity, asked.Capacity)
	}},
	{"division", func(c Class) string { return millilitres(c.Division) }, func(row, asked Class) bool {
		return asked.Division == 0 || sameVolume(row.Division, asked.Division)
	}},
}

// noSuchClass says that none of rows, which fit the fields before, fits field as well.
func noSuchClass(asked Class, before []classField, field classField, rows []Class) ClassError {
	var e ClassError
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
	return strconv.FormatFloat(volume, 'g', -1, 64) + " mL"
}
