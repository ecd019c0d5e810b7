package equipment

import "slices"

// Kit is the instruments on one bench.
type Kit struct {
	// File is the name of the file that it was read from, and Digest the SHA-256 of its
	// text as it was read.
	File, Digest string
	// Source is that text.
	Source []byte
	// Title and Note are free text.
	Title, Note string
	// Invented: it is the example that comes with the program, which is nobody's bench.
	Invented bool
	// Instruments stand on the bench.
	Instruments
	// Candidates are not owned: no route can use one. Their names are not those
	// of instruments on the bench.
	Candidates Instruments
}

// Instruments are balances and volumetric instruments, those of a kind in the
// order of the file. Each has a name of its own.
type Instruments struct {
	Balances []*Balance
	Measures []*Measure
}

// Balance returns the balance of that name, or nil.
func (l *Instruments) Balance(name string) *Balance {
	if i := slices.IndexFunc(l.Balances, func(b *Balance) bool { return b.Name == name }); i >= 0 {
		return l.Balances[i]
	}
	return nil
}

// Measure returns the volumetric instrument of that name, or nil.
func (l *Instruments) Measure(name string) *Measure {
	if i := slices.IndexFunc(l.Measures, func(m *Measure) bool { return m.Name == name }); i >= 0 {
		return l.Measures[i]
	}
	return nil
}

// Names lists all instruments: balances, then cylinders, flasks, pipettes and the
// rest.
func (l *Instruments) Names() []string {
	var names []string
	for _, b := range l.Balances {
		names = append(names, b.Name)
	}
	for _, m := range l.Measures {
		names = append(names, m.Name)
	}
	return names
}
