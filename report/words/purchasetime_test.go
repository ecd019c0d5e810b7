package words

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/purchase"
	"minim/uncertainty/route"
)

// Where a search was cut short, nothing says that a bench allows no route; many such
// benches are counted, not named.
func TestPurchaseThatFoundNothingInTime(t *testing.T) {
	p := &purchase.Purchase{Prep: &route.Prep{}, Verdict: purchase.Verdict{Present: -1, Buy: -1}}
	for i := range 8 {
		p.Choices = append(p.Choices, purchase.Choice{Name: fmt.Sprintf("scale %d", i), Owned: true})
	}
	assert.Equal(t, "this bench allows no route, with or without the candidates", verdictSentence(p))
	assert.Equal(t, "no route", choiceRow(p, 0).Cells[1])
	for i := range p.Choices[:2] {
		p.Choices[i].CutShort = true
	}
	const found = "this bench shows no route so far, with or without the candidates; the search was cut short with "
	assert.Equal(t, found+"the scale 0, the scale 1, where a better route may exist", verdictSentence(p))
	assert.Equal(t, "cut short", choiceRow(p, 0).Cells[1])
	for i := range p.Choices {
		p.Choices[i].CutShort = true
	}
	assert.Equal(t, found+"8 of the 8 benches, where a better route may exist", verdictSentence(p))
}
