// Package plan searches the routes that a kit allows for those that no other
// route beats, and asks what a better instrument would change.
//
// # What is searched
//
// A route starts with solute that is weighed, a packet, or a stock. Solute is
// made up to a mark; each dilution takes an aliquot and makes it up to a mark, or
// adds a measured volume of solvent. Instruments are used at the marks that
// [equipment.Measure.Marks] lists, one piece of each, in every order that the
// volumes allow. The mass weighed is the reading that brings the strength
// intended nearest to the target; what remains is a bias and counts. Routes by
// weighing alone are searched beside these: see byweighing.go.
//
// Not tried are droppers, further pieces of an instrument, a liquid solute that is
// measured by volume, solids dissolved in measured solvent rather than up to a mark,
// and routes that weigh some solutions and measure others. A stock in another
// solvent, and routes by volume to a strength by mass, are left out and said to be.
//
// Chances above 0.999 count as equal, and routes with one below 0.001 are left out.
// Without a tolerance what counts is by how much the strength may be off the target,
// its expected difference and its expanded uncertainty. Where there are not two limits,
// the expected strength must be within a tenth of the target, or as near as the one
// limit.
//
// # What is chosen
//
// Of the routes that are found, and of rounder ones around those that leave least over (tune.go),
// the policy of package policy chooses one for each number of measurements, and one of these
// (pool.go). Routes of the front are simulated, rounder ones once they would be chosen: until then
// their chance counts as that of first order and a little more. What is shown is so chosen by the
// figures that are shown, and a comparison of what is shown chooses the same.
//
// # Why nothing is lost
//
// A route is beaten by another that is at least as good in chance of being
// inside, left over and number of measurements, and better in one of them. The
// search builds routes from their end. Left over and measurements only grow with
// each step that is put in front, and so a beginning is given up as soon as what
// it has is beaten by a finished route even if its chance were the best that can
// still be had.
//
// That best chance comes from a lower bound of the relative variance. The
// strength is a product of factors, so that its first-order relative variance is
//
//	u² = Σ own² + Σ_k (Σ_i r_ik)²
//
// where own are the contributions that belong to one step alone, and r_ik is what
// factor i contributes to the influence k that steps share: the bias of a piece,
// the temperature, the meniscus, the assay. Own parts are squares and only add.
// The sum for an influence k only grows in size when all factors still to come
// pull the same way as those before: a flask is only ever made up in, which
// lowers the strength when the flask is too large, and a pipette only taken with,
// as long as no solvent is measured with it. For these the square of the sum so
// far is a lower bound. An influence that may pull either way (a cylinder that is
// made up in and taken with, a pipette that measures both aliquot and solvent,
// the temperature) can cancel and counts as nothing until all that pull at it are
// chosen; one that the source shares with others, such as the activity of a stock,
// until the route is finished.
//
// What is still to come brings variance as well, of which remainder.go holds a lower
// bound, from the concentration that the steps in front must reach and the volume
// that they may fill. The relative variance that a route may have to be worth as much
// as those that are found follows from the greatest chance that any strength with such
// an uncertainty can have: worth.go. A route from a stock or a packet cannot choose
// its mass; it is given up where its strength is out of reach: reach.go.
//
// The search first chooses volumes, of which left over and ratio follow, and then
// the instruments for them, which differ in their variance only.
//
// No more is given up than that. The figures of a finished route are put together
// from factors that the model of the route itself gives, and those on the front
// are worked out again by that model as a whole.
package plan
