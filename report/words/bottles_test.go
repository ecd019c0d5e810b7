package words

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/page"
)

// bottlesOf is what a sheet says of its bottles.
func bottlesOf(b *sheetBench) string {
	for _, t := range b.needs() {
		if t.Label == "bottles" {
			return t.Text
		}
	}
	return ""
}

// What gives off gas is mixed by swirling, open, in a bottle with room for it; it is not
// poured back into the narrow neck of a flask.
func TestGasIsSwirledInARoomyBottle(t *testing.T) {
	const steps = `{ start = "strong" }, { take = "2 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`
	b := sheetOf(t, `, hazards = ["gives off gas"]`, "", "", steps)
	assert.Contains(t, bottlesOf(b), "(holds at least 50 mL)")
	assert.Contains(t, b.do(2), "pour it into dry bottle 1 and swirl it there, open, in a fume cupboard")
	assert.NotContains(t, b.do(2), "and back")
	b = sheetOf(t, `, hazards = ["none known"]`, "", "", steps)
	assert.Contains(t, bottlesOf(b), "(holds at least 25 mL)")
}

// The sheet does not name another liquid for its bottles than their labels do.
func TestBottlesOfTwoLiquids(t *testing.T) {
	const steps = `{ start = "strong" }, { take = "2 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" }`
	b := sheetOf(t, "", "", "", steps)
	assert.Contains(t, bottlesOf(b), "labelled solute in water with its hazards")
	b.route.Steps[0].Stock.Solvent = "ethanol"
	b = newSheetBench(b.Paper)
	assert.Contains(t, bottlesOf(b), "labelled with what is in each and its hazards")
	assert.True(t, strings.Contains(string((&page.Page{Blocks: []page.Block{b.Paper.labels(Label{Count: 1})}}).Markdown()), "solute in ethanol and water"))
}
