// Package policy chooses one of several routes, by rules of which each narrows what the one
// before has left, and never to nothing:
//
//  1. It makes enough, its strength means something, and nothing says that it may be quite another.
//  2. Half the risk that is asked for, else the chance that is asked for, else the surest.
//     Without a tolerance: what holds the target about as tightly as the tightest.
//  3. It stays inside when every reading is one step of the display or 0.2 of a division off,
//     all the same way.
//  4. The fewest measurements. Two more are worth it where they save at least half of the
//     volume wanted, or a quarter of a solute with a hazard or a price. Never more than six where
//     four have half the risk.
//  5. Within a quarter of the volume wanted of the least that is left over.
//  6. No reading below a fifth of its scale, no piece that pulls both ways, no vessel larger
//     than needed.
//  7. The roundest readings; ties by less solute, then by what is surer, then by name.
//
// It knows no route: [Figures] are all that decides. The shares of the volume and the risk, and
// which reading counts as round, are judgement.
package policy
