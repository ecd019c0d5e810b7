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
		File:   root.Place().File, Title: root.Text("title"), Note: root.Text("note"), Kit: kit,
		Volume: readVolume(root),
		Bench:  readBench(root.Table("bench")),
		Solute: readSolute(root.Table("solute")),
	}
	p.Solvent = readSolvent(root.Table("solvent"))
	p.Target = p.strength(root, "target")
	p.Tolerances = p.readTolerances(root)
	p.LeastChance = leastChance(root)
	if root.Has("least-chance") && !root.Has("tolerance") && !root.Has("not-above") && !root.Has("not-below") {
		root.Fail("least-chance", "there is no tolerance to be inside of", "state a tolerance as well")
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
	if v != 0 && (v < 1e-3 || v > 1e6) {
		t.Fail("volume", "a bench does not make such a volume", "state between 0.001 mL and 1000 L")
	}
	return v
}

// strength reads a strength that must be convertible to g/mL.
func (p *Prep) strength(t *benchfile.Table, key string) Strength {
	text := t.Text(key)
	if text == "" {
		return Strength{}
	}
	s, err := p.parseStrength(text)
	if err != nil {
		t.FailWith(key, err)
		return Strength{}
	}
	return s
}

// densest is the greatest mass of solute in a solution, in g/mL.
const densest = 3.0

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
	case (s.Unit.basis == byMass || s.Unit.basis == byVolume) && s.Value > s.Unit.per:
		return Strength{}, &quantity.Error{Found: text, Message: fmt.Sprintf("%q is more than 100 %%", text)}
	case !(grams <= densest && grams >= 1e-15):
		return Strength{}, &quantity.Error{Found: text, Message: fmt.Sprintf("no solution has a strength of %q", text),
			Hint: "state one between 1e-12 g/L and 3000 g/L"}
	}
	return s, nil
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

// MostWithin is the greatest half-width within which the temperature of a bench may be
// known, in °C.
const MostWithin = 25

func readBench(t *benchfile.Table) Bench {
	if t == nil {
		return Bench{}
	}
	b := Bench{
		Temperature: equipment.Stated{Value: t.Quantity("temperature", quantity.Temperature), Known: t.Has("temperature")},
		Within:      equipment.Stated{Value: t.NotNegative("within", quantity.Temperature), Known: t.Has("within")},
		Reading:     equipment.Reading(t.Word("reading", equipment.Readings()...)),

		MeniscusIgnored: t.Word("meniscus", "counted", "ignored") == "ignored",
	}
	if t.Has("within") {
		t.Need("temperature")
	}
	if b.Temperature.Known && (b.Temperature.Value < 0 || b.Temperature.Value > 50) {
		t.Fail("temperature", fmt.Sprintf("a bench at %v °C is not likely", b.Temperature.Value), "state it in °C, between 0 and 50")
	}
	if b.Within.Value > MostWithin {
		t.Fail("within", fmt.Sprintf("a bench that varies by %v °C is not likely", b.Within.Value), fmt.Sprintf("state a half-width of at most %d °C", MostWithin))
	}
	return b
}
