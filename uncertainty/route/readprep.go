package route

import (
	"fmt"
	"slices"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

func readPrep(root *benchfile.Table, kit *equipment.Kit) (*Prep, error) {
	if slices.ContainsFunc(root.Keys(), func(key string) bool { return slices.Contains(equipment.KitTables(), key) }) {
		return nil, root.Refuse("this is a kit, not a prep", "a prep names its kit: kit = \"bench.toml\"")
	}
	if slices.Contains(root.Keys(), "entries") {
		return nil, root.Refuse("this is a record, not a prep", "the prep is the file that it was begun for").With(benchfile.FollowRecord)
	}
	p := readPrepOn(root, kit)
	if err := root.Err(); err != nil {
		return nil, err
	}
	return p, nil
}

// readPrepOn reads a prep that is made on a kit. Mistakes are recorded in the table.
func readPrepOn(root *benchfile.Table, kit *equipment.Kit) *Prep {
	root.Need("target", "volume", "solute", "solvent")
	p := &Prep{
		source: root,
		File:   root.Place().File, Digest: root.Digest(), Source: root.Source(), Title: root.Text("title"), Note: root.Text("note"), Kit: kit,
		Volume: readVolume(root),
		Bench:  readBench(root.Table("bench")),
		Solute: readSolute(root.Table("solute")),
	}
	p.Solvent = readSolvent(root.Table("solvent"))
	p.readTarget(root)
	p.Tolerances = p.readTolerances(root)
	p.LeastChance = leastChance(root)
	if root.Has("least-chance") && !root.Has("tolerance") && !root.Has("not-above") && !root.Has("not-below") {
		root.FailFor(root, []string{"tolerance", "not-above", "not-below"}, "least-chance", "there is no tolerance to be inside of", "state a tolerance as well")
	}
	for _, t := range root.Tables("stock") {
		p.Stocks = append(p.Stocks, p.readStock(t))
	}
	for _, t := range root.Tables("packet") {
		p.Packets = append(p.Packets, p.readPacket(t))
	}
	if s := p.strength(root.Table("solute"), "solubility"); s.Value > 0 {
		p.Solute.Solubility, _ = p.gramsPerML(s)
	}
	for _, t := range root.Tables("route") {
		p.Routes = append(p.Routes, p.readRoute(t))
	}
	for _, t := range root.Tables("hazard") {
		p.Hazards = append(p.Hazards, p.readHazard(t))
	}
	p.Ladder = p.readLadder(root)
	p.readPrices(root)
	p.Limits = p.readLimits(root)
	return p
}

// readVolume reads the volume wanted.
func readVolume(t *benchfile.Table) float64 {
	v := t.Positive("volume", quantity.Volume)
	if v != 0 && !quantity.LimitOf("volume wanted").Holds(v) {
		t.Fail("volume", "a bench does not make such a volume", "state between 0.001 mL and 1000 L")
	}
	return v
}

// readTarget reads the strength wanted.
func (p *Prep) readTarget(root *benchfile.Table) {
	text := root.Text("target")
	if text == "" {
		return
	}
	s, err := ParseStrength(text)
	if err != nil {
		root.FailWith("target", err)
		return
	}
	p.aim(s)
	p.strength(root, "target")
}

// strength reads a strength that must be convertible to g/mL. It is the zero Strength
// where it is not, or cannot be for a mistake elsewhere.
func (p *Prep) strength(t *benchfile.Table, key string) Strength {
	text := t.Text(key)
	if text == "" {
		return Strength{}
	}
	s, err := p.parseStrength(text)
	if err != nil {
		failStrength(t, key, err)
		return Strength{}
	}
	return s
}

// parseStrength reads a strength that the solute can have.
func (p *Prep) parseStrength(text string) (Strength, error) {
	s, err := ParseStrength(text)
	if err != nil {
		return Strength{}, err
	}
	grams, err := p.gramsPerML(s)
	switch {
	case err != nil:
		return Strength{}, err
	case bases[s.Unit.basis].part && s.Value > s.Unit.per:
		return Strength{}, &quantity.Error{Found: text, Message: fmt.Sprintf("%q is more than 100 %%", text)}
	case !bases[p.own].limit.Holds(grams):
		return Strength{}, &quantity.Error{Found: text, Message: fmt.Sprintf("no solution has a strength of %q", text), Hint: bases[p.own].hint}
	}
	return s, nil
}

// canCompare reports whether a strength can be put beside the target: neither could not
// be read, and no mistake elsewhere stands between their units.
func (p *Prep) canCompare(s Strength) bool {
	if s.Value == 0 || p.Target.Value == 0 {
		return false
	}
	return s.Unit == p.Target.Unit || p.canConvert(s) == nil && p.canConvert(p.Target) == nil
}

// inTargetUnit is the value of a strength in the unit of the target.
func (p *Prep) inTargetUnit(s Strength) float64 { return p.in(p.Target.Unit, s) }

// in is the value of a strength in another unit; of two equal units it is the
// very same number.
func (p *Prep) in(u Unit, s Strength) float64 {
	if s.Unit == u || s.Value == 0 {
		return s.Value
	}
	grams, err := p.gramsPerML(s)
	if err != nil {
		return 0
	}
	return p.fromGramsPerML(grams, u)
}

func readBench(t *benchfile.Table) Bench {
	if t == nil {
		return Bench{}
	}
	var b Bench
	b.Temperature, b.Within = ReadTemperature(t, b.Temperature, b.Within)
	b.Reading = equipment.Reading(t.Word("reading", equipment.Readings()...))
	b.MeniscusIgnored = t.Word("meniscus", "counted", "ignored") == "ignored"
	if t.Has("within") {
		t.Need("temperature")
	}
	return b
}

// ReadTemperature reads the temperature of the bench and the half-width within which it
// is known; what is not there stays as it was.
func ReadTemperature(t *benchfile.Table, temperature, within equipment.Stated) (equipment.Stated, equipment.Stated) {
	if t.Has("temperature") {
		temperature = equipment.Stated{Value: t.Quantity("temperature", quantity.Temperature), Known: true}
	}
	if t.Has("within") {
		within = equipment.Stated{Value: t.NotNegative("within", quantity.Temperature), Known: true}
	}
	if limit := quantity.LimitOf("temperature"); temperature.Known && !limit.Holds(temperature.Value) {
		t.Fail("temperature", fmt.Sprintf("a bench at %v °C is not likely", temperature.Value), fmt.Sprintf("state it in °C, between %v and %v", limit.Least, limit.Most))
	}
	if limit := quantity.LimitOf("within"); !limit.Holds(within.Value) {
		t.Fail("within", fmt.Sprintf("a bench that varies by %v °C is not likely", within.Value), fmt.Sprintf("state a half-width of at most %v °C", limit.Most))
	}
	return temperature, within
}
