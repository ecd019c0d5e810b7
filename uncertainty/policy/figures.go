package policy

// Rule is what decides between a route and the one that is chosen.
type Rule string

// The rules, in the order in which they decide.
const (
	// None: it is the one that is chosen.
	None Rule = ""
	// Impossible: the bench cannot do it.
	Impossible Rule = "impossible"
	// Use: it makes too little, or says too little of the amount.
	Use Rule = "use"
	// Doubt: its strength may be quite another than it is said to be.
	Doubt Rule = "doubt"
	// Holding: without a tolerance, another holds the target within clearly less.
	Holding Rule = "holding"
	// HalfRisk: another has at most half of the risk that is asked for.
	HalfRisk Rule = "half-risk"
	// Meeting: another has the chance that is asked for.
	Meeting Rule = "meeting"
	// Chance: none has it, and another is surer.
	Chance Rule = "chance"
	// Misreading: another stays inside with every reading a step off.
	Misreading Rule = "misreading"
	// Operations: it takes measurements that save too little, or saves some that cost too much.
	Operations Rule = "operations"
	// LeftOver: it leaves more over, by more than a quarter of the volume wanted.
	LeftOver Rule = "left-over"
	// LowOnScale: it is read below a fifth of a scale.
	LowOnScale Rule = "low-on-scale"
	// BothWays: the error of a piece makes it both stronger and weaker.
	BothWays Rule = "both-ways"
	// TooLarge: a smaller vessel of the kit would do.
	TooLarge Rule = "too-large"
	// Roundness: another has rounder readings.
	Roundness Rule = "roundness"
	// Solute: another takes less solute.
	Solute Rule = "solute"
	// Surer: another is surer, or tighter without a tolerance.
	Surer Rule = "surer"
	// Name: nothing else decides.
	Name Rule = "name"
)

// Figures are what a route is judged by.
type Figures struct {
	// Possible, and Usable: it makes enough, and its strength means something.
	Possible, Usable bool
	// Doubted: something says that its strength may be quite another.
	Doubted bool
	// Chance of being inside the first tolerance; Within, without one, is what it holds the
	// target within, relative to it.
	Chance, Within float64
	// OutsideIfMisread: it is not inside any more when every reading is a step off.
	OutsideIfMisread bool
	// Operations are measurements, LeftOver is in mL, Solute in any one unit.
	Operations       int
	LeftOver, Solute float64
	// LowOnScale, BothWays and TooLarge: see the rules.
	LowOnScale, BothWays, TooLarge bool
	// Roundness is the sum of that of its readings: see [RoundnessOf].
	Roundness float64
	Name      string
}

// Question is what is asked of the routes.
type Question struct {
	// Tolerant: there is a tolerance, and Asked is the chance of being inside that is asked for.
	Tolerant bool
	Asked    float64
	// Volume wanted, in mL. Dear: the solute has a hazard or a price.
	Volume float64
	Dear   bool
}

// Halved is the chance with half of the risk that is asked for.
func (q Question) Halved() float64 { return 1 - float64((1-q.Asked)/2) }

// The shares of the volume wanted that two measurements must save, and that what is left over
// may differ by.
const (
	worthTwo     = 0.5
	worthTwoDear = 0.25
	nearLeast    = 0.25
)

// WorthTwo is what two more measurements must save, in mL.
func (q Question) WorthTwo() float64 {
	if q.Dear {
		return float64(worthTwoDear * q.Volume)
	}
	return float64(worthTwo * q.Volume)
}

// Cost of a route is what it leaves over and what its measurements must save, in mL.
func (q Question) Cost(operations int, leftOver float64) float64 {
	return leftOver + float64(float64(operations)/2*q.WorthTwo())
}

// So few measurements are enough where they have half the risk, and so many are the most that any
// saving is worth then.
const (
	Enough     = 4
	MostBeside = 6
)

// Near is by how much more than the least may be left over, in mL.
func (q Question) Near() float64 { return float64(nearLeast * q.Volume) }
