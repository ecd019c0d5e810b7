package uncertainty

import (
	"context"
	"math"
	"runtime"

	"minim/uncertainty/parallel"
	"minim/uncertainty/portable"
	"minim/uncertainty/random"
	"minim/uncertainty/rounding"
	"minim/uncertainty/sharp"
	"minim/uncertainty/statistics"
)

// MonteCarlo is the result of propagating the distributions (JCGM 101).
type MonteCarlo struct {
	// Trials that were run.
	Trials              int
	Seed                uint64
	CoverageProbability float64
	// Mean of the quantity, and its standard deviation; that is NaN when an
	// influence is a Student t with two degrees of freedom or fewer, which has no
	// variance, and the mean with one or fewer, which has none either. Where the model is nearly linear both are
	// sharper than those of the trials alone: see the errors below.
	Mean, StandardDeviation float64
	// Lower and Upper are the ends of the probabilistically symmetric
	// coverage interval, ShortestLower and ShortestUpper of the shortest.
	Lower, Upper, ShortestLower, ShortestUpper float64
	// Standard errors of the mean, the standard deviation and the ends of the
	// symmetric interval: by how much they would scatter from seed to seed.
	// The ends of the shortest interval scatter several times more, since
	// many intervals are nearly as short.
	MeanError, DeviationError, LowerError, UpperError float64
	// Resolution is the most by which an end of the symmetric interval may be
	// off because not all values were kept: 0 for up to KeptTrials.
	Resolution float64
	// Digits is the number of significant digits of the standard deviation
	// that mean, standard deviation and symmetric interval can be relied on
	// to: twice their standard errors are within the numerical tolerance
	// (JCGM 101, 7.9.2 and 7.9.4); 0 when not even one. Where there is no standard
	// deviation, a quarter of the interval stands for it, and the ends alone count.
	Digits int
	// AtCeiling: the adaptive procedure ended because no more trials might be
	// run, before the digits asked for were reached.
	AtCeiling bool
	// Sharper is how many times as many trials the ends of the symmetric interval would need to be
	// as sure as they are if they were those of the sorted trials, which they are where it is 1.
	Sharper float64
	// ByLaw: nothing was simulated, and Trials is 0: see [Ready.ByLaw].
	ByLaw bool

	tally statistics.Tally
}

// Simulate evaluates a node by drawing from the distributions of all
// influences. The result depends on the settings and the influences alone, not
// on the number of processors nor on what else the model holds. Errors:
// [Settings.Check], [ZeroDivisorError], [ErrNotFinite], and that of the context.
func (m *Model) Simulate(ctx context.Context, out Node, s Settings) (MonteCarlo, error) {
	return m.Ready(out).Simulate(ctx, s)
}

// run is one Monte Carlo run.
type run struct {
	Settings
	sampler   *sampler
	kept      *keeper
	least     float64 // degrees of freedom that an influence is drawn with
	atCeiling bool
}

// hasVariance reports whether every influence has one.
func (r *run) hasVariance() bool { return r.least > 2 }

// fixed draws the number of trials that is asked for, in rounds.
func (r *run) fixed(ctx context.Context) error {
	for done := 0; done < r.Trials; {
		values, err := r.round(ctx, min(roundTrials, r.Trials-done), done/random.BlockSize)
		if err != nil {
			return err
		}
		done += len(values)
	}
	return nil
}

// roundTrials is the number of trials between two looks at them.
const roundTrials = 1 << 18

// round draws so many trials, from a block on, and keeps them.
func (r *run) round(ctx context.Context, trials, firstBlock int) ([]float64, error) {
	values, err := r.kept.next(ctx, trials, r.sampler)
	if err != nil {
		return nil, err
	}
	if err := r.sampler.fill(ctx, values, firstBlock); err != nil {
		return nil, err
	}
	if !r.sampler.total.AreFinite() {
		return nil, ErrNotFinite
	}
	r.kept.keep(values)
	return values, nil
}

