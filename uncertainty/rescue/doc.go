// Package rescue finds how a batch that is not as it should be can be corrected: see [Find]. It lists what all that can
// be read or set allows, works out by the one model what could be chosen, and lets package search find two dilutions of
// a part, and the policy choose.
//
//   - Every volume that can be read or set counts, and every reading of a balance that is round. What was read when the
//     batch was made is judged no more.
//   - To leave the batch as it is, is a way like the others, which takes no measurement. Where it is inside and nothing
//     that makes enough is, that it is too little is the finding.
//   - Of each kind of way it keeps the one that the policy chooses, and recommends the one that it chooses of these: see
//     package policy.
//   - A rounder correction never leads off the target where one of its kind does not, by the rule of [contest.Elsewhere],
//     by which plan rounds as well: one that aims elsewhere goes where another is as sure as is asked for, with no more
//     measurements, and leaves over hardly more. Nor does one count that takes more measurements than another of its
//     kind that aims at the target, and leaves no less over.
//   - Without a tolerance a way is good enough that holds the target at most twice as widely as the tightest.
//
// Not searched: a whole batch that is weighed, so that the solute or the stronger solution which is weighed into it goes by
// its mass, since the model begins with the volume of what is at hand and has no step that weighs it; more than one
// stronger solution; what is weighed of one.
package rescue
