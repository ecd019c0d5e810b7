package rescue

// way is the code of a kind of correction, which a note has words for.
type way string

// The kinds of corrections.
const (
	// leave: nothing is done.
	leave way = "leave"
	// fillUp: all of the batch is made up to a mark.
	fillUp way = "fill_up"
	// addSolvent: measured solvent is added to all of it.
	addSolvent way = "add_solvent"
	// dilutePart: a part is diluted by volume, the rest set aside.
	dilutePart way = "dilute_part"
	// weighPart: a part is diluted by weighing, the rest set aside.
	weighPart way = "weigh_part"
	// diluteTwice: a part is diluted, and a part of that, by volume.
	diluteTwice way = "dilute_part_twice"
	// strengthenAll: a measured volume of a stronger solution is added to all of it.
	strengthenAll way = "strengthen"
	// addMore: weighed solute is dissolved in all of it.
	addMore way = "add_solute"
	// strengthenAndAdd: more than is needed of a stronger solution is added to all of it,
	// and then measured solvent.
	strengthenAndAdd way = "strengthen_and_add_solvent"
	// diluteFirst: a stronger solution is diluted, and of that a measured volume added to all of it.
	diluteFirst way = "dilute_first"
)

// ways are all kinds but to leave it, in the order in which they are tried and shown, after that.
var ways = []way{fillUp, addSolvent, dilutePart, weighPart, diluteTwice, strengthenAll, addMore, strengthenAndAdd, diluteFirst}
