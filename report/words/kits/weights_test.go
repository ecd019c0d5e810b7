package kits

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/report/page"
)

// Every row of check weights is printed with its limits, and with none where there is none.
func TestCheckWeightsAreListed(t *testing.T) {
	rows := equipment.Weights()
	blocks := checkWeights(rows)
	assert.Len(t, blocks[2].(*page.Table).Rows, len(rows))
	text := (&page.Page{Blocks: blocks}).Text(classesWidth)
	assert.Regexp(t, `\n +nominal, g +E2 +F1 +F2 +M1 +M2 +M3  trust and sources\n`, text)
	assert.Regexp(t, `\n +0\.01 +0\.008 +0\.025 +0\.08 +0\.25 +one source  \[`, text)
	assert.Regexp(t, `\n +100 +0\.16 +0\.5 +1\.6 +5 +16 +50 +one source  \[`, text)
	assert.Empty(t, checkWeights(nil))
}
