package uncertainty

import (
	"cmp"
	"fmt"
	"math"
)

// Limits of the Monte Carlo procedure.
const (
	// DefaultTrials is the number of trials unless asked otherwise: the
	// value that JCGM 101, 7.2.3 expects to serve for 95 % intervals.
	DefaultTrials = 1_000_000
	// fewestTrials is the least number of trials (JCGM 101, 7.9.4).
	fewestTrials = 10_000
	// KeptTrials is the greatest number whose values are all kept. It is also
	// the ceiling of the adaptive procedure unless asked otherwise.
	KeptTrials = 4_000_000
	// mostTrials is the greatest number that can be run.
	mostTrials = 1_000_000_000
)

// Settings of a Monte Carlo run. The zero value asks for the default: as many trials as it takes.
type Settings struct {
	// Trials; 0 means as many as it takes, DefaultTrials at the most, or KeptTrials where digits
	// are asked for.
	Trials int
	// Enough: trials are run until the digits hold that are printed, and the chances of lying
	// within the limits in Printed; Trials are the most then. Trials 0 without Digits asks for it.
	Enough  bool
	Printed []Limits
	// Seed of the random streams.
	Seed uint64
	// Coverage probability of the intervals; 0 means 0.95.
	Coverage float64
	// Digits asks for the adaptive procedure of JCGM 101, 7.9: trials are
	// added until this many significant digits of u can be relied on, at most
	// Trials. 0 means a fixed number of trials.
	Digits int
	// Validating makes the adaptive procedure five times as strict, as 8.2
	// asks of a run that is to validate an analytic result.
	Validating bool
	// Progress, when not nil, is called now and then with the number of
	// trials done since the last call, from the goroutine of the caller.
	Progress func(trials int)
	// Plain leaves the ends of the intervals and the chances to the order of the trials alone.
	Plain bool
}

// Check returns an error that says what would be right when the settings are
// out of range: JCGM 101, 7.9.4 asks for max(10⁴, 100/(1-p)) trials.
func (s Settings) Check() error {
	s = s.WithDefaults()
	if !(s.Coverage > 0 && s.Coverage < 1) {
		return fmt.Errorf("the coverage probability must lie between 0 and 1, found %v", s.Coverage)
	}
	if least := s.leastTrials(); s.Trials < least {
		return fmt.Errorf("a coverage probability of %v needs at least %d trials, found %d", s.Coverage, least, s.Trials)
	}
	if s.Trials > mostTrials {
		return fmt.Errorf("at most %d trials can be run, found %d", mostTrials, s.Trials)
	}
	if s.Digits < 0 || s.Digits > 2 {
		return fmt.Errorf("one or two significant digits can be asked for, found %d", s.Digits)
	}
	return nil
}

// leastTrials is M = max(J, 10⁴) of JCGM 101, 7.9.4, J = 100/(1-p) rounded up.
func (s Settings) leastTrials() int {
	// 100/(1-0.95) is 1999.9999999999982 and 100/(1-0.9999) is
	// 1000000.0000001: round before the ceiling.
	return max(fewestTrials, int(math.Ceil(math.Round(1e5/(1-s.Coverage))/1e3)))
}

// WithDefaults replaces what is zero by the default.
func (s Settings) WithDefaults() Settings {
	if s.Digits == 0 {
		s.Enough = s.Enough || s.Trials == 0
		s.Trials = cmp.Or(s.Trials, DefaultTrials)
	}
	s.Trials = cmp.Or(s.Trials, KeptTrials)
	s.Coverage = cmp.Or(s.Coverage, 0.95)
	return s
}
