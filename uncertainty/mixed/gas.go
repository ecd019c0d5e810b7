package mixed

import (
	_ "embed"
	"encoding/csv"
	"strings"
	"sync"
)

// gases lists what boils below 20 °C at the pressure of the air, with its boiling point in °C (from memory).
//
//go:embed gases.csv
var gases string

// gasNames are the names and aliases of the table, as [withoutBottle] and [plainGas] leave them.
var gasNames = sync.OnceValue(func() map[string]bool {
	names := make(map[string]bool)
	rows, err := csv.NewReader(strings.NewReader(gases)).ReadAll()
	if err != nil {
		panic("mixed: gases.csv: " + err.Error())
	}
	for _, row := range rows[1:] {
		for name := range strings.SplitSeq(row[0]+"|"+row[1], "|") {
			short, _ := withoutBottle(name)
			names[plainGas(short)] = true
		}
	}
	delete(names, "")
	return names
})

// isGas reports whether a name without the words of bottles is known to be that of a gas at a bench.
func isGas(short string) bool { return gasNames()[plainGas(short)] }

// plainGas is a name in one spelling.
func plainGas(name string) string { return strings.ReplaceAll(name, "sulph", "sulf") }
