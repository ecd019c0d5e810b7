package main

import (
	"fmt"
	"math"

	"github.com/spf13/pflag"

	"minim/uncertainty"
)

// simulation is how results are simulated and what interval is stated of them.
type simulation struct {
	trials   int
	seed     uint64
	coverage float64
	digits   int // to be reached; 0 for none
	flags    *pflag.FlagSet
}

func (s *simulation) declare(flags *pflag.FlagSet) {
	s.flags = flags
	flags.IntVar(&s.trials, "trials", 0, "")
	flags.Uint64Var(&s.seed, "seed", 1, "")
	flags.Float64Var(&s.coverage, "coverage", 0.95, "")
}

// settings of the simulation. It serves to check the analytic result, so that digits are
// counted as strictly as JCGM 101, 8.2 asks.
func (s *simulation) settings() uncertainty.Settings {
	return uncertainty.Settings{Trials: s.trials, Digits: s.digits, Seed: s.seed, Coverage: s.coverage, Validating: true}
}

// check words what is wrong with the options.
func (s *simulation) check() error {
	switch p := s.coverage; {
	case s.trials == 0 && s.flags.Changed("trials"):
		return &usageError{"--trials 0 simulates nothing", "leave it out for as many batches as it takes"}
	case math.IsNaN(p) || p < 0.5 || p > 0.9999:
		return &usageError{fmt.Sprintf("--coverage must lie between 0.5 and 0.9999, found %v", p), "write --coverage 0.95 for 95 %"}
	}
	settings := s.settings()
	if err := settings.Check(); err != nil {
		return &usageError{"--trials: " + err.Error(), ""}
	}
	return nil
}
