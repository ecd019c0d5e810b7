package uncertainty

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
)

// Limits of the Monte Carlo procedure.
const (
	// DefaultTrials is the number of trials unless asked otherwise: the
	// value that JCGM 101, 7.2.3 expects to serve for 95 % intervals.
	DefaultTrials = 1_000_000
	// LeastTrials is the least number of trials (JCGM 101, 7.9.4).
	LeastTrials = 10_000
	// MostTrials is the greatest number whose values are all kept.
	MostTrials = 4_000_000
)

// Settings of a Monte Carlo run. The zero value asks for the default.
type Settings struct {
	// Trials; 0 means DefaultTrials.
	Trials int
	// Seed of the random streams.
	Seed uint64
	// Coverage probability of the intervals; 0 means 0.95.
	Coverage float64
}

// Check returns an error that says what would be right when the settings are
// out of range: JCGM 101, 7.9.4 asks for max(10⁴, 100/(1-p)) trials.
func (s Settings) Check() error {
	s = s.WithDefaults()
	if !(s.Coverage > 0 && s.Coverage < 1) {
		return fmt.Errorf("the coverage probability must lie between 0 and 1, found %v", s.Coverage)
	}
	// 100/(1-0.95) is 1999.9999999999982 and 100/(1-0.9999) is
	// 1000000.0000001: round before the ceiling.
	least := max(LeastTrials, int(math.Ceil(math.Round(1e5/(1-s.Coverage))/1e3)))
	if s.Trials < least {
		return fmt.Errorf("a coverage probability of %v needs at least %d trials, found %d", s.Coverage, least, s.Trials)
	}
	if s.Trials > MostTrials {
		return fmt.Errorf("at most %d trials can be run, found %d", MostTrials, s.Trials)
	}
	return nil
}

// WithDefaults replaces what is zero by the default.
func (s Settings) WithDefaults() Settings {
	s.Trials = cmp.Or(s.Trials, DefaultTrials)
	s.Coverage = cmp.Or(s.Coverage, 0.95)
	return s
}

// MonteCarlo is the result of propagating the distributions (JCGM 101).
type MonteCarlo struct {
	Trials              int
	Seed                uint64
	CoverageProbability float64
	// Mean of the values of the trials.
	Mean float64
	// StandardDeviation of the values; NaN when an influence has no variance.
	StandardDeviation float64
	// Lower and Upper are the ends of the probabilistically symmetric
	// coverage interval, ShortestLower and ShortestUpper of the shortest.
	Lower, Upper, ShortestLower, ShortestUpper float64

	sorted []float64
}

// Simulate evaluates a node by drawing from the distributions of all
// influences. The result depends on the settings and the influences alone, not
// on the number of processors nor on what else the model holds. Errors:
// [Settings.Check], [ZeroDivisorError], [ErrNotFinite], and that of the context.
func (m *Model) Simulate(ctx context.Context, out Node, s Settings) (MonteCarlo, error) {
	s = s.WithDefaults()
	if err := s.Check(); err != nil {
		return MonteCarlo{}, err
	}
	if err := m.checkDivisors(out); err != nil {
		return MonteCarlo{}, err
	}
	values := make([]float64, s.Trials)
	sums, err := m.sample(ctx, out, s.Seed, values)
	if err != nil {
		return MonteCarlo{}, err
	}
	mc := MonteCarlo{Trials: s.Trials, Seed: s.Seed, CoverageProbability: s.Coverage, sorted: values}
	mc.Mean, mc.StandardDeviation = sums.meanAndDeviation()
	if !finite(mc.Mean) || !finite(mc.StandardDeviation) {
		return MonteCarlo{}, ErrNotFinite
	}
	if !m.hasVariance(out) {
		mc.StandardDeviation = math.NaN()
	}
	slices.Sort(values)
	mc.Lower, mc.Upper = symmetricInterval(values, s.Coverage)
	mc.ShortestLower, mc.ShortestUpper = shortestInterval(values, s.Coverage)
	return mc, nil
}

// hasVariance reports whether every influence on the way to out has one.
func (m *Model) hasVariance(out Node) bool {
	for i, needed := range m.reachable(out) {
		n := &m.nodes[i]
		if needed && n.op == opInfluence && math.IsInf(m.influences[n.left].Distribution.Variance(), 1) {
			return false
		}
	}
	return true
}

// Quantile is the value below which the fraction p of the trials lies.
func (mc *MonteCarlo) Quantile(p float64) float64 {
	n := len(mc.sorted)
	i := int(math.Floor(p * float64(n)))
	return mc.sorted[min(max(i, 0), n-1)]
}

// Thin keeps n values at equal steps of probability in place of all trials, for
// drawing: afterwards [MonteCarlo.Quantile], [MonteCarlo.Histogram] and the
// chances rest on these. It does nothing when there are no more than n.
func (mc *MonteCarlo) Thin(n int) {
	if len(mc.sorted) <= n {
		return
	}
	kept := make([]float64, n)
	for i := range kept {
		kept[i] = mc.Quantile((float64(i) + 0.5) / float64(n))
	}
	mc.sorted = kept
}
