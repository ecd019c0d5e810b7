package route

// Limits of a search for routes. Zero means no limit, but for Steps.
type Limits struct {
	// Steps is the greatest number of dilutions.
	Steps int
	// LeftOver is the most that may be left over, Volume the most that may be made
	// in all, in mL.
	LeftOver, Volume float64
	// Solute is the most that may be used, in g.
	Solute float64
	// Strongest is the concentration of the strongest solution that may be made, in
	// g/mL.
	Strongest float64
	// Without names the instruments that are not to be used.
	Without []string
	// Prefer is the policy of the recommendation.
	Prefer string
}

// DefaultSteps is the greatest number of dilutions of a search unless stated otherwise.
const DefaultSteps = 3

// The preferences by which a search recommends one route. The first goes unless another is stated: it
// is the policy by which a comparison judges. Each other chooses, among the routes whose chance of
// being inside reaches what is asked for, what it makes least; where none does, and among
// those that are equal in that, the policy decides.
const (
	Usual         = "usual"
	LeastLeftOver = "least-left-over" // nearest the target, where there is no tolerance
	Tightest      = "tightest"        // least relative expanded uncertainty
	Fewest        = "fewest"          // operations
	LeastSolute   = "least-solute"
	Cheapest      = "cheapest" // by the prices that the prep states
)
