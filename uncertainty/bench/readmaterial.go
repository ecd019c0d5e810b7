package bench

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty/hazards"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

func readSolute(t *benchfile.Table) route.Solute {
	if t == nil {
		return route.Solute{FormFactor: 1}
	}
	t.Need("name")
	s := route.Solute{
		Name:           t.Text("name"),
		WeighedAs:      t.Text("weighed-as"),
		Assay:          estimate(t, "assay", parseAssay, parseAssay),
		FormFactor:     1,
		MolarMass:      likely(t, "molar-mass", quantity.MolarMass, quantity.Limits.MolarMass, sodiumChloride),
		Density:        likely(t, "density", quantity.Density, quantity.Limits.SoluteDensity, "sugar has \"1.59 g/mL\", quartz \"2.65 g/mL\""),
		SpecificVolume: likely(t, "specific-volume", quantity.SpecificVolume, quantity.Limits.SpecificVolume, "common solids have between -0.15 and 0.9 mL/g"),
		State:          t.Word("state", "solid", "liquid", "gas"),
		NonVolatile:    t.Flag("non-volatile"),
		Hazards:        hazardWords(t, "hazards"),
		Properties:     readProperties(t),
	}
	s.As = readAs(t, s.Name)
	readForm(t, &s)
	return s
}

// readProperties reads what serves nothing but to convert strengths.
func readProperties(t *benchfile.Table) map[string]route.Estimate {
	parsers, read := strengths.PropertyParsers(), make(map[string]route.Estimate)
	for _, key := range slices.Sorted(maps.Keys(parsers)) {
		read[key] = estimate(t, key, parsers[key], parsers[key])
	}
	return read
}

// readForm reads how much of the substance that the strength counts is in what is
// weighed: a factor, or two molar masses.
func readForm(t *benchfile.Table, s *route.Solute) {
	s.WeighedMolarMass = likely(t, "weighed-molar-mass", quantity.MolarMass, quantity.Limits.MolarMass, sodiumChloride)
	const both = "weighed-molar-mass"
	switch {
	case t.Has("form-factor") && t.Has(both):
		t.FailKey("form-factor", "the two molar masses say already how much of the substance is in what is weighed", "leave form-factor out, or "+both)
	case t.Has("form-factor"):
		limit := quantity.Limits.FormFactor
		s.FormFactor = t.Number("form-factor")
		plausible(t, "form-factor", s.FormFactor, limit, fmt.Sprintf("a form factor is a ratio of molar masses, from %v to %v", limit.Least, limit.Most), "write 0.903 for 0.903 g of the substance in 1 g of what is weighed")
	case !t.Has(both):
	case !t.Has("molar-mass"):
		t.FailFor(t, []string{"molar-mass"}, both, "is half of a ratio: the molar mass of the substance that the strength counts is not stated", "state molar-mass as well")
	case s.MolarMass.Value > 10*s.WeighedMolarMass.Value && s.WeighedMolarMass.Value > 0:
		t.Fail(both, "is less than a tenth of molar-mass", "molar-mass is of the substance that the strength counts, "+both+" of what is weighed")
	case s.MolarMass.Value > 0 && s.WeighedMolarMass.Value > 0:
		s.FormFactor = s.MolarMass.Value / s.WeighedMolarMass.Value
	}
}

// likely reads an estimate that is likely only between two limits.
func likely(t *benchfile.Table, key string, kind quantity.Kind, limit quantity.Limit, hint string) route.Estimate {
	parse := func(text string) (float64, error) { return quantity.Parse(kind, text) }
	return estimate(t, key, inLimit(kind, limit, "%q is not likely", hint), parse)
}

// inLimit reads a quantity within a limit; the message says of a text that it is not.
func inLimit(kind quantity.Kind, limit quantity.Limit, message, hint string) parser {
	return func(text string) (float64, error) {
		v, err := quantity.Parse(kind, text)
		if err == nil && !limit.Holds(v) {
			err = &quantity.Error{Found: text, Message: fmt.Sprintf(message, text), Hint: hint}
		}
		return v, err
	}
}

func readSolvent(t *benchfile.Table) route.Solvent {
	if t == nil {
		return route.Solvent{}
	}
	t.Need("name")
	s := route.NewSolvent(t.Text("name"))
	if expansion := within(t, "expansion", quantity.Expansion, quantity.Limits.Expansion, "water has \"2.1e-4 /°C\", ethanol \"1.09e-3 /°C\""); t.Has("expansion") {
		s.Expansion, s.ExpansionStated = equipment.Stated{Value: expansion, Known: true}, true
	}
	if density := within(t, "density", quantity.Density, quantity.Limits.SolventDensity, "water has \"0.998 g/mL\", ethanol \"0.789 g/mL\""); t.Has("density") {
		s.Density = equipment.Stated{Value: density, Known: true}
	}
	s.Evaporation, s.EvaporationStated = shareOf(t, "evaporation", "volume"), t.Has("evaporation")
	s.Hazards = hazardWords(t, "hazards")
	return s
}

// shareOf reads a fraction of something that the text must name.
func shareOf(t *benchfile.Table, key, of string) float64 {
	text := t.Text(key)
	if text == "" {
		return 0
	}
	share, what, err := quantity.ParseShareOf(text)
	fail := func(message string) { t.Fail(key, message, "write it as \"2 % of "+of+"\"") }
	switch {
	case err != nil && strings.HasSuffix(text, "%"):
		fail(err.Error())
	case err != nil:
		t.FailWith(key, err)
	case what != of || !quantity.Limits.Fraction.Holds(share):
		fail(fmt.Sprintf("%q is not a share of the %s from 0 to 50 %%", text, of))
	}
	return share
}

// within reads a figure that is likely only between two limits.
func within(t *benchfile.Table, key string, kind quantity.Kind, limit quantity.Limit, hint string) float64 {
	v := t.Quantity(key, kind)
	if t.IsText(key) && !plausible(t, key, v, limit, fmt.Sprintf("%q is not likely", t.Text(key)), hint) {
		return 0
	}
	return v
}

// readHazard reads the words for a solution of at least a strength.
func (p prepReader) readHazard(t *benchfile.Table) hazards.Stated {
	t.Need("from", "words")
	s := p.strength(t, "from")
	h := hazards.Stated{From: strengths.Strength{Value: p.InTargetUnit(s), Unit: p.Target.Unit, Text: s.Text}, Words: hazardWords(t, "words"), Replaces: t.Flag("replaces")}
	if t.Has("words") && len(h.Words) == 0 {
		t.Fail("words", "the list is empty", "write the words of the safety data sheet")
	}
	return h
}

// hazardWords reads a list of words. That none is known cannot stand beside others.
func hazardWords(t *benchfile.Table, key string) []string {
	words := t.Texts(key)
	if len(words) > 1 && slices.ContainsFunc(words, hazards.NoneKnown) {
		t.Fail(key, "\"none known\" stands beside other words", "leave it out, or the others")
	}
	return words
}
