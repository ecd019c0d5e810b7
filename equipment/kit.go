package equipment

import (
	"slices"

	"minim/equipment/benchfile"
)

// Kit is the instruments on one bench.
type Kit struct {
	// File is the name of the file that it was read from.
	File string
	// Title and Note are free text.
	Title, Note string
	Balances    []*Balance
	Measures    []*Measure
}

// LoadKit reads a kit file. A mistake in it is a *benchfile.Mistake.
func LoadKit(path string) (*Kit, error) {
	root, err := benchfile.Load(path)
	if err != nil {
		return nil, err
	}
	return readKit(root)
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
func (k *Kit) Balance(name string) *Balance {
	if i := slices.IndexFunc(k.Balances, func(b *Balance) bool { return b.Name == name }); i >= 0 {
		return k.Balances[i]
	}
	return nil
}

// Measure returns the volumetric instrument of that name, or nil.
func (k *Kit) Measure(name string) *Measure {
	if i := slices.IndexFunc(k.Measures, func(m *Measure) bool { return m.Name == name }); i >= 0 {
		return k.Measures[i]
	}
	return nil
}

// Names lists all instruments: balances, cylinders, flasks, pipettes, those of
// a kind in the order of the file.
func (k *Kit) Names() []string {
	var names []string
	for _, b := range k.Balances {
		names = append(names, b.Name)
	}
	for _, m := range k.Measures {
		names = append(names, m.Name)
	}
	return names
}
