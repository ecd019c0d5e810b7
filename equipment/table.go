package equipment

import (
	"embed"
	"encoding/csv"
	"fmt"
	"io/fs"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

//go:embed classes/*.csv
var tableFiles embed.FS

// readTable reads classes/<name>.csv: a T for each line, into whose fields the cells go by
// their tags, such as `csv:"bore_mm,none"`. A text is taken as it stands; several are
// parted by "|"; a bool is "yes" or nothing; a number is above zero, from 0 to 1 or nothing
// ("fraction", NaN for nothing), or above zero or nothing ("none", 0 for nothing). What may be
// nothing as "none" need not be a column of the table. It panics on a malformed table: the
// tables are part of the program.
func readTable[T any](files fs.FS, name string) []T {
	place := name + ".csv"
	text, err := fs.ReadFile(files, "classes/"+place)
	if err != nil {
		failTable(place, "%v", err)
	}
	records, err := csv.NewReader(strings.NewReader(string(text))).ReadAll() // refuses lines of unequal length
	if err != nil {
		failTable(place, "%v", err)
	}
	columns, known := columnsOf(reflect.TypeFor[T]())
	if len(records) < 2 || !fit(records[0], columns, known) {
		failTable(place, "want rows under the header %s", strings.Join(known, ","))
	}
	inOrder := make([]column, len(records[0]))
	for j, name := range records[0] {
		inOrder[j] = columns[slices.Index(known, name)]
	}
	rows := make([]T, len(records)-1)
	for i := range rows {
		row := reflect.ValueOf(&rows[i]).Elem()
		for j, cell := range records[i+1] {
			inOrder[j].read(tableLine{place, i + 2}, row.FieldByIndex(inOrder[j].field), cell)
		}
	}
	return rows
}

// column is a column of a table: its name, what may stand there, and the field that it goes to.
type column struct {
	name, may string
	field     []int
	kind      reflect.Kind
}

// columnsOf lists the columns of a table, and their names. A field may have one of several, parted by "|".
func columnsOf(row reflect.Type) (list []column, names []string) {
	for _, f := range reflect.VisibleFields(row) {
		if tag, found := f.Tag.Lookup("csv"); found {
			either, may, _ := strings.Cut(tag, ",")
			for name := range strings.SplitSeq(either, "|") {
				list, names = append(list, column{name, may, f.Index, f.Type.Kind()}), append(names, name)
			}
		}
	}
	return list, names
}

// fit reports whether a header has columns that are known, and one for each field that needs it.
func fit(header []string, columns []column, known []string) bool {
	for _, c := range columns {
		there := func(o column) bool { return slices.Equal(c.field, o.field) && slices.Contains(header, o.name) }
		if c.may != "none" && !slices.ContainsFunc(columns, there) {
			return false
		}
	}
	return !slices.ContainsFunc(header, func(name string) bool { return !slices.Contains(known, name) })
}

// tableLine is a line of a table.
type tableLine struct {
	place  string
	number int
}

func (l tableLine) String() string { return fmt.Sprintf("%s:%d", l.place, l.number) }

// read takes a cell into a field.
func (c *column) read(at tableLine, field reflect.Value, cell string) {
	switch {
	case c.kind == reflect.String:
		field.SetString(cell)
	case cell == "" && c.may == "fraction":
		field.SetFloat(math.NaN())
	case cell == "" && (c.kind != reflect.Float64 || c.may == "none"):
		// as it is
	case c.kind == reflect.Slice:
		field.Set(reflect.ValueOf(strings.Split(cell, "|")))
	case c.kind == reflect.Bool && cell == "yes":
		field.SetBool(true)
	case c.kind == reflect.Bool:
		failTable(at.String(), "%s is %q, want yes or nothing", c.name, cell)
	default:
		field.SetFloat(c.number(at, cell))
	}
}

func (c *column) number(at tableLine, cell string) float64 {
	x, err := strconv.ParseFloat(cell, 64)
	switch {
	case c.may == "fraction" && (err != nil || !(x >= 0 && x <= 1)):
		failTable(at.String(), "%s is %q, want a number from 0 to 1", c.name, cell)
	case c.may != "fraction" && (err != nil || !(x > 0) || math.IsInf(x, 1)): // NaN is not above zero
		failTable(at.String(), "%s is %q, want a positive number", c.name, cell)
	}
	return x
}

func failTable(place, format string, args ...any) {
	panic("equipment: " + place + ": " + fmt.Sprintf(format, args...))
}
