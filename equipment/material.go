package equipment

import (
	"embed"
	"encoding/csv"
	"fmt"
	"io/fs"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// Liquid is a solvent by a known name.
type Liquid struct {
	Name           string
	Density        float64 // g/mL at 20 °C
	Expansion      float64 // cubic, 1/°C at 20 °C
	SurfaceTension float64 // mN/m at 20 °C, 0 when not known
	// Alcohol is the volume fraction of ethanol in ethanol and water, NaN in anything else.
	Alcohol float64
	// Volatile: it is known to evaporate from an open vessel (common practice, no source).
	Volatile bool
	Source   string
	Trust    string // as in [Class]
	Note     string
}

// Glass is what a vessel is made of: a glass or a plastic.
type Glass struct {
	Name      string
	Expansion float64 // cubic, 1/°C
	Source    string
	Trust     string // as in [Class]
	Note      string
}

// FindLiquid finds a liquid by its name or an alias, however it is spaced and
// written in capitals.
func FindLiquid(name string) (Liquid, bool) {
	liquid, found := liquids().find[plain(name)]
	return liquid, found
}

// FindGlass finds the material of a vessel by its name or an alias, likewise.
func FindGlass(name string) (Glass, bool) {
	glass, found := glasses().find[plain(name)]
	return glass, found
}

// liquidName is the name by which the table knows a liquid, or the name as it is given, in
// small letters and with single spaces.
func liquidName(name string) string {
	if liquid, found := FindLiquid(name); found {
		return liquid.Name
	}
	return plain(name)
}

// SameLiquid reports whether two names are of one liquid, by the table of known ones or
// as they are spelt, whatever their capitals and spaces.
func SameLiquid(a, b string) bool { return liquidName(a) == liquidName(b) }

// water is what glass is adjusted with.
const water = "water"

// IsWater reports whether a name is one of water's.
func IsWater(name string) bool { return SameLiquid(name, water) }

func plain(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

// GlassNames lists the known materials of vessels in table order, without aliases.
func GlassNames() []string { return slices.Clone(glasses().names) }

var liquids = sync.OnceValue(func() materials[Liquid] {
	rows := readTable(tableFiles, "liquids", "name,aliases,density_g_per_mL,expansion_per_K,surface_tension_mN_per_m,alcohol,volatile,source,trust,note")
	return newMaterials(rows, func(row tableRow) Liquid {
		return Liquid{
			Name:           row.text("name"),
			Density:        row.positive("density_g_per_mL"),
			Expansion:      row.positive("expansion_per_K"),
			SurfaceTension: row.positiveOrNone("surface_tension_mN_per_m"),
			Alcohol:        row.fractionOrNaN("alcohol"),
			Volatile:       row.flag("volatile"),
			Source:         row.text("source"),
			Trust:          row.text("trust"),
			Note:           row.text("note"),
		}
	})
})

var glasses = sync.OnceValue(func() materials[Glass] {
	rows := readTable(tableFiles, "glasses", "name,aliases,expansion_per_K,source,trust,note")
	return newMaterials(rows, func(row tableRow) Glass {
		return Glass{
			Name:      row.text("name"),
			Expansion: row.positive("expansion_per_K"),
			Source:    row.text("source"),
			Trust:     row.text("trust"),
			Note:      row.text("note"),
		}
	})
})

// materials is a table of materials: the names, and each material by name and alias.
type materials[T any] struct {
	names []string
	find  map[string]T
}

// newMaterials panics when two materials share a name or alias.
func newMaterials[T any](rows []tableRow, build func(tableRow) T) materials[T] {
	table := materials[T]{find: map[string]T{}}
	for _, row := range rows {
		material := build(row)
		table.names = append(table.names, row.text("name"))
		for _, name := range row.names() {
			if _, taken := table.find[name]; taken {
				row.fail("name %q is taken", name)
			}
			table.find[name] = material
		}
	}
	return table
}

//go:embed classes/*.csv
var tableFiles embed.FS

// tableRow is a line of an embedded table: its place and its cells by column.
type tableRow struct {
	place string
	cells map[string]string
}

// readTable reads classes/<name>.csv, whose header must be columns. It panics on a
// malformed table, as the methods of its rows do on a malformed cell: the tables are
// part of the program.
func readTable(files fs.FS, name, columns string) []tableRow {
	file := tableRow{place: name + ".csv"}
	text, err := fs.ReadFile(files, "classes/"+name+".csv")
	if err != nil {
		file.fail("%v", err)
	}
	records, err := csv.NewReader(strings.NewReader(string(text))).ReadAll() // refuses lines of unequal length
	if err != nil {
		file.fail("%v", err)
	}
	if len(records) < 2 || strings.Join(records[0], ",") != columns {
		file.fail("want rows under the header %s", columns)
	}
	var rows []tableRow
	for i, record := range records[1:] {
		row := tableRow{fmt.Sprintf("%s:%d", file.place, i+2), map[string]string{}}
		for j, column := range records[0] {
			row.cells[column] = record[j]
		}
		rows = append(rows, row)
	}
	return rows
}

// text returns a cell as it stands.
func (r tableRow) text(column string) string {
	cell, found := r.cells[column]
	if !found {
		r.fail("no column %s", column)
	}
	return cell
}

// names returns the name and the aliases, which are parted by "|".
func (r tableRow) names() []string {
	names := []string{r.text("name")}
	if aliases := r.text("aliases"); aliases != "" {
		names = append(names, strings.Split(aliases, "|")...)
	}
	return names
}

// positive returns a number above zero.
func (r tableRow) positive(column string) float64 {
	x, err := strconv.ParseFloat(r.text(column), 64)
	if err != nil || !(x > 0) || math.IsInf(x, 1) { // NaN is not above zero
		r.fail("%s is %q, want a positive number", column, r.text(column))
	}
	return x
}

// positiveOrNone returns 0 for an empty cell.
func (r tableRow) positiveOrNone(column string) float64 {
	if r.text(column) == "" {
		return 0
	}
	return r.positive(column)
}

// fractionOrNaN returns a number from 0 to 1, NaN for an empty cell.
func (r tableRow) fractionOrNaN(column string) float64 {
	if r.text(column) == "" {
		return math.NaN()
	}
	x, err := strconv.ParseFloat(r.text(column), 64)
	if err != nil || !(x >= 0 && x <= 1) {
		r.fail("%s is %q, want a number from 0 to 1", column, r.text(column))
	}
	return x
}

// flag returns true for "yes" and false for an empty cell.
func (r tableRow) flag(column string) bool {
	text := r.text(column)
	if text != "" && text != "yes" {
		r.fail("%s is %q, want yes or nothing", column, text)
	}
	return text != ""
}

func (r tableRow) fail(format string, args ...any) {
	panic("equipment: " + r.place + ": " + fmt.Sprintf(format, args...))
}
