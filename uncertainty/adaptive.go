package uncertainty

import (
	"context"
	"math"
	"slices"

	"minim/uncertainty/random"
	"minim/uncertainty/rounding"
	"minim/uncertainty/sharp"
	"minim/uncertainty/statistics"
)

// adaptive runs sequences of M trials until twice the standard errors of mean,
// standard deviation and both ends of the symmetric interval, found from their
// scatter between the sequences, are within the numerical tolerance δ, or no
// more trials may be run (JCGM 101, 7.9.4). Where there is no variance, the ends alone
// count.
func (r *run) adaptive(ctx context.Context) error {
	trials := r.leastTrials()
	var s scatter
	for h := 0; (h+1)*trials <= r.Trials; h++ {
		values, err := r.round(ctx, trials, h*random.Blocks(trials))
		if err != nil {
			return err
		}
		if sharp := r.sampler.sharp.Tally(ctx); sharp != nil {
			if r.sure(sharp) {
				return nil
			}
			continue
		}
		f, err := r.figuresOf(ctx, values)
		if err != nil {
			return err
		}
		s.add(f)
		u := r.sampler.control.Deviation(&r.sampler.total).Value
		if !r.hasVariance() {
			u = inPlaceOfDeviation(s.mean[2], s.mean[3])
		}
		if h > 0 && 2*s.standardError() <= r.tolerance(u) {
			return nil
		}
	}
	r.atCeiling = true
	return nil
}

// sure is the same for a sharpened run, which knows the standard errors of all trials.
func (r *run) sure(t *sharp.Tally) bool {
	u, off := inPlaceOfDeviation(t.Lower.Value, t.Upper.Value), max(t.Lower.Err, t.Upper.Err)
	if r.hasVariance() {
		deviation := r.sampler.control.Deviation(&r.sampler.total)
		u, off = deviation.Value, max(off, deviation.Err, r.sampler.control.Mean(&r.sampler.total).Err)
	}
	return 2*off <= r.tolerance(u)
}

func (r *run) tolerance(u float64) float64 {
	delta := rounding.Tolerance(u, r.Digits)
	if r.Validating {
		delta /= 5
	}
	return delta
}

// figures are mean, standard deviation and both ends of the symmetric interval.
type figures [4]float64

// figuresOf a sequence; mean and standard deviation are 0 where there is none.
func (r *run) figuresOf(ctx context.Context, values []float64) (figures, error) {
	order, err := statistics.NewRanking(ctx, values)
	if err != nil {
		return figures{}, err
	}
	low, high := statistics.SymmetricInterval(order, r.Coverage)
	if !r.hasVariance() {
		return figures{2: low, 3: high}, nil
	}
	mean, variance := statistics.MeanAndVariance(values)
	return figures{mean, math.Sqrt(variance), low, high}, nil
}

// scatter keeps the running mean and sum of squared deviations of each figure
// over the sequences (Welford 1962).
type scatter struct {
	n             float64
	mean, squares figures
}

func (s *scatter) add(f figures) {
	s.n++
	for i, x := range f {
		d := x - s.mean[i]
		s.mean[i] += d / s.n
		s.squares[i] += float64(d * (x - s.mean[i]))
	}
}

// standardError is the largest of those of the averages, √(Σ d²/(h (h-1))).
func (s *scatter) standardError() float64 {
	return math.Sqrt(slices.Max(s.squares[:]) / (s.n * (s.n - 1)))
}
