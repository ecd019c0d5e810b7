package equipment

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
)

// StockSubstance is a substance of which it is known how dense its solutions in water are,
// by their strength.
type StockSubstance struct {
	Name    string   `csv:"name"`
	Aliases []string `csv:"aliases"`
	// As is what strengths of its table count, such as NH3; AlsoAs what labels count as
	// well, "" where there is one way only. 1 g of that holds AlsoHolds g of As.
	As        string  `csv:"as"`
	AlsoAs    string  `csv:"also_as"`
	AlsoHolds float64 `csv:"also_holds,none"`
	// Volatile: it evaporates from its solutions (common practice, no source).
	Volatile bool `csv:"volatile"`
	// OnlyDissolved are the forms that nobody weighs pure: what a bench has of them is a
	// solution, since pure they are a gas, or fall apart (common practice, no source).
	OnlyDissolved []string `csv:"only_dissolved"`
	Source        string   `csv:"source"` // of AlsoHolds
	Trust         string   `csv:"trust"`
	Note          string   `csv:"note"`

	rows []StockRow
}

// StockRow is the density of one solution in water at 20 °C.
type StockRow struct {
	Name    string  `csv:"name"`
	As      string  `csv:"as"`
	Percent float64 `csv:"strength_pct_ww"`
	Density float64 `csv:"density_g_per_mL"`
	// Limit is the half-width within which bottles of that strength have that density.
	Limit  float64 `csv:"limit_g_per_mL"`
	Bottle string  `csv:"usual_bottle"`
	Source string  `csv:"source"`
	Trust  string  `csv:"trust"` // as in [Class]
	Note   string  `csv:"note"`

	phi float64
}

// Stocks returns the substances whose stocks are known, in table order, and StockRows every
// row of their densities.
func Stocks() []*StockSubstance { return slices.Clone(stocks().list) }

// StockRows returns every row of the densities of stocks, in table order.
func StockRows() (rows []StockRow) {
	for _, s := range stocks().list {
		rows = append(rows, s.rows...)
	}
	return rows
}

// FindStock finds a substance by its name or an alias, however it is spaced and written in
// capitals. What is not found may be any substance.
func FindStock(name string) (s *StockSubstance, found bool) {
	s, found = stocks().find[plain(name)]
	return s, found
}

// stockTable has the substances, in order and by name and alias.
type stockTable struct {
	list []*StockSubstance
	find map[string]*StockSubstance
}

var stocks = sync.OnceValue(func() stockTable {
	table := stockTable{find: make(map[string]*StockSubstance)}
	for _, s := range readTable[StockSubstance](tableFiles, "stock_substances") {
		table.list = append(table.list, &s)
		for _, name := range append([]string{s.Name}, s.Aliases...) {
			if table.find[name] != nil {
				failTable("stock_substances.csv", "name %q is taken", name)
			}
			table.find[name] = &s
		}
	}
	for i, row := range readTable[StockRow](tableFiles, "stocks") {
		s := table.find[row.Name]
		if s == nil || s.As != row.As || row.Percent > 100 || len(s.rows) > 0 && s.rows[len(s.rows)-1].Percent >= row.Percent {
			failTable(fmt.Sprintf("stocks.csv:%d", i+2), "not of a known substance, or not in the order of strengths")
		}
		row.phi = apparentVolume(row.Percent/100, row.Density)
		s.rows = append(s.rows, row)
	}
	return table
})

// waterAt20 is that of the table of liquids, in g/mL at 20 °C.
var waterAt20 = sync.OnceValue(func() float64 {
	w, _ := FindLiquid(water)
	return w.Density
})

// apparentVolume is the apparent specific volume φ of a solute, in mL/g, of which a mass
// fraction w in water makes a density ρ:
//
//	1/ρ = w φ + (1 - w)/ρ0
func apparentVolume(w, density float64) float64 { return (1/density - (1-w)/waterAt20()) / w }

// Forms are what labels count of it: one way, or two.
func (s *StockSubstance) Forms() []string {
	return slices.DeleteFunc([]string{s.As, s.AlsoAs}, func(form string) bool { return form == "" })
}

// Form finds a form by how it is written, in whatever capitals.
func (s *StockSubstance) Form(text string) (form string, found bool) {
	i := slices.IndexFunc(s.Forms(), func(f string) bool { return strings.EqualFold(f, plain(text)) })
	if i < 0 {
		return "", false
	}
	return s.Forms()[i], true
}

// Holds is how many g of what its table counts 1 g of a form holds; "" is that itself.
func (s *StockSubstance) Holds(form string) float64 {
	if form != "" && form == s.AlsoAs {
		return s.AlsoHolds
	}
	return 1
}

// Most is the mass fraction up to which densities are known.
func (s *StockSubstance) Most() float64 { return s.rows[len(s.rows)-1].Percent / 100 }

// StockDensity is what is known of a solution in water of one mass fraction.
type StockDensity struct {
	// Density in g/mL at 20 °C, Limit the half-width within which it lies, and Slope how it
	// changes with the mass fraction.
	Density, Limit, Slope float64
	// SpecificVolume is the apparent one of the solute, in mL/g, and Spread its half-width.
	SpecificVolume, Spread float64
	// Trust is the lesser of those of the rows that it lies between.
	Trust string
}

// At is the density at a mass fraction w. Between two rows the apparent specific volume φ,
// which hardly changes with the strength, goes in a straight line; below the first and above
// the last row it stays as there, and so does its spread below the first. It panics at a
// fraction below 0 or above 1.
func (s *StockSubstance) At(w float64) StockDensity {
	requireFraction(w)
	above := slices.IndexFunc(s.rows, func(r StockRow) bool { return r.Percent/100 >= w })
	if above < 0 {
		above = len(s.rows) - 1
	}
	low, high := &s.rows[max(0, above-1)], &s.rows[above]
	d := StockDensity{SpecificVolume: high.phi, Trust: lessTrusted(low.Trust, high.Trust), Limit: math.Max(low.Limit, high.Limit)}
	bend := 0.0
	switch {
	case w >= high.Percent/100 || above == 0:
		d.Limit, d.Trust = high.Limit, high.Trust
	default:
		bend = (high.phi - low.phi) / ((high.Percent - low.Percent) / 100)
		d.SpecificVolume += float64(bend * (w - high.Percent/100))
	}
	d.Density = 1 / (float64(w*d.SpecificVolume) + (1-w)/waterAt20())
	d.Slope = -float64(d.Density*d.Density) * (d.SpecificVolume + float64(w*bend) - 1/waterAt20())
	least := math.Max(w, s.rows[0].Percent/100)
	d.Spread = d.Limit / (d.Density * d.Density * least)
	d.Limit *= w / least
	return d
}

// Fraction is the mass fraction of a solution of a concentration in g/mL, at most 1.
func (s *StockSubstance) Fraction(concentration float64) float64 {
	low, high := 0.0, 1.0
	for range 52 { // to the last digits
		w := (low + high) / 2
		if w*s.At(w).Density < concentration {
			low = w
		} else {
			high = w
		}
	}
	return high
}

// Recalled reports whether the density was not seen in print.
func (d *StockDensity) Recalled() bool { return d.Trust == fromMemory }

// lessTrusted is the lesser of two marks of trust.
func lessTrusted(a, b string) string {
	if mistrust(a) > mistrust(b) {
		return a
	}
	return b
}

// mistrust goes from 0, of what two sources have, to 3.
func mistrust(trust string) int {
	switch {
	case trust == fromMemory:
		return 3
	case trust == "derived":
		return 2
	case strings.HasPrefix(trust, "one"):
		return 1
	}
	return 0
}
