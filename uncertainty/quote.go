package uncertainty

// Quoted is the coverage interval to be stated.
type Quoted struct {
	Lower, Upper float64
	// Simulated: the ends are those of the Monte Carlo interval, since the
	// analytic ones differ from them by more than 5 % of U.
	Simulated bool
}

// quoteWithin is the largest difference, as a fraction of U, for which the
// analytic interval is quoted.
const quoteWithin = 0.05

// Quote returns value ± U when both ends agree with the simulation within 5 %
// of U, and the probabilistically symmetric Monte Carlo interval otherwise. A U
// of 0 must agree altogether: it may only mean that the slope is 0.
func Quote(a Analytic, mc *MonteCarlo, c CrossCheck) Quoted {
	if c.OfExpanded <= quoteWithin && (a.ExpandedUncertainty > 0 || c.Agrees) {
		return Quoted{Lower: a.Lower(), Upper: a.Upper()}
	}
	return Quoted{Lower: mc.Lower, Upper: mc.Upper, Simulated: true}
}
