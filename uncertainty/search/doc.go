// Package search looks among the routes that a kit allows for those that leave least over, at some
// levels of the chance of being inside the tolerance. What it finds is assessed to first order, and
// neither simulated nor named: package plan chooses of it.
//
// # What is searched
//
// A route starts with solute that is weighed, or of a liquid measured, a packet, or a stock. Solute
// is made up to a mark, and a solid or a packet dissolved in a measured volume of solvent as well:
// dissolved.go. Solute, a packet or a part of a stock is weighed up to a total, which may be diluted once or twice by
// volume: weighedup.go; or, where that is what is wanted, a part of a solution that was weighed up itself, again and
// again, or made by volume once: weighlast.go.
// Each dilution takes an aliquot and makes it up to a mark, or adds a measured volume of solvent.
// Instruments are used at the marks that
// [equipment.Measure.Marks] lists, in every order that the volumes allow; a liquid solute is
// counted in drops as well. Of several pieces alike each use is given to the one with which
// the variance is least: pieces.go. The mass weighed is the reading that brings the strength
// intended nearest to the target, the last of a route that weighs several times; those before it are round. What remains
// is a bias and counts.
//
// A liquid is measured out where the strength counts its volume, or a route of the prep does
// so, which says that it is one; of a stock in another solvent a part, which is made up to a mark.
// Such a route is put together as if what it is in were the
// solvent alone, without the contraction and the meniscus of the mixture; those on the front
// are worked out as they are. So it is with what a strong solution takes up less when measured
// solvent is added to it; where one of those does, the routes in which solvent is only added up to
// marks are searched beside them: find.go.
//
// Not tried are droppers for solutions, liquids and stocks in another solvent that measured solvent
// is added to, and solids in weighed solvent. Of routes that weigh some solutions and measure others
// those are tried of which the first solution is weighed up and one or two more are measured, or of which the
// first is measured and the second weighed up; not those that weigh more than one solution and measure then, that
// measure more than one and weigh then, or measure again after that, nor those that measure out a liquid or a stock in
// another solvent and weigh up what they make of it. Routes that weigh a stock in
// another solvent or add measured solvent to it, and those by volume to a strength by mass, are left out and said to be.
//
// Whether a route stays inside when every reading is a step off is asked of what was found (package policy): a route
// that does, and leaves over more than one that does not, is not looked for by itself.
//
// Of a solution that is taken from something must stay: [equipment.KeptBack]; and no solution is made that hardly
// dissolves, unless that is wanted: [contest.Strongest].
//
// What counts are some levels of chance: the one that is asked for, half the risk of that,
// and 0.999, each with one a little below and above, since the chances that are shown are
// simulated and differ by that much: levelled in worth.go. For each number of measurements and
// each level the least left over is found, and of routes that agree in these the surest. Where
// no route reaches what is asked for, lower levels and the surest route are looked for. Without a tolerance what counts is
// by how much the strength may be off the target, its expected difference and its expanded
// uncertainty; each such figure is then a level of its own. Where there are not two limits,
// the expected strength must be within a tenth of the target, or as near as the one limit.
//
// In the routes that are searched no piece pulls both ways: an instrument that is taken with
// is not filled as well, nor solvent added with it, so that no route counts on an error that
// cancels itself. [Options.All] searches as well those in which one piece does, a piece at a
// time; routes in which several do are never searched. Routes by weighing are not asked.
//
// # Why nothing is lost
//
// A route is beaten by another that reaches at least its level, leaves over no more and takes
// no more measurements, and is better in one of them, or equal in these and surer. The
// search builds routes from their end. Left over and measurements only grow with
// each step that is put in front, and so a beginning is given up as soon as what
// it has is beaten by a finished route even if its chance were the best that can
// still be had: what leaves over more than a finished route must reach the next level.
//
// That best chance comes from a lower bound of the relative variance. The
// strength is a product of factors, so that its first-order relative variance is
//
//	u² = Σ own² + Σ_k (Σ_i r_ik)²
//
// where own are the contributions that belong to one step alone, and r_ik is what
// factor i contributes to the influence k that steps share: the bias of a piece,
// the temperature, the meniscus, the assay. Own parts are squares and only add.
// The sum for an influence k only grows in size when all factors of the route
// pull the same way: those of a piece that is only taken with, which raises the strength
// where the piece is too large, or only filled, which lowers it: pulls.go. For these the
// square of the sum so far is a lower bound, and of n pieces alike, which share the uses, an
// n-th of it, beside the squares of what is still to come: Σ_c (s_c + t_c)² over the pieces c,
// with s_c before and t_c to come of one sign, is no less than (Σ s_c)²/n + Σ t², t being the
// single uses. An influence that may pull either way (that of
// a piece that is free to, the temperature, the activity of a stock) can cancel and counts
// as nothing until the route is finished.
//
// The ways to make a solution of one volume from one aliquot are a group, which brings no less
// than the least of its ways. Two groups bring more together where one piece makes both, or would
// pull both ways: by the smallest of that over their ways, of which each counts a part, so that the
// sum over all pairs is a lower bound as well (gaps.go). Where a piece is to pull both ways, a route brings
// no less than the least of ways in which it does (cover.go).
//
// What is still to come brings variance as well, of which remainder.go holds a lower
// bound, from the concentration that the steps in front must reach and the volume
// that they may fill. The relative variance that a route may have to reach a level follows
// from the greatest chance that any strength with such an uncertainty can have: worth.go. A
// route from a stock, a packet or a measured liquid cannot choose its mass; it is given up where
// its strength is out of reach (reach.go), and when its volumes are chosen, those sources alone
// are looked at that bring it near enough.
//
// A solid in measured solvent is bounded by the share of the solution that is solvent, and by what
// is uncertain of its own volume, which grows with the concentration: the table of what is to come
// takes the least of the concentrations of a cell. What is weighed up is bounded by both of its weighings
// together: the more is weighed, the less is wrong with its share of the total. What else its influences may do together
// with those of volumes counts as nothing before a route is finished. In each class, a kind of source or of pieces by
// itself, the front is held against all routes: brute_classes_test.go.
//
// What is weighed before the last weighing is built from the beginning, of portions: a part and the total that it
// is made up to, as a factor of the mass fraction w. The concentration changes ρ/ρ0 times as much as w, which is no less than the
// lightest solution over the solvent. Before the end of it what belongs to one weighing alone counts, and what a solution that was
// made by volume brings; of the last portion that of the next round mass, since what is wrong with a weighing
// grows no faster than its load. The walks share out what such routes begin with.
//
// The search first chooses volumes, of which left over and ratio follow, and then
// the instruments for them, which differ in their variance only. Each route belongs to one
// pass: that of its number of dilutions, its source, and the piece that pulls both ways, if
// one does.
//
// Where a search is cut short, the same bounds say what was not tried could leave over at the least, of
// passes that were not begun as well: untried.go. A pass of which each route is beaten whatever it leaves over is done.
//
// No more is given up than that. The figures of a finished route are put together
// from factors that the model of the route itself gives, and those on the front
// are worked out again by that model as a whole.
package search
