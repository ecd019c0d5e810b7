package uncertainty

import (
	"context"

	"minim/uncertainty/portable"
	"minim/uncertainty/rounding"
	"minim/uncertainty/sharp"
)

// enough runs more and more trials until what is printed holds, each time all of them from the
// beginning, so that the result is that of as many trials asked for: the least number, then as
// many as are sharpened, then the most. JCGM 101, 7.9 has trials added in sequences until the
// figures are stable to the digits asked for; here their standard errors tell.
func (r *Ready) enough(ctx context.Context, s Settings) (MonteCarlo, error) {
	var best MonteCarlo
	told := 0
	for _, trials := range []int{s.leastTrials(), sharp.MostTrials, s.Trials} {
		if trials = min(trials, s.Trials); trials <= best.Trials {
			continue
		}
		if float64(best.Trials)*best.Sharper > float64(trials) && trials > sharp.MostTrials {
			break // as sharp as that are fewer
		}
		some := s
		some.Trials, some.Enough, some.Progress = trials, false, beyond(&told, s.Progress)
		mc, err := r.Simulate(ctx, some)
		if err != nil || mc.holds(s.Printed) {
			return mc, err
		}
		best = mc
	}
	best.AtCeiling = true
	return best, nil
}

// beyond tells of the trials that go beyond those that were told before.
func beyond(told *int, progress func(trials int)) func(trials int) {
	if progress == nil {
		return nil
	}
	done := 0
	return func(trials int) {
		if done += trials; done > *told {
			progress(done - *told)
			*told = done
		}
	}
}

// Figures are printed with so many digits of U, and a chance in a hundred with one decimal. The
// standard error of what is printed is to be a part of its last digit, that of a chance half of
// it.
const (
	printedPart   = 0.2
	printedChance = 0.0005
)

// holds reports whether the digits that are printed hold, and the chances of lying within limits.
func (mc *MonteCarlo) holds(chances []Limits) bool {
	half := float64((mc.Upper - mc.Lower) / 2)
	off := max(mc.LowerError, mc.UpperError)
	if portable.IsFinite(mc.MeanError) {
		off = max(off, mc.MeanError)
	}
	if half > 0 && off > float64(printedPart*rounding.LastDigit(half)) {
		return false
	}
	if u := mc.StandardDeviation; u > 0 && mc.DeviationError > float64(printedPart*rounding.LastDigit(u)) {
		return false
	}
	for _, l := range chances {
		if mc.ChanceError(l) > printedChance {
			return false
		}
	}
	return true
}
