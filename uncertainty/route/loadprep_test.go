package route

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/equipment/benchfile"
)

// Changes are made to the kit that the prep names and to the one in its place, and
// are kept with the prep; a mistake in one is told as such.
func TestLoadPrepWithChanges(t *testing.T) {
	const path, kitPath = published + "quam-a1/cadmium.toml", published + "quam-a1/bench-borosilicate.toml"
	for _, kit := range []string{"", kitPath} {
		plain, err := LoadPrep(path, kit)
		require.NoError(t, err)
		assert.Equal(t, 0, len(plain.Changes))
		c, err := benchfile.ParseChange("--change", plain.Kit.Balances[0].Name+": count = 7")
		require.NoError(t, err)
		changed, err := Changed(plain, []benchfile.Change{c})
		require.NoError(t, err)
		assert.Equal(t, 7, changed.Kit.Balances[0].Count)
		assert.Equal(t, []equipment.Change{{Name: c.Name, Key: c.Key, Value: c.Value}}, changed.Changes)
		assert.Equal(t, len(plain.Routes), len(changed.Routes))

		none, err := benchfile.ParseChange("--change", "no such thing: count = 7")
		require.NoError(t, err)
		_, err = Changed(plain, []benchfile.Change{none})
		m, ok := err.(*benchfile.Mistake)
		require.True(t, ok, "%v", err)
		assert.Equal(t, 0, m.Line)
	}
}
