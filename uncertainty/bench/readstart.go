package bench

import (
	"errors"
	"fmt"
	"slices"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty/route"
)

// readStock reads a solution that stands ready.
func (p prepReader) readStock(t *benchfile.Table) *route.Stock {
	t.Need("name", "strength")
	s := &route.Stock{Name: t.Text("name"), Solvent: t.Text("solvent"), Loss: shareOf(t, "loss", "strength")}
	if slices.ContainsFunc(p.Stocks, func(o *route.Stock) bool { return o.Name == s.Name && s.Name != "" }) {
		t.Fail("name", "there are two stocks called \""+s.Name+"\"", "give each its own name")
	}
	parse := func(text string) (float64, error) {
		v, err := p.ParseStrength(text)
		if errors.Is(err, route.ErrFollows) {
			v, err = route.ParseStrength(text)
		}
		switch {
		case err != nil:
			return 0, err
		case s.Unit.Name != "" && v.Unit != s.Unit:
			return 0, &quantity.Error{Found: text, Message: fmt.Sprintf("%s and %s are mixed", s.Unit.Name, v.Unit.Name), Hint: "state one strength in one unit"}
		}
		s.Unit = v.Unit
		return v.Value, nil
	}
	s.Strength = estimate(t, "strength", parse, parse)
	s.Volume = estimate(t, "volume", route.ParseStockVolume, route.ParseStockVolume)
	return s
}

// readPacket reads a bought amount that is used whole.
func (p prepReader) readPacket(t *benchfile.Table) *route.Packet {
	t.Need("name", "content")
	k := &route.Packet{Name: t.Text("name")}
	if slices.ContainsFunc(p.Packets, func(o *route.Packet) bool { return o.Name == k.Name && k.Name != "" }) {
		t.Fail("name", "there are two packets called \""+k.Name+"\"", "give each its own name")
	}
	parse := func(text string) (float64, error) {
		v, err := quantity.Parse(quantity.Mass, text)
		if err == nil && !quantity.Limits.Supply.Holds(v) {
			err = &quantity.Error{Found: text, Message: fmt.Sprintf("no packet holds %q", text), Hint: "state a mass between 1 µg and 1000 kg"}
		}
		return v, err
	}
	k.Content = estimate(t, "content", parse, parse)
	return k
}

// find returns the item of that name that a start names, or records a mistake.
func find[T any](t *benchfile.Table, verb route.Verb, table string, items []*T, name func(*T) string) *T {
	wanted := t.Text(string(verb))
	var names []string
	for _, item := range items {
		if name(item) == wanted {
			return item
		}
		names = append(names, name(item))
	}
	switch {
	case wanted == "" || slices.Contains(names, ""): // one has no name, which is the mistake
	case len(names) == 0:
		t.FailFor(t.Root(), []string{table}, string(verb), "the prep has no [["+table+"]]", "add one, with its name")
	default:
		t.FailAmong([]string{table}, string(verb), "[["+table+"]]", wanted, names)
	}
	return nil
}
