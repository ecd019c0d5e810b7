// Package verb words the steps of routes: one row says all that is said of a verb, whether
// on a screen, on a bench sheet, in a method, in a record or in the name of a route.
//
// It stands right above the package route, since plan names its routes and record reads
// additions by the same words.
package verb
