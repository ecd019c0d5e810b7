package route

import (
	"slices"

	"minim/equipment"
	"minim/equipment/benchfile"
)

// PlannedKey is the key of the table in which a record carries what was planned.
const PlannedKey = "planned"

// WrittenPlan returns all that counts of a route as the table [planned] of a record: what
// the prep says, its kit in [planned.kit], and the route. Other routes, the limits of a
// search, prices and comments are left out. The prep must have been read from a file; of
// a nil route there are no steps.
func (p *Prep) WrittenPlan(r *Route) string {
	text := "[planned]\n" + p.source.Written("kit", "plan", "route", "price") + "\n[planned.kit]\n" + p.Kit.Written()
	if r == nil {
		return text
	}
	routes := p.source.Tables("route")
	i := slices.IndexFunc(routes, func(t *benchfile.Table) bool { return t.Is("name", r.Name) })
	return text + "\n[[planned.route]]\n" + routes[i].Written()
}

// ReadPlan reads the table that [Prep.WrittenPlan] writes: a prep of one route with its
// kit. Mistakes are recorded in the table; with one the plan may be nil.
func ReadPlan(t *benchfile.Table) *Prep {
	if !t.Has("kit") || !t.Has("route") {
		t.Has("solute") // is no mistyped route
		t.Need("kit", "route")
		t.Accept()
		return nil
	}
	kit := new(equipment.Kit)
	if k := t.Table("kit"); k != nil {
		k.Call("the kit of the plan")
		kit = equipment.ReadKit(k)
	}
	p := readPrepOn(t, kit)
	if len(p.Routes) != 1 {
		t.Fail("route", "a plan has one route", "a record is of one batch")
		return nil
	}
	return p
}

// PlanDifferences lists where a plan, as it was written into a record, is not what the
// prep says of the route now, and of the kit what its file says now. What has come to the
// bench since is no difference; a route that is gone is one, without its steps.
func PlanDifferences(plan *benchfile.Table, now *Prep) (prep, kit []benchfile.Difference) {
	then := plan.Tables("route")[0]
	r, err := now.Route(then.Text("name"))
	if err != nil {
		r = nil
	}
	root, err := benchfile.Parse("the plan", []byte(now.WrittenPlan(r)))
	if err != nil {
		panic("route: a plan was written that cannot be read: " + err.Error())
	}
	today := root.Table(PlannedKey)
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

// Since returns the plan of a batch with what has come since, by the prep as it is now:
// instruments, stocks and packets of other names, the limits of a search and the prices.
// Of the hazards those of both hold, since they are not planned but found out.
func (p *Prep) Since(now *Prep) *Prep {
	q := *p
	q.File, q.Digest, q.Limits, q.Changes, q.AssumedFactor = now.File, now.Digest, now.Limits, now.Changes, now.AssumedFactor
	q.Kit = p.Kit.WithMissing(now.Kit)
	q.Kit.File, q.Kit.Digest, q.Kit.Invented = now.Kit.File, now.Kit.Digest, now.Kit.Invented
	if now.Solute.Name != p.Solute.Name {
		return &q // the prep makes something else by now
	}
	q.Solute.Price, q.Solute.Hazards = now.Solute.Price, bothWords(p.Solute.Hazards, now.Solute.Hazards)
	q.Stocks = withMissing(p.Stocks, p.counted(now.Stocks), func(s *Stock) string { return s.Name })
	q.Packets = withMissing(p.Packets, now.Packets, func(k *Packet) string { return k.Name })
	if now.Solvent.Name == p.Solvent.Name {
		q.Solvent.Price, q.Solvent.Hazards = now.Solvent.Price, bothWords(p.Solvent.Hazards, now.Solvent.Hazards)
	}
	q.Hazards = slices.Clone(p.Hazards)
	for _, h := range now.Hazards {
		q.addHazard(h)
	}
	return &q
}

// Names lists what a step can use: the instruments on the bench, the stocks and the packets.
func (p *Prep) Names() []string {
	names := p.Kit.Names()
	for _, s := range p.Stocks {
		names = append(names, s.Name)
	}
	for _, k := range p.Packets {
		names = append(names, k.Name)
	}
	return names
}

// bothWords are hazard words of two preps: what one knows counts more than that the other
// knows of none.
func bothWords(then, now []string) []string {
	words := addWords(slices.Clone(then), now)
	if len(words) > 1 {
		words = slices.DeleteFunc(words, NoneKnown)
	}
	return words
}

// counted are the stocks of which the strength can be had in what the models carry.
func (p *Prep) counted(stocks []*Stock) []*Stock {
	return slices.DeleteFunc(slices.Clone(stocks), func(s *Stock) bool { return p.canConvert(Strength{Unit: s.Unit}) != nil })
}

// withMissing appends the items that the list has none of the name of.
func withMissing[T any](list, more []*T, name func(*T) string) []*T {
	list = slices.Clone(list)
	for _, item := range more {
		if !slices.ContainsFunc(list, func(had *T) bool { return name(had) == name(item) }) {
			list = append(list, item)
		}
	}
	return list
}

// addHazard adds words that hold from a strength on, which another prep states. They stand
// in place of others only where both say so; a strength that means nothing here counts as
// reached.
func (p *Prep) addHazard(h Hazard) {
	s, err := p.parseStrength(h.From.Text)
	h.From = Strength{Unit: p.Target.Unit, Text: h.From.Text}
	if err == nil {
		h.From.Value = p.inTargetUnit(s)
	}
	for i := range p.Hazards {
		if had := &p.Hazards[i]; had.From.Value == h.From.Value {
			had.Words, had.Replaces = addWords(slices.Clone(had.Words), h.Words), had.Replaces && h.Replaces
			return
		}
	}
	h.Replaces = false
	p.Hazards = append(p.Hazards, h)
}
