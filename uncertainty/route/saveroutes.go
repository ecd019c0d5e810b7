package route

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"unicode"
	"unicode/utf8"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// SaveRoutes returns the text of a prep file that has the given routes instead of
// its own, at the end, and names the kit at the given path; an empty path leaves
// what it names. All else stays as it is, but for blank lines round what goes and
// comes. Comments between its routes go with them.
func SaveRoutes(text []byte, kit string, routes []*Route) ([]byte, error) {
	const name = "the prep"
	text, err := benchfile.Without(name, text, "route")
	if err != nil {
		return nil, err
	}
	if kit != "" {
		if !nameable(kit) {
			return nil, fmt.Errorf("a prep cannot name a kit with the path %q", kit)
		}
		if text, err = benchfile.WithText(name, text, "kit", filepath.ToSlash(kit)); err != nil {
			return nil, err
		}
	}
	if len(routes) == 0 {
		return text, nil
	}
	written := make([]string, len(routes))
	for i, r := range routes {
		written[i] = r.written()
	}
	return benchfile.Append(text, strings.Join(written, "\n")), nil
}

// nameable reports a path that a file of a bench can hold.
func nameable(path string) bool {
	return utf8.ValidString(path) && strings.TrimSpace(path) == path &&
		!strings.ContainsFunc(path, func(r rune) bool { return !unicode.IsGraphic(r) })
}

// written is the [[route]] table of a route.
func (r *Route) written() string {
	var b strings.Builder
	b.WriteString("[[route]]\nname = " + benchfile.Quote(r.Name) + "\nsteps = [\n")
	for i := range r.Steps {
		b.WriteString("  { " + strings.Join(r.Steps[i].Written(), ", ") + " },\n")
	}
	b.WriteString("]\n")
	return b.String()
}

// Written lists the keys of a step with their values, as a file holds them: the verb,
// the instrument, and what else it says.
func (s *Step) Written() []string {
	return append(s.Main(), s.options()...)
}

// Main lists the keys that a step cannot do without, with their values: the verb with its
// amount, what it takes, and the instrument.
func (s *Step) Main() []string {
	switch {
	case s.Verb == TakeAll:
		return []string{textAt(string(Take), "all")}
	case s.Verb == Start:
		return []string{textAt(string(Start), s.Stock.Name)}
	case s.Packet != nil:
		return []string{textAt(string(UsePacket), s.Packet.Name)}
	}
	keys := []string{textAt(string(s.Verb), s.AmountText())}
	if of := s.Of(); of != "" {
		keys = append(keys, textAt("of", of))
	}
	return append(keys, textAt(s.Instrument()))
}

// AmountText is the amount of a step that reads an instrument, as a file holds it.
func (s *Step) AmountText() string {
	if s.Balance != nil {
		return displayed(s.Balance, s.Amount)
	}
	return s.measured()
}

// Instrument is the key by which a step names its instrument, and the name.
func (s *Step) Instrument() (key, name string) {
	if s.Balance != nil {
		return "on", s.Balance.Name
	}
	return grammars[s.Verb].instrument, s.Measure.Name
}

// Of names what a step strengthens with: a stock, or "step 2"; "" for other steps.
func (s *Step) Of() string {
	switch {
	case s.Verb != Strengthen:
		return ""
	case s.Stock != nil:
		return s.Stock.Name
	}
	return fmt.Sprintf("step %d", s.From)
}

// options lists what a step says beside its verb and its instrument.
func (s *Step) options() (keys []string) {
	say := func(stated bool, written string) {
		if stated {
			keys = append(keys, written)
		}
	}
	say(s.WeighedBack, "weighed-back = true")
	say(s.LeftBehind.Known, textAt("left-behind", grams(s.LeftBehind.Value)))
	say(s.Vessel.Known, textAt("vessel", grams(s.Vessel.Value)))
	say(s.SeparateTare, textAt("tare", "separate"))
	say(s.Emptying == equipment.Rinsed, "rinsed = true")
	say(s.Emptying == equipment.BlownOut, "blown-out = true")
	say(s.State != "", textAt("state", string(s.State)))
	say(s.Contraction.Known, textAt("contraction", plain(100*s.Contraction.Value)+" % of volume"))
	say(s.Reading != "", textAt("reading", string(s.Reading)))
	say(s.Piece > 0, fmt.Sprintf("piece = %d", s.Piece))
	return keys
}

func textAt(key, value string) string { return key + " = " + benchfile.Quote(value) }

// displayed is a reading as the balance shows it, or in full when it cannot.
func displayed(b *equipment.Balance, reading float64) string {
	shown := b.Display(reading)
	if g, err := quantity.Parse(quantity.Mass, shown); err == nil && math.Abs(g-reading) <= 1e-12*reading {
		return shown
	}
	return plain(reading) + " g"
}

// measured is the amount of a step that measures a volume: in drops, in µL where it
// is small or a piston's below 1 mL, or in mL.
func (s *Step) measured() string {
	switch {
	case s.Measure.Kind == equipment.Dropper && s.Amount == 1:
		return "1 drop"
	case s.Measure.Kind == equipment.Dropper:
		return plain(s.Amount) + " drops"
	case s.Amount < 0.01 || s.Measure.Kind == equipment.Piston && s.Amount < 1:
		return plain(1000*s.Amount) + " µL"
	}
	return plain(s.Amount) + " mL"
}

// grams is a mass, in mg where it is small.
func grams(g float64) string {
	if g > 0 && g < 0.01 {
		return plain(1000*g) + " mg"
	}
	return plain(g) + " g"
}

// plain is the decimal that a number was read from, or is meant to be: 15
// significant digits at most, which take the rounding of binary fractions out of a
// product (IEEE 754).
func plain(x float64) string {
	return quantity.Exact(quantity.Round(x, 15))
}
