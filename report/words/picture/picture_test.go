package picture

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/purchase"
)

// The caption of the coarsest readability says where a search was cut short.
func TestBreakEvenCutShort(t *testing.T) {
	f := &Readability{Purchase: &purchase.Purchase{BreakEven: []purchase.BreakEven{{Dilutions: 0, CutShort: true}, {Dilutions: 1, Readability: 0.01, CutShort: true}, {Dilutions: 2, Readability: 0.1}, {Dilutions: 3}}}}
	assert.Equal(t, "none found so far direct, 0.01 g or coarser with one dilution, 0.1 g with two dilutions, none with three dilutions", f.breakEven())
}

// What is not drawn is counted, in words for one and for more.
func TestNotShown(t *testing.T) {
	assert.Equal(t, "1 route of this kind is not shown.", notShown(1, "of this kind"))
	assert.Equal(t, "3 routes of this kind are not shown.", notShown(3, "of this kind"))
}

// Each number of dilutions has words, also one that is more than any that has its own.
func TestDilutions(t *testing.T) {
	assert.Equal(t, "direct", Dilutions(0))
	assert.Equal(t, "four dilutions", Dilutions(4))
	assert.Equal(t, "five dilutions or more", Dilutions(5))
	assert.Equal(t, "five dilutions or more", Dilutions(9))
}
