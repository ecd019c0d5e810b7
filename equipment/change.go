package equipment

import (
	"errors"

	"minim/equipment/benchfile"
)

// Change gives one property of an instrument another value, in memory only:
// "0.01 g scale: readability = 0.001 g".
type Change = benchfile.Change

// ParseKitChanged is [ParseKit] with changes to instruments of the bench or to
// candidates, by the names that the file gives them. What is not changed stays as
// stated. The file must be right without them; a mistake that comes with the changes
// points at them.
func ParseKitChanged(name string, data []byte, changes []Change) (*Kit, error) {
	kit, err := ParseKit(name, data)
	if err != nil || len(changes) == 0 {
		return kit, err
	}
	root, err := benchfile.Parse(name, data)
	if err != nil {
		return nil, err
	}
	tables, names := instrumentTables(root)
	for _, c := range changes {
		t, ok := tables[c.Name]
		if !ok {
			return nil, c.FailName("instrument in the kit", names)
		}
		if err := t.Change(c); err != nil {
			return nil, err
		}
	}
	kit, err = readKit(root)
	if err != nil {
		return nil, blame(err, changes)
	}
	return kit, nil
}

// instrumentTables finds the table of each instrument of a kit without mistakes.
func instrumentTables(root *benchfile.Table) (tables map[string]*benchfile.Table, names []string) {
	tables = map[string]*benchfile.Table{}
	for _, table := range KitTables() {
		for _, t := range root.Tables(table) {
			name := t.Text("name")
			tables[name], names = t, append(names, name)
		}
	}
	return tables, names
}

// blame points at the changes where a mistake shows elsewhere in the file, which
// is right without them.
func blame(err error, changes []Change) error {
	var m *benchfile.Mistake
	if !errors.As(err, &m) || m.Line == 0 {
		return err
	}
	last := changes[len(changes)-1]
	which := "with this change, "
	if len(changes) > 1 {
		which = "with this change and those before it, "
	}
	return last.Fail(which+m.Place.String()+": "+m.Message, m.Hint)
}
