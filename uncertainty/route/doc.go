// Package route turns a prep file and a kit into measurement models, one for
// each route to the wanted solution, evaluates them and compares them.
//
// A route is an ordered list of steps: weigh, make up to a mark, take, add,
// start from a stock, weigh an aliquot, weigh up to. Concentrations are mass
// concentrations in g/mL inside, and the unit of the target outside. Units of strength stand in
// package strengths, words for dangers in package hazards.
package route
