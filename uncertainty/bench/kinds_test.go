package bench

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
)

// Each kind stands in a table of a kit, and each table holds one.
func TestEveryKindHasATable(t *testing.T) {
	for _, kind := range candidateKinds() {
		if kind != balanceTables {
			assert.Contains(t, measureTables(), equipment.Kind(kind).Traits().Table, "%s: no table of a kit holds it", kind)
		}
	}
	for _, table := range measureTables() {
		assert.True(t, slices.ContainsFunc(candidateKinds(), func(kind string) bool { return equipment.Kind(kind).Traits().Table == table }), table)
	}
}
