package equipment

import "slices"

// Written returns the bench as lines of a kit file: all that counts of its instruments.
// Titles, notes, prices, candidates and comments are left out. The kit must have been
// read from a file.
func (k *Kit) Written() string { return k.source.Written("title", "note", "price", candidateTables) }

// WithMissing returns a copy of the kit with the instruments of another bench that it has
// none of the name of, after its own.
func (k *Kit) WithMissing(other *Kit) *Kit {
	names := k.Names()
	more := other.Instruments.without(names...)
	with := *k
	with.Balances = slices.Concat(k.Balances, more.Balances)
	with.Measures = slices.Concat(k.Measures, more.Measures)
	return &with
}
