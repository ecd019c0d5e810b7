package bench

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// roomKit and roomPrep are an invented bench and an invented prep: what is left of each
// tolerance is small, and the syringe makes the strength lopsided.
const roomKit = `
[[balance]]
name = "scale"
capacity = "100 g"
readability = "0.01 g"
[[balance]]
name = "fine scale"
capacity = "20 g"
readability = "0.001 g"
[[cylinder]]
name = "cylinder"
capacity = "50 mL"
class = "B"
[[flask]]
name = "flask"
capacity = "25 mL"
class = "A"
[[syringe]]
name = "syringe"
capacity = "2 mL"
[[dropper]]
name = "dropper"
`

const roomPrep = `
target = "0.12 % w/v"
volume = "30 mL"
tolerance = "TOLERANCE"
[solute]
name = "citric acid"
[solvent]
name = "water"
[[route]]
name = "fine"
steps = [
  { weigh = "0.751 g", on = "fine scale" },
  { make-up-to = "25 mL", in = "flask" },
  { take = "2 mL", with = "syringe" },
  { make-up-to = "50 mL", in = "cylinder" },
]
[[route]]
name = "coarse"
steps = [
  { weigh = "0.30 g", on = "scale" },
  { make-up-to = "25 mL", in = "flask" },
  { take = "1 mL", with = "syringe" },
  { add = "20 drops", with = "dropper" },
  { take = "all" },
  { make-up-to = "10 mL", in = "cylinder" },
]
[[route]]
name = "between two lines"
steps = [
  { weigh = "0.75 g", on = "scale" },
  { make-up-to = "25 mL", in = "flask" },
  { take = "2 mL", with = "syringe" },
  { make-up-to = "49.7 mL", in = "cylinder" },
]
`

// roomOf is the record of a batch of which nothing has been done, its result and its room.
func roomOf(t *testing.T, limits uncertainty.Limits, name string) (*record.Record, *route.Result, []record.Room) {
	t.Helper()
	kit, err := ParseKit("kit.toml", []byte(roomKit))
	require.NoError(t, err)
	p, err := ParsePrep("prep.toml", []byte(strings.Replace(roomPrep, "TOLERANCE", "9 % of target", 1)), kit)
	require.NoError(t, err)
	p.Tolerances = []route.Tolerance{{Text: "within", Limits: limits}}
	r, err := ParseRecord("record.toml", []byte("route = \""+name+"\"\n[entries]\n"), p)
	require.NoError(t, err)
	m, err := record.Evaluate(context.Background(), r, roomSettings)
	require.NoError(t, err)
	rooms, err := record.PlannedRoom(context.Background(), p, &m.AsPlanned, roomSettings)
	require.NoError(t, err)
	assert.Equal(t, m.Room, rooms, "a batch of which nothing is done has the room of the plan")
	return r, &m.AsMade, rooms
}

// thorough is false under the race detector.
var thorough = true

// skipIfSlow leaves out under the race detector what simulates often.
func skipIfSlow(t *testing.T) {
	t.Helper()
	if !thorough {
		t.Skip("run without the race detector")
	}
}

var roomSettings = uncertainty.Settings{Trials: 20_000, Seed: 3, Coverage: 0.95}

// Whatever the tolerance, the room and the headline go by one chance: a reading in the
// room keeps the batch inside when the batch is simulated with it, as it would be from its
// record; the planned reading is in the room exactly when the headline says inside; and
// hardly a reading beyond the room would do (constructed).
func TestRoomAgreesWithTheHeadline(t *testing.T) {
	skipIfSlow(t)
	inside, not := 0, 0
	for _, half := range []float64{0.02, 0.045, 0.05, 0.055, 0.06, 0.065, 0.07, 0.08, 0.1, 0.15, 0.3} {
		for _, name := range []string{"fine", "coarse", "between two lines"} {
			r, made, rooms := roomOf(t, uncertainty.Limits{Lower: 0.12 * (1 - half), Upper: 0.12 * (1 + half)}, name)
			headline := made.Chance() >= r.Prep.LeastChance
			for _, room := range rooms {
				holds := room.Any && room.Low <= room.Planned+1e-12 && room.Planned <= room.High+1e-12
				assert.Equal(t, headline, holds, "%s, within %v: %.4f, %+v", name, half, made.Chance(), room)
				if room.Fixed || !room.Any {
					continue
				}
				checkRoom(t, r, room)
			}
			if headline {
				inside++
			} else {
				not++
			}
		}
	}
	assert.Greater(t, inside, 5)
	assert.Greater(t, not, 5)
}

// checkRoom simulates the batch with the readings at the ends, in the middle, and beyond.
func checkRoom(t *testing.T, r *record.Record, room record.Room) {
	t.Helper()
	chance := func(reading float64) float64 {
		c, err := r.Prep.ChanceOf(context.Background(), r.Made.With(room.Step-1, reading), roomSettings)
		require.NoError(t, err)
		return c
	}
	digit, most := r.Made.Steps[room.Step-1].Scale()
	middle := math.Round((room.Low+room.High)/2/digit) * digit
	for _, reading := range []float64{room.Low, middle, room.High} {
		assert.GreaterOrEqual(t, chance(reading), r.Prep.LeastChance, "step %d, %v in %+v", room.Step, reading, room)
	}
	beyond := max(2*digit, 0.1*(room.High-room.Low))
	if low := room.Low - beyond; !room.LowFree && low > digit {
		assert.Less(t, chance(low), r.Prep.LeastChance, "step %d, %v below %+v", room.Step, low, room)
	}
	if high := room.High + beyond; !room.HighFree && high < most {
		assert.Less(t, chance(high), r.Prep.LeastChance, "step %d, %v above %+v", room.Step, high, room)
	}
}

// One limit leaves one end open, and a plan that is too near to it is brought inside by
// whatever is far enough from it.
func TestRoomOfOneLimit(t *testing.T) {
	skipIfSlow(t)
	for _, upper := range []float64{0.2, 0.11} {
		r, _, rooms := roomOf(t, uncertainty.Limits{Lower: math.Inf(-1), Upper: upper}, "fine")
		for _, room := range rooms {
			switch room.Step {
			case 1: // more makes it stronger
				assert.True(t, room.Any && !room.HighFree, "%+v", room)
			case 3:
				assert.True(t, room.Any && room.LowFree, "%+v", room)
			case 4:
				assert.Equal(t, upper == 0.2, room.Any, "%+v", room)
				assert.Equal(t, upper == 0.2, room.HighFree, "%+v", room)
			}
			if room.Any && !room.Fixed {
				checkRoom(t, r, room)
			}
		}
	}
	_, _, rooms := roomOf(t, uncertainty.Limits{Lower: 0.05, Upper: math.Inf(1)}, "fine")
	assert.True(t, !rooms[0].HighFree && !rooms[0].LowFree, "beside the water in the flask there is room for 13 g: %+v", rooms[0])
}

// Nothing tells a flask apart from its mark.
func TestRoomOfOneMark(t *testing.T) {
	skipIfSlow(t)
	_, _, rooms := roomOf(t, uncertainty.Limits{Lower: 0.08, Upper: 0.16}, "fine")
	assert.Equal(t, record.Room{Step: 2, Planned: 25, Low: 25, High: 25, Any: true, Fixed: true}, rooms[1])
	_, _, rooms = roomOf(t, uncertainty.Limits{Lower: 0.119, Upper: 0.121}, "fine")
	assert.False(t, rooms[1].Any)
}
