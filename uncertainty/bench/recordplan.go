package bench

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty/route"
)

// digestedPlan is the plan of a record as it is begun, with the digest of all that counts in
// it, for a person to read and for [ParseRecord].
func digestedPlan(p *route.Prep, r *route.Route) string {
	text := planText(p, r)
	plan := mustParse("the plan", []byte(text)).Table(plannedKey)
	header, rest, _ := strings.Cut(text, "\n")
	return header + "\n" + textAt("digest", digest(plan)) + "\n" + rest
}

// digest is the SHA-256 of a plan, without the layout, comments and the digest itself.
func digest(plan *benchfile.Table) string {
	sum := sha256.Sum256([]byte(plan.Written("digest")))
	return "SHA-256 " + hex.EncodeToString(sum[:])
}

// readPlan reads what was planned: what the record carries or, where it carries nothing,
// the route of the prep as it is now. At a mistake the planned route stays nil.
func (r *recordReader) readPlan(root *benchfile.Table, now *route.Prep) {
	t := root.Table(plannedKey)
	if t == nil {
		r.PlanMissing = true
		r.Plan, r.Planned = now, findRoute(root, now)
		return
	}
	t.Call("the plan")
	r.checkDigest(t)
	own := readPlan(t)
	if own == nil || root.Mistaken() {
		return
	}
	if own.Routes[0].Name != root.Text("route") {
		root.Fail("route", "the plan in this record is of the route "+own.Routes[0].Name, "write its name")
		return
	}
	r.own = own
	r.Plan, r.Planned = own.Since(now), own.Routes[0]
}

// checkDigest refuses a plan that is not as it was when the record was begun.
func (r *recordReader) checkDigest(t *benchfile.Table) {
	switch said := t.Text("digest"); {
	case said == "":
		r.Undigested = true
	case said != digest(t):
		t.Fail("digest", "the plan in this record is not as it was when the record was begun",
			"put it back as it was; or take this line out, and the plan counts as it stands, which is said of all that follows from it")
	}
}

// compareToNow notes where the plan that the record carries and the prep with its kit as
// they are now do not agree, of instruments where the batch uses them.
func (r *recordReader) compareToNow(plan *benchfile.Table) {
	if r.PlanMissing {
		return
	}
	used := r.instruments()
	prep, kit := planDifferences(plan, r.Now)
	r.Differences = prep
	for _, d := range kit {
		if !slices.Contains(r.own.Kit.Names(), d.Item) || slices.Contains(used, d.Item) {
			r.Differences = append(r.Differences, d)
		}
	}
	for _, name := range append(used, r.supplies()...) {
		if !slices.Contains(r.own.Names(), name) {
			r.Newcomers = append(r.Newcomers, name)
		}
	}
}

// supplies lists the stocks and packets that the entries name.
func (r *recordReader) supplies() (names []string) {
	for _, e := range r.entries {
		name := ""
		switch s := &e.Done; {
		case s.Stock != nil:
			name = s.Stock.Name
		case s.Packet != nil:
			name = s.Packet.Name
		}
		if name != "" && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// instruments lists those that the batch was to be made with, and was made with.
func (r *recordReader) instruments() (names []string) {
	for i := range r.Planned.Steps {
		names = addInstruments(names, r.Planned.Steps[i].Balance, r.Planned.Steps[i].Measure)
	}
	for _, e := range r.entries {
		names = addInstruments(names, e.Done.Balance, e.Done.Measure)
	}
	if l := r.Plan.Ladder; l != nil {
		names = addInstruments(addInstruments(names, nil, l.With), nil, l.In)
	}
	return names
}

// addInstruments adds the names of two instruments, of which either may be nil, and of that
// with which a line was set.
func addInstruments(names []string, b *equipment.Balance, m *equipment.Measure) []string {
	add := func(name string) {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if b != nil {
		add(b.Name)
	}
	for m != nil {
		add(m.Name)
		m = m.Line.With
	}
	return names
}

// findRoute finds the route that was planned.
func findRoute(root *benchfile.Table, p *route.Prep) *route.Route {
	name := root.Text("route")
	names := make([]string, len(p.Routes))
	for i, r := range p.Routes {
		if names[i] = r.Name; r.Name == name {
			return r
		}
	}
	if name != "" {
		root.FailChoice("route", "route in "+p.File, name, names, "")
	}
	return nil
}
