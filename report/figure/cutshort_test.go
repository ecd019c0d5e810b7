package figure

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/plan"
)

// A search that was cut short says so in its pictures, and one that was not does not.
func TestPicturesSayThatASearchWasCutShort(t *testing.T) {
	for name, p := range purchases(t) {
		if len(p.Curves) == 0 || len(p.Choices) == 0 {
			continue
		}
		f, err := Readability(p)
		if err != nil {
			continue
		}
		words, alt := wordsOf(t, f, err), altOfReadability(p)
		cut := *p
		cut.Curves = append([]plan.Curve(nil), p.Curves...)
		for i := range cut.Curves {
			cut.Curves[i].CutShort = make([]bool, len(cut.Curves[i].Relative))
			for k := range cut.Curves[i].CutShort {
				cut.Curves[i].CutShort[k] = true
			}
		}
		cut.Choices = append([]plan.Choice(nil), p.Choices...)
		for i := range cut.Choices {
			cut.Choices[i].CutShort = true
		}
		g, err := Readability(&cut)
		assert.Contains(t, wordsOf(t, g, err)+altOfReadability(&cut), "before the search was cut short", name)
		assert.Contains(t, altOfReadability(&cut), "search was cut short", name)
		assert.NotContains(t, words+alt, "search was cut short", name)
	}
}

// The caption of the coarsest readability says where a search was cut short.
func TestBreakEvenCutShort(t *testing.T) {
	f := &readable{p: &plan.Purchase{BreakEven: []plan.BreakEven{{Dilutions: 0, CutShort: true}, {Dilutions: 1, Readability: 0.01, CutShort: true}, {Dilutions: 2, Readability: 0.1}, {Dilutions: 3}}}}
	assert.Equal(t, "none found so far direct, 0.01 g or coarser with one dilution, 0.1 g with two dilutions, none with three dilutions", f.breakEven())
}
