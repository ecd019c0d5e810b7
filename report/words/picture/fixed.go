package picture

// Words that are the same in every figure that has them.
var (
	// Head is what stands over the columns of rows.
	Head = struct{ Routes, Batch, Ways, Influence string }{
		"route, and the strength", "batch, and the strength", "way, and the strength", "influence",
	}
	// Axis is what is drawn along an axis; a unit follows the strength.
	Axis = struct{ Strength, Difference, Share, LeftOver, Readability string }{
		"strength / ", "difference from the target / %", "share of the variance / %", "left over / mL", "readability of the balance / g",
	}
	// Dots explains the dots of a spread.
	Dots = struct{ Each, Inside, Outside, Nothing, Target string }{
		"Each dot is one chance in a hundred.", "inside the tolerance", "outside", "nothing in it at all", "target",
	}
	// Beyond follows the number of dots outside the tolerance, or beyond the edges where there is none.
	Beyond = struct{ TooWeak, TooStrong, Weaker, Stronger string }{"too weak", "too strong", "weaker still", "stronger still"}
	// Bars explains the bars of a budget.
	Bars = struct{ Each, One, Assumed, Rest, Shared, None string }{
		"What spoils the strength, in shares of its variance.", "one influence", "an assumed one", "the rest, added up",
		"shared: the same error in several uses", "nothing that is counted",
	}
	// Marks explains the marks of routes that are searched.
	Marks = struct{ Each, Own, Stairs string }{
		"Each mark is a route that no other beats.", "your own routes", "least give or take for that much left over or less",
	}
	// Balances explains those that are owned or could be had.
	Balances = struct{ Each, Owned, ToBuy, Good, Tolerance string }{
		"What the balance does to the give or take.", "a balance you have", "one you could buy", "bold: good enough", "tolerance",
	}
)

const (
	predicted = "All this is predicted from what is known of the instruments, before anything is made."
	meaning   = "Give or take: expanded uncertainty, coverage probability "
)

// dilutions by their number; the last stands for all that are more.
var dilutions = []string{"direct", "one dilution", "two dilutions", "three dilutions", "four dilutions", "five dilutions or more"}

// Dilutions names a route by how many dilutions it has.
func Dilutions(n int) string { return dilutions[min(n, len(dilutions)-1)] }
