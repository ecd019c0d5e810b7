// Package plan recommends one of the routes that package search finds on a bench. It simulates
// them, tries rounder readings around them, gives them names, and says what would help where none
// is good enough.
//
// Of the routes that are found, and of rounder ones around those that leave least over (tune.go),
// the policy of package policy chooses one for each number of measurements, and one of these
// (pool.go). How many measurements are worth it goes by the least that is left over with each number: what
// rounding leaves over is no reason for more of them. Routes are simulated once they would be chosen, or decide about
// others (simulate.go): until then their chance counts as that of first order and a little more. All that were found
// are where the whole list is asked for, afterwards, so that the choice is the same. What is shown is so chosen by the
// figures that are shown, and a comparison of what is shown chooses the same.
package plan
