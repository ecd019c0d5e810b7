package bench

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// holdingPrep is an invented prep whose one-sided limit would let a total be nearly anything.
const holdingPrep = `
target = "0.1 % w/v"
volume = "VOLUME"
LIMIT
[solute]
name = "citric acid"
[solvent]
name = "water"
[[stock]]
name = "stock"
strength = "0.2 % w/v"
[[route]]
name = "half"
steps = [
  { start = "stock" },
  { take = "11 mL", with = "cylinder" },
  { make-up-to = "22 mL", in = "cylinder" },
]
`

// A total has room for what is in the vessel already, solvent that went first as well, and for
// the volume that is wanted; an aliquot has room beside the solvent below the mark.
func TestRoomHolds(t *testing.T) {
	skipIfSlow(t)
	for _, tt := range []struct {
		volume, limit string
		step          int
		low, high     float64 // of a cylinder with a line every mL
	}{
		{"20 mL", `not-below = "0.05 % w/v"`, 3, 20, 40},   // 8.8 mL of water, 11 mL of stock
		{"15 mL", `not-below = "0.05 % w/v"`, 3, 20, 40},   // wanted are fewer
		{"21.5 mL", `not-below = "0.05 % w/v"`, 3, 22, 40}, // wanted are more
		{"15 mL", `not-above = "0.16 % w/v"`, 2, 2, 13},    // 13.2 mL are free; 1 mL of the cylinder could be nothing
		{"30 mL", `not-below = "0.05 % w/v"`, 3, 20, 40},   // more is wanted than is planned
	} {
		kit, err := ParseKit("kit.toml", []byte(roomKit))
		require.NoError(t, err)
		p, err := ParsePrep("prep.toml", []byte(strings.NewReplacer("VOLUME", tt.volume, "LIMIT", tt.limit).Replace(holdingPrep)), kit)
		require.NoError(t, err)
		c, err := route.Evaluate(context.Background(), p, p.Routes, roomSettings)
		require.NoError(t, err)
		rooms, err := record.PlannedRoom(context.Background(), p, &c.Results[0], roomSettings)
		require.NoError(t, err)
		for _, room := range rooms {
			if room.Step == tt.step {
				assert.True(t, room.Any, "%+v", room)
				assert.InDelta(t, tt.low, room.Low, 0.51, "%s %s: %+v", tt.volume, tt.limit, room)
				assert.InDelta(t, tt.high, room.High, 3, "%s %s: %+v", tt.volume, tt.limit, room)
				assert.Equal(t, tt.low == 1, room.LowFree, "%+v", room)
			}
		}
	}
}
