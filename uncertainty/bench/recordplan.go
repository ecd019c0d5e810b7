package bench

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// digestedPlan is the plan of a record as it is begun, with the digest of all that counts in
// it, for a person to read and for [ParseRecord].
func digestedPlan(p *route.Prep, r *route.Route) string {
	text := planText(p, r)
	plan := mustParse(thePlan, []byte(text)).Table(plannedKey)
	header, rest, _ := strings.Cut(text, "\n")
	return header + "\n" + textAt("digest", digest(plan)) + "\n" + rest
}

// digest is the SHA-256 of a plan, without the layout, comments and the digest itself.
func digest(plan *benchfile.Table) string {
	return "SHA-256 " + sha256Of([]byte(plan.Written("digest")))
}

// sha256Of is the SHA-256 of a file in hexadecimal digits.
func sha256Of(data []byte) string { return fmt.Sprintf("%x", sha256.Sum256(data)) }

// readPlan reads what was planned: what the record carries or, where it carries nothing,
// the route of the prep as it is now. At a mistake the planned route stays nil.
func (r *recordReader) readPlan(root *benchfile.Table, now *route.Prep) {
	t := root.Table(plannedKey)
	if t == nil {
		r.PlanMissing = true
		r.Plan, r.Planned = now, findRoute(root, now)
		return
	}
	t.Call(thePlan)
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
	r.Plan, r.Planned = record.Since(own, now), own.Routes[0]
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
		if !slices.Contains(namesIn(r.own), name) && !slices.Contains(r.Newcomers, name) {
			r.Newcomers = append(r.Newcomers, name)
		}
	}
}

// supplies lists the stocks and packets that the entries name.
func (r *recordReader) supplies() (names []string) {
	for _, e := range r.entries {
		switch s := &e.Done; {
		case s.Stock != nil:
			names = append(names, s.Stock.Name)
		case s.Packet != nil:
			names = append(names, s.Packet.Name)
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
	if b != nil {
		names = append(names, b.Name)
	}
	for ; m != nil; m = m.Line.With {
		names = append(names, m.Name)
	}
	return names
}

// findRoute finds the route that was planned.
func findRoute(root *benchfile.Table, p *route.Prep) *route.Route {
	name, names := root.Text("route"), namesOf(p.Routes, routeName, nil)
	if i := slices.Index(names, name); i >= 0 {
		return p.Routes[i]
	}
	if name != "" {
		root.FailWith("route", benchfile.NoSuch("route in "+p.File, name, names))
	}
	return nil
}

// plannedKey is the key of the table in which a record carries what was planned.
const plannedKey = "planned"

// planText returns all that counts of a route as the table [planned] of a record: what
// the prep says, its kit in [planned.kit], and the route. Other routes, the limits of a
// search, prices and comments are left out. The prep must have been read from a file; of
// a nil route there are no steps.
func planText(p *route.Prep, r *route.Route) string {
	prep, kit := mustParse(p.File, p.Source), kitTable(p)
	text := "[planned]\n" + prep.Written("kit", "plan", "route", "price") +
		"\n[planned.kit]\n" + kit.Written("title", "note", "price", candidateTables)
	if r == nil {
		return text
	}
	routes := prep.Tables("route")
	i := slices.IndexFunc(routes, func(t *benchfile.Table) bool { return t.Text("name") == r.Name })
	return text + "\n[[planned.route]]\n" + routes[i].Written()
}

// mustParse is the table of a text that has been read before.
func mustParse(name string, text []byte) *benchfile.Table {
	root, err := benchfile.Parse(name, text)
	if err != nil {
		panic("bench: " + name + " cannot be read again: " + err.Error())
	}
	return root
}

// kitTable is the table of the kit of a prep, with its changes.
func kitTable(p *route.Prep) *benchfile.Table {
	changes := make([]benchfile.Change, len(p.Changes))
	for i, c := range p.Changes {
		var err error
		if changes[i], err = benchfile.ParseChange(ofMistake("a change"), c.Name+": "+c.Key+" = "+c.Value); err != nil {
			panic("bench: a change cannot be read again: " + err.Error())
		}
	}
	root, err := changedTable(p.Kit.File, p.Kit.Source, changes)
	if err != nil {
		panic("bench: a kit cannot be read again: " + err.Error())
	}
	return root
}

// readPlan reads the table that planText writes: a prep of one route with its
// kit. Mistakes are recorded in the table; with one the plan may be nil.
func readPlan(t *benchfile.Table) *route.Prep {
	if !t.Has("kit") || !t.Has("route") {
		t.Has("solute") // is no mistyped route
		t.Need("kit", "route")
		t.Accept()
		return nil
	}
	kit := new(equipment.Kit)
	if k := t.Table("kit"); k != nil {
		k.Call(ofMistake("the kit of the plan"))
		kit = readKitTable(k)
	}
	p := readPrepOn(t, kit)
	if len(p.Routes) != 1 {
		t.Fail("route", "a plan has one route", "a record is of one batch")
		return nil
	}
	return p
}

// planDifferences lists where a plan, as it was written into a record, is not what the
// prep says of the route now, and of the kit what its file says now. What has come to the
// bench since is no difference; a route that is gone is one, without its steps.
func planDifferences(plan *benchfile.Table, now *route.Prep) (prep, kit []benchfile.Difference) {
	then := plan.Tables("route")[0]
	r, err := now.Route(then.Text("name"))
	if err != nil {
		r = nil
	}
	today := mustParse(thePlan, []byte(planText(now, r))).Table(plannedKey)
	prep = benchfile.Differences(plan, today, "kit", "route", "digest")
	if r == nil {
		prep = append(prep, benchfile.Difference{Of: "the route " + then.Text("name"), Then: then.Written()})
	} else {
		prep = append(prep, benchfile.Differences(then, today.Tables("route")[0])...)
	}
	hasCome := func(d benchfile.Difference) bool { return d.Key == "" && d.Then == "" }
	kit = benchfile.Differences(plan.Table("kit"), today.Table("kit"))
	return slices.DeleteFunc(prep, hasCome), slices.DeleteFunc(kit, hasCome)
}

// namesIn lists what a step can use: the instruments on the bench, the stocks and the packets.
func namesIn(p *route.Prep) []string {
	names := p.Kit.Names()
	for _, s := range p.Stocks {
		names = append(names, s.Name)
	}
	for _, k := range p.Packets {
		names = append(names, k.Name)
	}
	return names
}
