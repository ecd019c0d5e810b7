package equipment

import (
	"context"
	"slices"

	"minim/equipment/benchfile"
)

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

	source *benchfile.Table
}

// Instruments are balances and volumetric instruments, those of a kind in the
// order of the file. Each has a name of its own.
type Instruments struct {
	Balances []*Balance
	Measures []*Measure
}

// LoadKit reads a kit file. A mistake in it is a *benchfile.Mistake.
func LoadKit(path string) (*Kit, error) { return LoadKitContext(context.Background(), path) }

// LoadKitContext is [LoadKit] of a file that may have to be waited for, until the context is
// done.
func LoadKitContext(ctx context.Context, path string) (*Kit, error) {
	data, err := benchfile.Read(ctx, path)
	if err != nil {
		return nil, err
	}
	return ParseKit(path, data)
}

// ParseKit reads the text of a kit file; name stands for it in messages.
func ParseKit(name string, data []byte) (*Kit, error) {
	root, err := benchfile.Parse(name, data)
	if err != nil {
		return nil, err
	}
	return readKit(root)
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
