package bench

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/contest"
	"minim/uncertainty/record"
)

// The room of a reading on a long route, of which not every end is simulated, is that of
// its simulation within a digit (constructed).
func TestRoomOfALongRoute(t *testing.T) {
	skipIfSlow(t)
	kit, err := ParseKit("bench.toml", []byte(littleKit))
	require.NoError(t, err)
	again := `, { take = "45 mL", with = "cylinder" }, { make-up-to = "50 mL", in = "cylinder" }`
	text := strings.Replace(littlePrep, "BENCH", `temperature = "20 °C"`, 1)
	text = strings.Replace(text, `target = "2 % w/v"`, "target = \"0.86 % w/v\"\ntolerance = \"25 % of target\"", 1)
	text = strings.Replace(text, `{ make-up-to = "50 mL", in = "cylinder" } ]`, `{ make-up-to = "50 mL", in = "cylinder" }`+strings.Repeat(again, simulatedSteps/2)+" ]", 1)
	p, err := ParsePrep("prep.toml", []byte(text), kit)
	require.NoError(t, err)
	s := uncertainty.Settings{Trials: 100_000, Seed: 1, Coverage: 0.95}
	c, err := contest.Compare(context.Background(), p, "direct", s)
	require.NoError(t, err)
	result := &c.Results[0]
	require.True(t, len(result.Route.Steps) > simulatedSteps && p.GoodEnough(result))
	room, err := record.PlannedRoom(context.Background(), p, result, s)
	require.NoError(t, err)
	require.Len(t, room, len(result.Route.Steps))
	for _, one := range room[:2] {
		digit := map[int]float64{1: 0.01, 2: 1}[one.Step]
		chance := func(reading float64) float64 {
			chance, err := p.ChanceOf(context.Background(), result.Route.With(one.Step-1, math.Round(reading/digit)*digit), s)
			require.NoError(t, err)
			return chance
		}
		assert.Less(t, one.Low, one.Planned)
		assert.Less(t, one.Planned, one.High+digit/2)
		assert.GreaterOrEqual(t, chance(one.Low+digit), p.LeastChance)
		if !one.LowFree {
			assert.Less(t, chance(one.Low-2*digit), p.LeastChance)
		}
		if !one.HighFree {
			assert.Less(t, chance(one.High+2*digit), p.LeastChance)
		}
	}
}

// simulatedSteps is mostSimulated of package record.
const simulatedSteps = 16
