package figure

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/purchase"
)

// A search that was cut short says so in its pictures, and one that was not does not.
func TestPicturesSayThatASearchWasCutShort(t *testing.T) {
	skipIfSlow(t)
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
		cut.Curves = append([]purchase.Curve(nil), p.Curves...)
		for i := range cut.Curves {
			cut.Curves[i].CutShort = make([]bool, len(cut.Curves[i].Relative))
			for k := range cut.Curves[i].CutShort {
				cut.Curves[i].CutShort[k] = true
			}
		}
		cut.Choices = append([]purchase.Choice(nil), p.Choices...)
		for i := range cut.Choices {
			cut.Choices[i].CutShort = true
		}
		g, err := Readability(&cut)
		assert.Contains(t, wordsOf(t, g, err)+altOfReadability(&cut), "before the search was cut short", name)
		assert.Contains(t, altOfReadability(&cut), "search was cut short", name)
		assert.NotContains(t, words+alt, "search was cut short", name)
	}
}
