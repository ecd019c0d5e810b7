package uncertainty

import (
	"context"
	"math"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestCancelledRuns: all that draws trials returns the error of the context and
// no result, also when it is cancelled in the middle.
func TestCancelledRuns(t *testing.T) {
	m, y := longModel()
	stopped, stop := context.WithCancel(context.Background())
	stop()
	for _, s := range []Settings{{}, {Digits: 2}, {Trials: mostTrials}, {Trials: mostTrials, Digits: 1}} {
		result, err := m.Simulate(stopped, y, s)
		assert.Equal(t, context.Canceled, err, "%+v", s)
		assert.Equal(t, MonteCarlo{}, result)
	}
	chances, err := CloserTo(stopped, 1, []Quantity{{Model: m, Node: y}, {Model: m, Node: y}}, Settings{Trials: mostTrials})
	assert.Equal(t, context.Canceled, err)
	assert.Equal(t, []float64(nil), chances)

	// What cannot be asked is said all the same.
	_, err = m.Simulate(stopped, y, Settings{Trials: 1})
	assert.Equal(t, Settings{Trials: 1}.Check(), err)
}

// TestCancelledInTheMiddle: a run of an hour ends after the round in which it is
// cancelled.
func TestCancelledInTheMiddle(t *testing.T) {
	for _, s := range []Settings{{Trials: mostTrials}, {Trials: mostTrials, Digits: 2, Validating: true, Plain: true}} {
		m, y := longModel()
		ctx, cancel := context.WithCancel(context.Background())
		done := 0
		s.Progress = func(trials int) {
			done += trials
			if done >= 200_000 {
				cancel()
			}
		}
		mc, err := m.Simulate(ctx, y, s)
		assert.Equal(t, context.Canceled, err)
		assert.Equal(t, MonteCarlo{}, mc)
		assert.Equal(t, true, done < 200_000+roundTrials, "%d trials", done)
	}
}

// TestProgressAddsUp to the trials that were run, in steps that are neither 0 nor
// more than a round.
func TestProgressAddsUp(t *testing.T) {
	m, y := longModel()
	for _, s := range []Settings{
		{Trials: fewestTrials}, {Trials: 10_001}, {Trials: roundTrials}, {Trials: roundTrials + 1}, {},
		{Trials: KeptTrials + 17}, {Digits: 1}, {Digits: 2, Trials: 123_456},
	} {
		sum := 0
		s.Progress = func(trials int) {
			assert.Equal(t, true, 0 < trials && trials <= roundTrials)
			sum += trials
		}
		mc := simulate(t, m, y, s)
		assert.Equal(t, mc.Trials, sum)
		if s.Digits == 0 && s.Trials > 0 {
			assert.Equal(t, s.WithDefaults().Trials, mc.Trials)
		}
	}
}

// TestProcessorsOfAdaptiveAndLongRuns: their digits do not depend on the number
// of processors either.
func TestProcessorsOfAdaptiveAndLongRuns(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	m, y := longModel()
	for _, s := range []Settings{{Digits: 1, Seed: 3}, {Trials: KeptTrials + 100_000, Seed: 3}} {
		var one []float64
		for _, processors := range []int{1, 2, 5} {
			runtime.GOMAXPROCS(processors)
			mc := simulate(t, m, y, s)
			figures := []float64{
				float64(mc.Trials), mc.Mean, mc.StandardDeviation, mc.MeanError, mc.DeviationError,
				mc.Lower, mc.Upper, mc.ShortestLower, mc.ShortestUpper, mc.LowerError, mc.UpperError,
				mc.Quantile(0.1), mc.ConformanceProbability(Limits{0.3, math.Inf(1)}),
			}
			if one == nil {
				one = figures
			}
			assert.Equal(t, one, figures, "%d processors", processors)
		}
	}
}
