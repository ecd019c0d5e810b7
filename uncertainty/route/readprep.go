package route

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty"
)

func readPrep(root *benchfile.Table, kit *equipment.Kit) (*Prep, error) {
	if slices.ContainsFunc(root.Keys(), func(key string) bool { return slices.Contains(equipment.KitTables(), key) }) {
		return nil, root.Refuse("this is a kit, not a prep", "a prep names its kit: kit = \"bench.toml\"")
	}
	root.Need("target", "volume", "solute", "solvent", "route")
	p := &Prep{
		File: root.Place().File, Title: root.Text("title"), Note: root.Text("note"), Kit: kit,
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
	p.Ladder = p.readLadder(root)
	if err := root.Err(); err != nil {
		return nil, err
	}
	return p, nil
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
	if b.Within.Value > 25 {
		t.Fail("within", fmt.Sprintf("a bench that varies by %v °C is not likely", b.Within.Value), "state a half-width of at most 25 °C")
	}
	return b
}

func readSolute(t *benchfile.Table) Solute {
	if t == nil {
		return Solute{FormFactor: 1}
	}
	t.Need("name")
	s := Solute{
		Name:           t.Text("name"),
		Assay:          estimate(t, "assay", parseAssay, parseAssay),
		FormFactor:     1,
		MolarMass:      likely(t, "molar-mass", quantity.MolarMass, 1, 1e7, "sodium chloride has \"58.44 g/mol\""),
		Density:        likely(t, "density", quantity.Density, 0.05, 30, "sugar has \"1.59 g/mL\", table salt \"2.16 g/mL\""),
		SpecificVolume: likely(t, "specific-volume", quantity.SpecificVolume, -1, 3, "common solids have between -0.15 and 0.9 mL/g"),
		Activity:       estimate(t, "activity", parseActivity, parseActivity),
		Hazards:        t.Texts("hazards"),
	}
	if t.Has("form-factor") {
		s.FormFactor = t.Number("form-factor")
		if s.FormFactor <= 0 || s.FormFactor > 10 {
			t.Fail("form-factor", "a form factor is a ratio of molar masses", "write 0.903 for 0.903 g of the substance in 1 g of what is weighed")
		}
	}
	return s
}

// likely reads an estimate that is likely only between two limits.
func likely(t *benchfile.Table, key string, kind quantity.Kind, low, high float64, hint string) Estimate {
	parse := func(text string) (float64, error) { return quantity.Parse(kind, text) }
	return estimate(t, key, func(text string) (float64, error) {
		v, err := parse(text)
		if err == nil && (v < low || v > high) {
			err = &quantity.Error{Found: text, Message: fmt.Sprintf("%q is not likely", text), Hint: hint}
		}
		return v, err
	}, parse)
}

// parseActivity reads units of activity in a mass, "30 U/mg", as U/g.
func parseActivity(text string) (float64, error) {
	v, unit, err := quantity.Split(text)
	if err != nil {
		return 0, err
	}
	per := map[string]float64{"U/g": 1, "U/mg": 1e3, "U/µg": 1e6}[unit]
	if per == 0 || v <= 0 || v*per > 1e15 {
		return 0, &quantity.Error{Found: text, Message: fmt.Sprintf("%q is not an activity", text), Hint: "write units in a mass, \"30 U/mg\""}
	}
	return v * per, nil
}

func readSolvent(t *benchfile.Table) Solvent {
	if t == nil {
		return Solvent{}
	}
	t.Need("name")
	s := Solvent{
		Name:        t.Text("name"),
		Expansion:   equipment.Stated{Value: within(t, "expansion", quantity.Expansion, 0, 0.01, "water has \"2.1e-4 /°C\", ethanol \"1.09e-3 /°C\""), Known: t.Has("expansion")},
		Density:     equipment.Stated{Value: within(t, "density", quantity.Density, 0.3, 5, "water has \"0.998 g/mL\", ethanol \"0.789 g/mL\""), Known: t.Has("density")},
		Evaporation: shareOf(t, "evaporation", "volume"),

		evaporationStated: t.Has("evaporation"),
		expansionStated:   t.Has("expansion"),
		Hazards:           t.Texts("hazards"),
	}
	if liquid, ok := equipment.FindLiquid(s.Name); ok {
		s.Tension = liquid.SurfaceTension
		if !s.Expansion.Known {
			s.Expansion = equipment.Stated{Value: liquid.Expansion, Known: true}
		}
		if !s.Density.Known {
			s.Density = equipment.Stated{Value: liquid.Density, Known: true}
		}
	}
	return s
}

// shareOf reads a fraction of something that the text must name.
func shareOf(t *benchfile.Table, key, of string) float64 {
	text := t.Text(key)
	if text == "" {
		return 0
	}
	share, what, err := quantity.ParseShareOf(text)
	hint := fmt.Sprintf("write it as \"2 %% of %s\"", of)
	switch {
	case err != nil && strings.HasSuffix(text, "%"):
		t.Fail(key, quantityMessage(err), hint)
	case err != nil:
		t.FailWith(key, err)
	case what != of || share < 0 || share > 0.5:
		t.Fail(key, fmt.Sprintf("%q is not a share of the %s from 0 to 50 %%", text, of), hint)
	}
	return share
}

// within reads a figure that is likely only between two limits.
func within(t *benchfile.Table, key string, kind quantity.Kind, low, high float64, hint string) float64 {
	v := t.Quantity(key, kind)
	if t.Shape(key) == benchfile.Text && (v < low || v > high) {
		t.Fail(key, fmt.Sprintf("%q is not likely", t.Text(key)), hint)
		return 0
	}
	return v
}

// readTolerances reads `tolerance`, one text or several, or the one-sided
// `not-above` and `not-below`.
func (p *Prep) readTolerances(t *benchfile.Table) []Tolerance {
	if p.Target.Value == 0 {
		t.Has("tolerance")
		t.Has("not-above")
		t.Has("not-below")
		return nil
	}
	if t.Has("not-above") || t.Has("not-below") {
		return p.readOneSided(t)
	}
	var list []Tolerance
	if t.Shape("tolerance") == benchfile.List && len(t.Texts("tolerance")) == 0 {
		t.Fail("tolerance", "the list of tolerances is empty", "leave tolerance out, or write \"8 % of target\"")
	}
	for _, text := range t.Texts("tolerance") {
		limits, err := p.parseTolerance(text)
		if err != nil {
			t.FailWith("tolerance", err)
			return nil
		}
		list = append(list, Tolerance{text, limits})
	}
	return list
}

// quantityMessage is the message of a parser without its hint.
func quantityMessage(err error) string {
	var e *quantity.Error
	if errors.As(err, &e) {
		return e.Message
	}
	return err.Error()
}

// parseTolerance returns the limits in the unit of the target. A half-width in
// another unit is laid off in that unit: g/L and % w/w are not in proportion.
func (p *Prep) parseTolerance(text string) (limits uncertainty.Limits, err error) {
	fault := func(message string) error {
		return &quantity.Error{Found: text, Message: message, Hint: "write it as a share, \"8 % of target\", or as a strength, \"0.003 % w/v\""}
	}
	target := p.Target.Value
	share, of, err := quantity.ParseShareOf(text)
	if err == nil {
		if of != "target" || share <= 0 || share >= 1 {
			return limits, fault(fmt.Sprintf("a tolerance lies between 0 and 100 %% of the target, found %q", text))
		}
		return uncertainty.Limits{Lower: target - share*target, Upper: target + share*target}, nil
	}
	if strings.Contains(text, "of") || of == "" && strings.HasSuffix(text, "%") {
		return limits, fault(quantityMessage(err))
	}
	s, err := p.parseStrength(text)
	if err != nil {
		return limits, err
	}
	middle := p.in(s.Unit, p.Target)
	limits.Lower = p.inTargetUnit(Strength{Value: middle - s.Value, Unit: s.Unit})
	limits.Upper = p.inTargetUnit(Strength{Value: middle + s.Value, Unit: s.Unit})
	if !(s.Value < middle && limits.Lower < target && limits.Upper > target) {
		return limits, fault("the tolerance must be smaller than the target, and not next to nothing")
	}
	return limits, nil
}

func (p *Prep) readOneSided(t *benchfile.Table) []Tolerance {
	if t.Has("tolerance") {
		t.Fail("tolerance", "a tolerance and a one-sided limit are both stated", "state tolerance, or not-above and not-below")
	}
	tol := Tolerance{Limits: uncertainty.Limits{Lower: math.Inf(-1), Upper: math.Inf(1)}}
	inUnit := func(key string) float64 { return p.inTargetUnit(p.strength(t, key)) }
	const rounding = 1e-9 // of the conversion from another unit
	if t.Has("not-below") {
		tol.Text, tol.Limits.Lower = "not below "+t.Text("not-below"), inUnit("not-below")
	}
	if t.Has("not-above") {
		if tol.Text != "" {
			tol.Text += ", "
		}
		tol.Text += "not above " + t.Text("not-above")
		tol.Limits.Upper = inUnit("not-above")
	}
	switch {
	case tol.Limits.Lower >= tol.Limits.Upper:
		t.Fail("not-above", "the upper limit is not above the lower", "")
	case p.Target.Value > tol.Limits.Upper*(1+rounding):
		t.Fail("not-above", fmt.Sprintf("the target, %s, is above it", p.Target.Text), "")
	case p.Target.Value < tol.Limits.Lower*(1-rounding):
		t.Fail("not-below", fmt.Sprintf("the target, %s, is below it", p.Target.Text), "")
	}
	return []Tolerance{tol}
}

func leastChance(t *benchfile.Table) float64 {
	if !t.Has("least-chance") {
		return 0.95
	}
	p := t.Positive("least-chance", quantity.Share)
	if p >= 1 {
		t.Fail("least-chance", "a chance of 100 % cannot be promised", "write \"95 %\"")
	}
	return p
}
