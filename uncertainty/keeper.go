package uncertainty

import (
	"slices"

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
func newKeeper(s Settings) *keeper {
	k := &keeper{Settings: s, most: KeptTrials}
	if s.Trials > KeptTrials && s.Digits == 0 {
		k.most = statistics.FirstSample
	}
	k.values = make([]float64, 0, min(s.Trials, k.most))
	return k
}

// next returns space for so many values. Where they would be too many to keep,
// what is kept is counted in bins first.
func (k *keeper) next(trials int, s *sampler) ([]float64, error) {
	if k.bins == nil && len(k.values)+trials > k.most {
		k.bins = statistics.NewBins(k.values[:min(len(k.values), statistics.FirstSample)], k.Coverage, s.control.Deviation(&s.total).Value)
		if !k.bins.IsFinite() {
			return nil, ErrNotFinite
		}
		k.bins.Count(k.values)
		k.values = make([]float64, 0, roundTrials)
	}
	n := len(k.values)
	k.values = slices.Grow(k.values, trials)
	return k.values[n : n+trials], nil
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
func (k *keeper) finish() (t statistics.Tally, resolution float64) {
	if k.bins != nil {
		k.bins.Finish()
		return k.bins, k.bins.Width
	}
	return statistics.NewRanking(k.values), 0
}
