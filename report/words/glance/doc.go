// Package glance has the first screen of a result: what is to be remembered of it, in 24 lines
// of 80 characters. What is left out is counted, and stands on the whole screen (--all) and on
// papers. Sentences come from package words; what is said here alone is short: the chance beside
// what was asked for, a reason of a few words for each route that is not used, and how much is
// not shown.
//
// Where there is too much, rows of the table give way first, then steps. What may not meet,
// hazards, warnings and the verdict never do.
package glance
