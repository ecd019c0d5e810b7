package mixed

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty/near"
)

// 3.2 mL of lye of 50 % w/w (1.525 g/mL) and 44.75 mL of water (0.9982 g/mL) weigh 49.55 g, of 4.92 % w/w;
// at 1.053 g/mL (CRC, 5 %: 1.0538) these take up 47.06 mL in place of 47.95.
func TestShrinks(t *testing.T) {
	lye, found := equipment.FindStock("sodium hydroxide")
	require.True(t, found)
	s := Shrinks(lye, "", Dissolved{2.44, 3.2}, Dissolved{0, 44.75})
	near.Relative(t, "share", 1-47.06/47.95, s.Share, 0.03)
	assert.Greater(t, s.Within, 0.0)
	assert.Less(t, s.Within, 0.005)
	assert.NotEmpty(t, s.Trust)
	assert.Equal(t, s, Shrinks(lye, "", Dissolved{0, 44.75}, Dissolved{2.44, 3.2}), "whichever goes first")
	assert.Equal(t, Shrinking{}, Shrinks(lye, "", Dissolved{2.44, 3.2}, Dissolved{4.88, 6.4}), "two of one strength")
	assert.Equal(t, Shrinking{}, Shrinks(lye, "", Dissolved{0.01, 10}, Dissolved{0, 10}), "too weak to count")
	assert.Equal(t, Shrinking{}, Shrinks(nil, "", Dissolved{2.44, 3.2}, Dissolved{0, 44.75}), "of no table")
	assert.Equal(t, Shrinking{}, Shrinks(lye, "", Dissolved{2.44, 3.2}, Dissolved{}), "nothing is added")
}