func (r *run) result(ctx context.Context) (MonteCarlo, error) {
	total := &r.sampler.total
	mc := MonteCarlo{Trials: int(total.N), Seed: r.Seed, CoverageProbability: r.Coverage, AtCeiling: r.atCeiling}
	mean, deviation := r.sampler.control.Mean(total), r.sampler.control.Deviation(total)
	mc.Mean, mc.MeanError = mean.Value, mean.Err
	mc.StandardDeviation, mc.DeviationError = deviation.Value, deviation.Err
	if sum := mc.Mean + mc.MeanError + mc.StandardDeviation + mc.DeviationError; !portable.IsFinite(sum) {
		return MonteCarlo{}, ErrNotFinite
	}
	if err := r.order(ctx, &mc); err != nil {
		return MonteCarlo{}, err
	}
	if !r.hasVariance() {
		nan := math.NaN()
		mc.StandardDeviation, mc.DeviationError, mc.MeanError = nan, nan, nan
		if r.least <= 1 {
			mc.Mean = nan
		}
		mc.Digits = rounding.Reached(inPlaceOfDeviation(mc.Lower, mc.Upper), max(mc.LowerError, mc.UpperError))
		return mc, nil
	}
	mc.Digits = rounding.Reached(mc.StandardDeviation, max(mc.MeanError, mc.DeviationError, mc.LowerError, mc.UpperError))
	return mc, nil
}

// order fills in what follows from the order of the trials.
func (r *run) order(ctx context.Context, mc *MonteCarlo) (err error) {
	if sharp := r.sampler.sharp.Tally(ctx); sharp != nil {
		return mc.takeEnds(ctx, sharp)
	}
	if mc.tally, mc.Resolution, err = r.kept.finish(ctx); err != nil {
		return err
	}
	mc.Sharper = 1
	low, high := statistics.SymmetricRanks(mc.Trials, r.Coverage)
	if mc.ShortestLower, mc.ShortestUpper, err = mc.tally.Shortest(ctx, high-low); err != nil {
		return err
	}
	mc.Lower, mc.Upper = mc.tally.At(low), mc.tally.At(high)
	mc.LowerError, mc.UpperError = statistics.QuantileError(mc.tally, low), statistics.QuantileError(mc.tally, high)
	return nil
}

// inPlaceOfDeviation is a quarter of an interval, about the standard deviation of what is
// normal and lies within it with a chance of 95 in 100.
func inPlaceOfDeviation(lower, upper float64) float64 { return (upper - lower) / 4 }

// Quantile is the value below which the fraction p of the trials lies.
func (mc *MonteCarlo) Quantile(p float64) float64 {
	n := mc.tally.Size()
	i := int(math.Floor(p * float64(n)))
	return mc.tally.At(min(max(i, 0), n-1))
}

// Thin keeps n values at equal steps of probability in place of all trials, or the curve that the
// few trials of a sharpened run gave, for
// drawing: afterwards [MonteCarlo.Quantile] and the chances rest on these. It
// does nothing when there are no more than n. The error is that of the context.
func (mc *MonteCarlo) Thin(ctx context.Context, n int) (err error) {
	if sharp, yes := mc.tally.(*sharp.Tally); yes {
		mc.tally = sharp.Thinned()
		return nil
	}
	if mc.ByLaw || mc.tally.Size() <= n {
		return nil
	}
	if all, yes := mc.tally.(*statistics.Ranking); yes {
		if err := all.Prepare(ctx, n); err != nil {
			return err
		}
	}
	kept := make([]float64, n)
	const atOnce = 64
	if err := parallel.Until(ctx, (n+atOnce-1)/atOnce, runtime.GOMAXPROCS(0), func(_, part int) {
		for i := part * atOnce; i < min((part+1)*atOnce, n); i++ {
			kept[i] = mc.Quantile((float64(i) + 0.5) / float64(n))
		}
	}); err != nil {
		return err
	}
	mc.tally, err = statistics.NewRanking(ctx, kept)
	return err
}

// takeEnds fills in what follows from the order of the trials.
func (mc *MonteCarlo) takeEnds(ctx context.Context, t *sharp.Tally) error {
	mc.tally = t
	mc.Lower, mc.LowerError, mc.Upper, mc.UpperError = t.Lower.Value, t.Lower.Err, t.Upper.Value, t.Upper.Err
	mc.Sharper = min(t.Lower.Sharper, t.Upper.Sharper)
	mc.ShortestLower, mc.ShortestUpper, _ = t.Shortest(ctx, int(math.Round((1-2*t.Tail)*float64(t.Size()))))
	if mc.Upper-mc.Lower < mc.ShortestUpper-mc.ShortestLower {
		mc.ShortestLower, mc.ShortestUpper = mc.Lower, mc.Upper
	}
	return t.Finish()
}
