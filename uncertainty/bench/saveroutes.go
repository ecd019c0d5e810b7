package bench

import (
	"fmt"
	"path/filepath"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/report/words/verb"
	"minim/uncertainty/route"
)

// SaveRoutes returns the text of a prep file that has the given routes instead of
// its own, at the end, and names the kit at the given path; an empty path leaves
// what it names. All else stays as it is, but for blank lines round what goes and
// comes. Comments between its routes go with them.
func SaveRoutes(text []byte, kit string, routes []*route.Route) ([]byte, error) {
	if strings.TrimSpace(kit) != kit || quantity.Printable(kit) != kit {
		return nil, fmt.Errorf("a prep cannot name a kit with the path %q", kit)
	}
	written := make([]string, len(routes))
	for i, r := range routes {
		written[i] = writtenRoute(r)
	}
	return benchfile.Rewritten(ofMistake("the prep"), text, "route", "kit", filepath.ToSlash(kit), strings.Join(written, "\n"))
}

// writtenRoute is the [[route]] table of a route.
func writtenRoute(r *route.Route) string {
	var b strings.Builder
	b.WriteString("[[route]]\nname = " + benchfile.Quote(r.Name) + "\nsteps = [\n")
	for i := range r.Steps {
		b.WriteString("  { " + strings.Join(Written(&r.Steps[i]), ", ") + " },\n")
	}
	b.WriteString("]\n")
	return b.String()
}

// Written lists the keys of a step with their values, as a file holds them: the verb,
// the instrument, and what else it says.
func Written(s *route.Step) []string { return append(mainKeys(s), options(s)...) }

// mainKeys lists the keys that a step cannot do without, with their values: the verb with its
// amount, what it takes, and the instrument.
func mainKeys(s *route.Step) []string {
	switch {
	case s.Verb == route.TakeAll:
		return append([]string{textAt(string(route.Take), "all")}, ofWhich(s)...)
	case s.Verb == route.Start:
		return []string{textAt(string(route.Start), s.Stock.Name)}
	case s.Packet != nil:
		return []string{textAt(string(route.UsePacket), s.Packet.Name)}
	}
	keys := []string{textAt(string(s.Verb), verb.AmountInFile(s))}
	return append(append(keys, ofWhich(s)...), textAt(verb.InstrumentInFile(s)))
}

// ofWhich is the key of the solution that a step takes from, where it says so.
func ofWhich(s *route.Step) []string {
	if of := verb.OfWhich(s); of != "" {
		return []string{textAt("of", of)}
	}
	return nil
}

// options lists what a step says beside its verb and its instrument.
func options(s *route.Step) (keys []string) {
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
	say(s.Contraction.Known, textAt("contraction", fmt.Sprintf("%s %% of %s", quantity.Plain(100*s.Contraction.Value), "volume")))
	say(s.Open.Known, textAt("open", quantity.Plain(s.Open.Value)+" min"))
	say(s.Mouth.Known, textAt("mouth", quantity.Plain(s.Mouth.Value)+" mm"))
	say(s.Reading != "", textAt("reading", string(s.Reading)))
	say(s.Piece > 0, fmt.Sprintf("piece = %d", s.Piece))
	return keys
}

func textAt(key, value string) string { return key + " = " + benchfile.Quote(value) }

// grams is a mass, in mg where it is small.
func grams(g float64) string {
	if g > 0 && g < 0.01 {
		return quantity.Plain(1000*g) + " mg"
	}
	return quantity.Plain(g) + " g"
}
