package uncertainty

import (
	"context"
	"slices"

	"minim/uncertainty/parallel"
	"minim/uncertainty/sharp"
	"minim/uncertainty/statistics"
)

// keeper keeps the values of the trials for the questions about their order: all
// of them up to a number, and counts in bins beyond.
type keeper struct {
	Settings
	values []float64
	most   int // values are kept up to this number
	bins   *statistics.Bins
}

// newKeeper returns a keeper that keeps all values of up to KeptTrials. A run
// that is known to be longer keeps only enough to lay the bins.
func newKeeper(s Settings, in *sharp.Space) *keeper {
	k := &keeper{Settings: s, most: KeptTrials}
	if s.Trials > KeptTrials && s.Digits == 0 {
		k.most = statistics.FirstSample
	}
	k.values = in.Numbers(min(s.Trials, k.most))[:0]
	return k
}

// next returns space for so many values. Where they would be too many to keep,
// what is kept is counted in bins first.
func (k *keeper) next(ctx context.Context, trials int, s *sampler) ([]float64, error) {
	if k.bins == nil && len(k.values)+trials > k.most {
		if err := k.bin(ctx, s.control.Deviation(&s.total).Value); err != nil {
			return nil, err
		}
	}
	n := len(k.values)
	k.values = slices.Grow(k.values, trials)
	return k.values[n : n+trials], nil
}

// bin lays bins for values with a standard deviation, and counts what is kept.
func (k *keeper) bin(ctx context.Context, u float64) (err error) {
	k.bins, err = statistics.NewBins(ctx, k.values[:min(len(k.values), statistics.FirstSample)], k.Coverage, u)
	if err != nil {
		return err
	}
	if !k.bins.IsFinite() {
		return ErrNotFinite
	}
	parts := slices.Collect(slices.Chunk(k.values, roundTrials))
	k.values = make([]float64, 0, roundTrials)
	return parallel.Until(ctx, len(parts), 1, func(_, i int) { k.bins.Count(parts[i]) })
}

// keep takes over the values in the space that next returned.
func (k *keeper) keep(values []float64) {
	if k.bins != nil {
		k.bins.Count(values)
		return
	}
	k.values = k.values[:len(k.values)+len(values)]
}

// finish returns the tally of all values, and the width of its bins.
func (k *keeper) finish(ctx context.Context) (t statistics.Tally, resolution float64, err error) {
	if k.bins != nil {
		k.bins.Finish()
		return k.bins, k.bins.Width, nil
	}
	r, err := statistics.NewRanking(ctx, k.values)
	return r, 0, err
}
