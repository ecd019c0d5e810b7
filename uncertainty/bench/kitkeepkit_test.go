package bench

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// What is written of a kit is a kit of the same bench; titles, notes, prices and candidates
// are gone.
func TestWrittenKit(t *testing.T) {
	for _, text := range []string{statedKit, withCandidates, oneCylinder + "class = \"B\"\nprice = \"3 EUR\"\n"} {
		kit, err := ParseKit("bench.toml", []byte(text))
		require.NoError(t, err)
		again, err := ParseKit("bench.toml", []byte(writtenKit(t, kit)))
		require.NoError(t, err)
		assert.Equal(t, writtenKit(t, kit), writtenKit(t, again))
		for _, b := range kit.Balances {
			b.Price = equipment.Price{}
		}
		for _, m := range kit.Measures {
			m.Price = equipment.Price{}
		}
		assert.Equal(t, kit.Instruments, again.Instruments)
		assert.Empty(t, again.Candidates.Names())
		assert.Empty(t, again.Title+again.Note)
	}
}

// What is written of a changed kit has the change.
func TestWrittenChangedKit(t *testing.T) {
	c, err := benchfile.ParseChange("--change", "0.01 g scale: linearity = 0.03 g")
	require.NoError(t, err)
	kit, err := ParseKit("bench.toml", []byte(withCandidates))
	require.NoError(t, err)
	changed := &route.Prep{Kit: kit, Changes: []equipment.Change{{Name: c.Name, Key: c.Key, Value: c.Value}}}
	text := kitTable(changed).Written("title", "note", "price", candidateTables)
	assert.Equal(t, equipment.Stated{Value: 0.03, Known: true}, parseKit(t, text).Balance("0.01 g scale").Linearity)
}

// What another bench has of other names stands after what is there.
func TestWithMissing(t *testing.T) {
	kit, other := parseKit(t, statedKit), parseKit(t, withCandidates)
	both := record.Since(&route.Prep{Kit: kit}, &route.Prep{Kit: other}).Kit
	for _, name := range kit.Names() {
		assert.True(t, kit.Balance(name) == both.Balance(name) && kit.Measure(name) == both.Measure(name))
	}
	for _, name := range other.Names() {
		assert.Contains(t, both.Names(), name)
	}
	assert.Equal(t, both.Names(), record.Since(&route.Prep{Kit: both}, &route.Prep{Kit: other}).Kit.Names())
	assert.Equal(t, parseKit(t, statedKit), kit)
}

// writtenKit is what a record carries of a kit.
func writtenKit(t *testing.T, kit *equipment.Kit) string {
	t.Helper()
	return kitTable(&route.Prep{Kit: kit}).Written("title", "note", "price", candidateTables)
}
