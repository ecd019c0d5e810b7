package page

import (
	"regexp"
	"strings"
)

// lastNumber of a cell is the one that its decimal mark is of: "0.041" of "0.037 to 0.041 g".
var lastNumber = regexp.MustCompile(`\d+(\.\d+)?`)

// figures of a cell are what stands before the decimal mark of its last number, the decimals with
// their mark, and the unit behind; found is false where there is no number.
func figuresOf(cell string) (whole, decimals, unit string, found bool) {
	all := lastNumber.FindAllStringSubmatchIndex(cell, -1)
	if len(all) == 0 {
		return cell, "", "", false
	}
	last := all[len(all)-1]
	to := last[1]
	if last[2] >= 0 {
		to = last[2]
	}
	return cell[:to], cell[to:last[1]], cell[last[1]:], true
}

// lined gives the cells of a column that stand to the right so many spaces behind them that
// their decimal marks stand below each other.
func lined(cells []string) []string {
	tails, most := make([]int, len(cells)), 0
	for i, cell := range cells {
		_, decimals, unit, found := figuresOf(cell)
		tails[i] = -1
		if found {
			tails[i] = runes(decimals) + runes(unit)
			most = max(most, tails[i])
		}
	}
	for i, tail := range tails {
		if tail >= 0 {
			cells[i] += strings.Repeat(" ", most-tail)
		}
	}
	return cells
}
