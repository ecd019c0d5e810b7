package equipment

import (
	"fmt"
	"slices"
)

// With returns a copy of the kit in which a candidate stands on the bench, after
// the instruments that are there. The copy has the same instruments, in lists of
// its own. It panics when there is no candidate of that name.
func (k *Kit) With(candidate string) *Kit {
	if !slices.Contains(k.Candidates.Names(), candidate) {
		panic(fmt.Sprintf("equipment: no candidate is called %q", candidate))
	}
	with := k.Without()
	with.Candidates = k.Candidates.without(candidate)
	if b := k.Candidates.Balance(candidate); b != nil {
		with.Balances = append(with.Balances, b)
	} else {
		with.Measures = append(with.Measures, k.Candidates.Measure(candidate))
	}
	return with
}

// Without returns a copy of the kit without the instruments of these names on the
// bench. The copy has the same instruments, in lists of its own; a line on a jar
// stays where it is when the measure that it was set with is gone. It panics when
// an instrument of such a name does not stand on the bench.
func (k *Kit) Without(names ...string) *Kit {
	for _, name := range names {
		if !slices.Contains(k.Names(), name) {
			panic(fmt.Sprintf("equipment: no instrument on the bench is called %q", name))
		}
	}
	without := *k
	without.Candidates = k.Candidates.without()
	without.Instruments = k.Instruments.without(names...)
	return &without
}

// without copies the lists but for some names.
func (l *Instruments) without(names ...string) Instruments {
	return Instruments{
		Balances: slices.DeleteFunc(slices.Clone(l.Balances), func(b *Balance) bool { return slices.Contains(names, b.Name) }),
		Measures: slices.DeleteFunc(slices.Clone(l.Measures), func(m *Measure) bool { return slices.Contains(names, m.Name) }),
	}
}

// WithMissing is a copy of a kit with the instruments of another bench that it has none of
// the name of, after its own.
func (k *Kit) WithMissing(other *Kit) *Kit {
	shared := slices.DeleteFunc(other.Names(), func(name string) bool { return !slices.Contains(k.Names(), name) })
	with, more := *k, other.Without(shared...)
	with.Balances = slices.Concat(k.Balances, more.Balances)
	with.Measures = slices.Concat(k.Measures, more.Measures)
	return &with
}
