package equipment

import (
	"slices"
	"strings"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty"
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

// kitReader carries what all instruments of a kit file have in common.
type kitReader struct {
	kit   *Kit
	shape Shape
}

// KitTables are the names of the tables of a kit file.
func KitTables() []string { return []string{"balance", "cylinder", "flask", "pipette"} }

func readKit(root *benchfile.Table) (*Kit, error) {
	if slices.Contains(root.Keys(), "route") || slices.Contains(root.Keys(), "solute") {
		return nil, root.Refuse("this is a prep, not a kit", "the kit is the file that the prep names")
	}
	r := kitReader{kit: &Kit{File: root.Place().File, Title: root.Text("title"), Note: root.Text("note")}}
	r.shape = shapeOf(root)
	for _, t := range root.Tables("balance") {
		r.balance(t)
	}
	for _, t := range root.Tables("cylinder") {
		r.measure(t, Cylinder)
	}
	for _, t := range root.Tables("flask") {
		r.measure(t, Flask)
	}
	for _, t := range root.Tables("pipette") {
		r.measure(t, Kind(t.Word("kind", string(OneMark), string(Graduated))))
	}
	err := root.Err()
	if err == nil && len(r.kit.Names()) == 0 { // a mistyped header says it better
		root.Fail("", "the kit holds no instrument", "add a [[balance]], [[cylinder]], [[flask]] or [[pipette]]")
		err = root.Err()
	}
	if err != nil {
		return nil, err
	}
	return r.kit, nil
}

// name reads the name of an instrument, which no other may have.
func (r *kitReader) name(t *benchfile.Table) string {
	name := t.Text("name")
	if strings.Contains(name, ", piece ") {
		t.Fail("name", "\", piece \" is how the pieces of an instrument are told apart", "write count = 2 for two pieces alike")
	}
	if name != "" && slices.Contains(r.kit.Names(), name) {
		t.Fail("name", "there are two instruments called \""+name+"\"", "give each its own name, or write count = 2")
	}
	return name
}

func (r *kitReader) balance(t *benchfile.Table) {
	t.Need("name", "capacity", "readability")
	b := &Balance{
		Name:          r.name(t),
		Capacity:      capacity(t, quantity.Mass),
		Readability:   t.Positive("readability", quantity.Mass),
		Repeatability: spread(t, quantity.Mass),
		Linearity:     stated(t, "linearity", quantity.Mass),
		Span:          share(t, "span", "reading"),
		Weighing:      stated(t, "weighing-uncertainty", quantity.Mass),
		Count:         max(1, t.Count("count", 1)),
	}
	switch {
	case b.Capacity == 0 || b.Readability == 0:
		// said already
	case b.Readability > b.Capacity:
		t.Fail("readability", "the readability is larger than the capacity", "a 200 g scale may show steps of 0.01 g")
	case b.Capacity/b.Readability > finest:
		t.Fail("readability", "no display shows so many steps up to its capacity", "a 200 g scale may show steps of 0.01 g")
	}
	b.Repeatability.below(t, b.Capacity)
	below(t, "linearity", b.Linearity.Value, b.Capacity)
	below(t, "weighing-uncertainty", b.Weighing.Value, b.Capacity)
	r.kit.Balances = append(r.kit.Balances, b)
}

func (r *kitReader) measure(t *benchfile.Table, kind Kind) {
	t.Need("name", "capacity")
	if !kind.Receives() {
		t.Need("kind")
	}
	k := &Measure{
		Name:          r.name(t),
		Kind:          kind,
		Capacity:      capacity(t, quantity.Volume),
		Division:      t.Positive("division", quantity.Volume),
		Bore:          t.Positive("bore", quantity.Length),
		Expansion:     expansion(t),
		Clinging:      stated(t, "clinging", quantity.Volume),
		Retained:      retained(t),
		Repeatability: spread(t, quantity.Volume),
		Reading:       Reading(t.Word("reading", Readings()...)),
		Count:         max(1, t.Count("count", 1)),
	}
	r.class(t, k)
	r.bias(t, k)
	k.check(t)
	k.Repeatability.below(t, k.Capacity)
	below(t, "clinging", k.Clinging.Value, k.Capacity)
	below(t, "retained", k.Retained.Mean, k.Capacity)
	r.kit.Measures = append(r.kit.Measures, k)
}

// class fills in from the class table what the kit does not state itself.
func (r *kitReader) class(t *benchfile.Table, k *Measure) {
	q := ClassQuery{
		Kind: string(k.Kind), Capacity: k.Capacity, Division: k.Division,
		Name:     t.Word("class", "A", "AS", "B"),
		Standard: t.Word("standard", "ISO", "ASTM"),
	}
	if k.Kind == Cylinder {
		q.Form = t.Word("form", "tall", "squat")
	}
	if q.Name == "" || q.Kind == "" || q.Capacity <= 0 {
		return
	}
	c, err := FindClass(q)
	if classError, ok := err.(ClassError); ok {
		if !t.Has("tolerance") && !t.Has("standard-uncertainty") {
			t.Fail("class", classError.Message, classError.Hint)
		}
		return
	}
	k.Class, k.StandardAssumed = &c, q.Standard == ""
	if k.Division == 0 {
		k.Division = c.Division
	}
	if k.Bore == 0 {
		k.Bore = c.Bore
	}
}

// bias reads the limit of the piece: its own, or that of its class.
func (r *kitReader) bias(t *benchfile.Table, k *Measure) {
	k.Bias = Bias{Shape: Triangle, ShapeAssumed: true, BetweenMarks: 0.5}
	if t.Has("between-marks") {
		k.Bias.BetweenMarks = t.Number("between-marks")
		if k.Bias.BetweenMarks < 0 || k.Bias.BetweenMarks > 1 {
			t.Fail("between-marks", "the correlation between marks must lie between 0 and 1", "leave it out for 1/2")
		}
	}
	for _, shape := range []Shape{r.shape, shapeOf(t)} {
		if shape != "" {
			k.Bias.Shape, k.Bias.ShapeAssumed = shape, false
		}
	}
	switch {
	case t.Has("tolerance") && t.Has("standard-uncertainty"):
		t.Fail("standard-uncertainty", "a tolerance and a standard uncertainty are both stated", "state the one that is known")
	case t.Has("standard-uncertainty"):
		k.Bias.Shape, k.Bias.ShapeAssumed = Gauss, false
		k.Bias.Limit = t.NotNegative("standard-uncertainty", quantity.Volume)
	case t.Has("tolerance"):
		k.Bias.Limit = t.NotNegative("tolerance", quantity.Volume)
	case k.Class != nil:
		k.Bias.Limit = k.Class.Tolerance
	case !t.Has("class"):
		t.Fail("", "nothing says how good the "+k.Name+" is", "state its class (\"A\" or \"B\"), or its own tolerance")
	}
}

// check refuses what cannot be.
func (k *Measure) check(t *benchfile.Table) {
	scale := k.Kind == Cylinder || k.Kind == Graduated
	own := !t.Has("class") || t.Has("tolerance") || t.Has("standard-uncertainty")
	switch {
	case k.Capacity == 0:
		// said already
	case scale && own && k.Division == 0 && !t.Has("division"):
		t.Fail("", "the "+k.Name+" has a scale, but its division is not stated", "state division, or the class that fixes it")
	case !scale && t.Has("division") && k.Kind != "":
		t.Fail("division", "the "+k.Name+" has one mark and no divisions", "leave division out")
	case k.Division > k.Capacity:
		t.Fail("division", "the division is larger than the capacity", "")
	case k.Division > 0 && k.Capacity/k.Division > finest:
		t.Fail("division", "no scale has so many divisions", "")
	case perMillimetre(k.Bore) >= k.Capacity:
		t.Fail("bore", "one millimetre of so wide a neck holds more than the capacity", "state the inside width at the mark, as in \"13 mm\"")
	}
	below(t, "tolerance", k.Bias.Limit, k.Capacity)
	below(t, "standard-uncertainty", k.Bias.Limit, k.Capacity)
}

// What a bench can hold, in g or mL: from 1 µg or 1 nL to 1000 t or 1000 m³;
// and the most steps of a display or divisions of a scale. Far outside of what
// is sold, they keep a slipped unit from giving figures without meaning.
const (
	smallest = 1e-6
	largest  = 1e9
	finest   = 1e8
)

// capacity reads the capacity, 0 when it is none.
func capacity(t *benchfile.Table, kind quantity.Kind) float64 {
	x := t.Positive("capacity", kind)
	if x != 0 && (x < smallest || x > largest) {
		t.Fail("capacity", "no instrument of a bench has this capacity", "")
		return 0
	}
	return x
}

// below refuses a figure at a key that is not smaller than the capacity.
func below(t *benchfile.Table, key string, figure, capacity float64) {
	if t.Has(key) && capacity > 0 && !(figure < capacity) {
		t.Fail(key, "must be smaller than the capacity", "")
	}
}

// below refuses readings or a repeatability that scatter by the capacity.
func (s Spread) below(t *benchfile.Table, capacity float64) {
	below(t, "repeatability", s.S, capacity)
	below(t, "readings", s.S, capacity)
}

func shapeOf(t *benchfile.Table) Shape {
	return Shape(t.Word("shape", string(Triangle), string(Rectangle)))
}

func stated(t *benchfile.Table, key string, kind quantity.Kind) Stated {
	return Stated{t.NotNegative(key, kind), t.Has(key)}
}

// share reads a fraction of something that the text must name, like
// "0.1 % of reading".
func share(t *benchfile.Table, key, of string) float64 {
	text := t.Text(key)
	if text == "" {
		return 0
	}
	value, what, err := quantity.ParseShareOf(text)
	switch {
	case err != nil:
		t.FailWith(key, err)
	case what != of:
		t.Fail(key, "is stated as a share of "+what, "write it as a share of the "+of+": \"0.1 % of "+of+"\"")
	case value < 0 || value >= 1:
		t.Fail(key, "must lie between 0 and 100 %", "")
	}
	return value
}

// spread reads a repeatability, or works it out from readings.
func spread(t *benchfile.Table, kind quantity.Kind) Spread {
	values := t.Quantities("readings", kind)
	switch {
	case t.Has("readings") && t.Has("repeatability"):
		t.Fail("readings", "repeatability and readings are both stated", "state one of them")
	case t.Has("readings") && len(values) < 2:
		t.Fail("readings", "a repeatability needs at least two readings", "")
	case len(values) >= 2:
		_, s, nu := uncertainty.Readings(values)
		return Spread{S: s, DegreesOfFreedom: nu, Known: true}
	}
	return Spread{S: t.NotNegative("repeatability", kind), Known: t.Has("repeatability")}
}

// expansion reads a cubic expansion, or the material that has it.
func expansion(t *benchfile.Table) Stated {
	name := t.Text("material")
	switch {
	case t.Has("expansion") && t.Has("material"):
		t.Fail("expansion", "material and expansion are both stated", "state one of them")
	case name != "":
		glass, ok := FindGlass(name)
		if !ok {
			t.FailChoice("material", "material", name, GlassNames(), "or state its cubic expansion: expansion = \"9.9e-6 /°C\"")
		}
		return Stated{glass.Expansion, ok}
	}
	value := t.NotNegative("expansion", quantity.Expansion)
	if value >= 0.01 {
		t.Fail("expansion", "nothing expands by so much", "borosilicate glass has \"9.9e-6 /°C\", plastics about \"3e-4 /°C\"")
	}
	return Stated{value, t.Has("expansion")}
}

// retained reads a volume, or a table of its mean and spread.
func retained(t *benchfile.Table) Retained {
	if t.Shape("retained") != benchfile.Sub {
		return Retained{Mean: t.NotNegative("retained", quantity.Volume), Known: t.Has("retained")}
	}
	sub := t.Table("retained")
	sub.Need("mean")
	r := Retained{
		Mean:   sub.NotNegative("mean", quantity.Volume),
		Spread: stated(sub, "spread", quantity.Volume),
		Known:  true,
	}
	if r.Spread.Value > 2*r.Mean {
		sub.Fail("spread", "must not be above twice the mean", "a volume that cannot be negative varies by about its mean at most")
	}
	return r
}
