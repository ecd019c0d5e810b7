package bench

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// LoadKit reads a kit file, which may have to be waited for, until the context is done. A
// mistake in it is a *benchfile.Mistake.
func LoadKit(ctx context.Context, path string) (*equipment.Kit, error) {
	return load(ctx, path, ParseKit)
}

// load reads a file, and parses it.
func load[T any](ctx context.Context, path string, parse func(name string, data []byte) (*T, error)) (*T, error) {
	data, err := benchfile.Read(ctx, path)
	if err != nil {
		return nil, err
	}
	return parse(path, data)
}

// ParseKit reads the text of a kit file; name stands for it in messages.
func ParseKit(name string, data []byte) (*equipment.Kit, error) {
	root, err := benchfile.Parse(name, data)
	if err != nil {
		return nil, err
	}
	return readKit(root)
}

// kitReader carries what all instruments of a kit file have in common.
type kitReader struct {
	kit   *equipment.Kit
	shape equipment.Shape
	// currency of the first price.
	currency string
	// full: there are more instruments than are read.
	full bool
	// into takes the instruments: those of the bench, or the candidates.
	into *equipment.Instruments
}

func readKit(root *benchfile.Table) (*equipment.Kit, error) {
	if holds(root, "entries") {
		return nil, root.Refuse("this is a record, not a kit", namedByThePrep)
	}
	if holds(root, "route", "solute") {
		return nil, root.Refuse("this is a prep, not a kit", namedByThePrep)
	}
	kit := readKitTable(root)
	if root.Err() == nil && len(kit.Names()) == 0 { // a mistyped header says it better
		root.Fail("", "the kit holds no instrument", "add a [[balance]], [[cylinder]], [[flask]] or [[pipette]]")
	}
	if err := root.Err(); err != nil {
		return nil, err
	}
	return kit, nil
}

// readKitTable reads a kit from a table of a file that holds more than a kit. Mistakes are
// recorded in the table.
func readKitTable(root *benchfile.Table) *equipment.Kit {
	file, source := root.Source()
	r := kitReader{kit: &equipment.Kit{File: file, Digest: sha256Of(source), Source: source, Title: root.Text("title"), Note: root.Text("note")}}
	r.shape = shapeOf(root)
	r.into = &r.kit.Instruments
	for _, t := range root.Tables(balanceTables) {
		if r.room(t) {
			r.balance(t)
		}
	}
	for _, table := range measureTables() {
		for _, t := range root.Tables(table) {
			if r.room(t) {
				r.measure(t, measureKind(t, table))
			}
		}
	}
	r.into = &r.kit.Candidates
	for _, t := range root.Tables(candidateTables) {
		r.candidate(t)
	}
	return r.kit
}

// room reports whether the bench has room for one more instrument; the first that has
// none is a mistake.
func (r *kitReader) room(t *benchfile.Table) bool {
	most := benchfile.LongestList(ofMistake("instruments of a kit"))
	if len(r.kit.Names()) < most {
		return true
	}
	t.Accept()
	if !r.full {
		t.Fail("", fmt.Sprintf("there are more than %d instruments", most), fmt.Sprintf("at most %d are read of one kit; write those of another bench into a kit of their own", most))
	}
	r.full = true
	return false
}

// name reads the name of an instrument, which no other may have.
func (r *kitReader) name(t *benchfile.Table) string {
	return nameOf(t, "instruments", append(r.kit.Names(), r.kit.Candidates.Names()...), ownName+", or write count = 2")
}

func (r *kitReader) balance(t *benchfile.Table) {
	t.Need("name", "capacity", "readability")
	b := &equipment.Balance{
		Name: r.name(t), Capacity: capacity(t, quantity.Mass), Readability: t.Positive("readability", quantity.Mass),
	}
	balanceReadings(t, b)
	b.Linearity, b.Law, b.Span = stated(t, "linearity", quantity.Mass), linearityLaw(t), share(t, "span", "reading")
	b.Weighing, b.Count, b.Price = stated(t, "weighing-uncertainty", quantity.Mass), pieces(t), r.price(t)
	const example ofMistake = "a 200 g scale may show steps of 0.01 g"
	switch {
	case b.Capacity == 0 || b.Readability == 0:
		// said already
	case b.Readability > b.Capacity:
		t.Fail("readability", "the readability is larger than the capacity", example)
	case !quantity.Limits.DisplaySteps.Holds(b.Capacity / b.Readability):
		t.Fail("readability", "no display shows so many steps up to its capacity", example)
	}
	spreadBelow(t, b.Repeatability, b.Capacity)
	below(t, "linearity", b.Linearity.Value, b.Capacity)
	below(t, "weighing-uncertainty", b.Weighing.Value, b.Capacity)
	b.Judge()
	r.into.Balances = append(r.into.Balances, b)
}

// linearityLaw reads how the errors of linearity at two loads go together.
func linearityLaw(t *benchfile.Table) equipment.Law {
	if t.Word("linearity-law", "in-two-parts", string(equipment.Independent)) == string(equipment.Independent) {
		return equipment.Independent
	}
	return equipment.InTwoParts
}

// The tables of a kit file that do not hold volumetric instruments of one kind on the bench.
const (
	balanceTables   = "balance"
	pipetteTables   = "pipette"
	candidateTables = "candidate"
)

// kitTables are the names of the tables of a kit file.
func kitTables() []string {
	return slices.Concat([]string{balanceTables}, measureTables(), []string{candidateTables})
}

// measureTables are those of volumetric instruments, in the order in which they
// are read: a jar may rest on any other.
func measureTables() (tables []string) {
	for _, kind := range equipment.Kinds() {
		if table := kind.Traits().Table; !slices.Contains(tables, table) {
			tables = append(tables, table)
		}
	}
	return tables
}

// kindsIn are the kinds of which a table holds measures; "" stands for any table.
func kindsIn(table string) (list []string) {
	for _, kind := range equipment.Kinds() {
		if table == "" || kind.Traits().Table == table {
			list = append(list, string(kind))
		}
	}
	return list
}

// candidateKinds are the kinds that a [[candidate]] may be of: the name of a table,
// or the kind of a pipette.
func candidateKinds() []string { return append([]string{balanceTables}, kindsIn("")...) }

// candidate reads an instrument that is not owned, which states its kind and
// otherwise has the keys of such instruments on the bench.
func (r *kitReader) candidate(t *benchfile.Table) {
	t.Need("kind", "name")
	switch kind := candidateKind(t); kind {
	case "":
		t.Accept() // what keys it may have is not known
	case balanceTables:
		t.Name += " balance"
		r.balance(t)
	default:
		t.Name += " " + equipment.Kind(kind).Traits().Table
		r.measure(t, equipment.Kind(kind))
	}
}

func candidateKind(t *benchfile.Table) string {
	if t.IsText("kind") && t.Text("kind") == pipetteTables {
		t.Fail("kind", "there are several kinds of pipette", "choose from "+strings.Join(kindsIn(pipetteTables), ", "))
		return ""
	}
	return t.Word("kind", candidateKinds()...)
}
