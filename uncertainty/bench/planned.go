package bench

import (
	"slices"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty/route"
)

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
		if changes[i], err = benchfile.ParseChange(aChange, c.Name+": "+c.Key+" = "+c.Value); err != nil {
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
		k.Call(theKitOfThePlan)
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
