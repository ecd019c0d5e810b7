package strengths

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestBasesAreWhole holds the table of bases: each says all that tells it from others.
func TestBasesAreWhole(t *testing.T) {
	counted := make(map[Basis]bool)
	for _, u := range units {
		counted[u.Basis] = true
	}
	for b := range bases {
		is := &bases[b]
		assert.True(t, counted[Basis(b)], "no unit is of basis %d", b)
		assert.Equal(t, is.Carried != "", is.Limit.Most > 0 && is.Outside.Hint != "", "%d: what is carried has a limit with a hint", b)
		assert.True(t, is.Carried != "" || is.InMass, "%d: what is not carried is by mass", b)
		if needs := &is.Needs; Basis(b) != ByMassInVolume {
			assert.NotContains(t, []string{needs.Table, needs.Key, needs.Unit, needs.Example}, "", b)
		}
	}
}
