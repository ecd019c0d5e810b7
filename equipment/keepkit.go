package equipment

import "slices"

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
