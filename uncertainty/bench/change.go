package bench

import (
	"errors"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty/route"
)

// Changed is a prep as it was read, on its kit with changes in memory to instruments of the
// bench or to candidates, by the names that the file gives them. What is not changed stays as
// stated, and no file is read again. The files must be right without them; a mistake that
// comes with the changes points at them.
func Changed(p *route.Prep, changes []benchfile.Change) (*route.Prep, error) {
	kit, err := changedKit(p.Kit.File, p.Kit.Source, changes)
	if err != nil {
		return nil, err
	}
	kit.Invented = p.Kit.Invented
	changed, err := ParsePrep(p.File, p.Source, kit)
	if err != nil {
		return nil, err
	}
	for _, c := range changes {
		changed.Changes = append(changed.Changes, equipment.Change{Name: c.Name, Key: c.Key, Value: c.Value, Replaces: replaced(p.Kit, c)})
	}
	return changed, nil
}

// otherScatter has the two keys that say how an instrument scatters: a change of one stands in
// place of the other.
var otherScatter = map[string]string{"repeatability": "readings", "readings": "repeatability"}

// changedKit reads a kit file with changes.
func changedKit(name string, data []byte, changes []benchfile.Change) (*equipment.Kit, error) {
	kit, err := ParseKit(name, data)
	if err != nil || len(changes) == 0 {
		return kit, err
	}
	root, err := changedTable(name, data, changes)
	if err != nil {
		return nil, err
	}
	if kit, err = readKit(root); err != nil {
		return nil, blame(err, changes)
	}
	return kit, nil
}

// changedTable is the table of a kit file without mistakes, with changes.
func changedTable(name string, data []byte, changes []benchfile.Change) (*benchfile.Table, error) {
	root, err := benchfile.Parse(name, data)
	if err != nil {
		return nil, err
	}
	var instruments []*benchfile.Table
	for _, table := range kitTables() {
		instruments = append(instruments, root.Tables(table)...)
	}
	for _, c := range changes {
		if err := c.Apply(instrumentInKit, instruments, otherScatter[c.Key]); err != nil {
			return nil, err
		}
	}
	return root, nil
}

// replaced is the other key of the kit in whose place a change stands, "" where there is none.
func replaced(kit *equipment.Kit, c benchfile.Change) string {
	other := otherScatter[c.Key]
	for _, l := range []*equipment.Instruments{&kit.Instruments, &kit.Candidates} {
		if b := l.Balance(c.Name); b != nil && b.Repeatability.StatedBy() == other {
			return other
		}
		if m := l.Measure(c.Name); m != nil && m.Repeatability.StatedBy() == other {
			return other
		}
	}
	return ""
}

// blame points at the changes where a mistake shows elsewhere in the file, which
// is right without them.
func blame(err error, changes []benchfile.Change) error {
	var m *benchfile.Mistake
	if !errors.As(err, &m) || m.Line == 0 {
		return err
	}
	last := len(changes) - 1
	if last == 0 {
		return changes[0].Fail("with this change, "+m.String()+": "+m.Message, m.Hint)
	}
	return changes[last].Fail("with this change and those before it, "+m.String()+": "+m.Message, m.Hint)
}
