package policy

import (
	"cmp"
	"math"
	"slices"
)

// Two figures that differ by less count as equal: chances, what the target is held within (as a
// part of the least), volumes in mL, and what the target is held within (with the rounding of floating point).
const (
	sameChance = 0.001
	sameHold   = 0.1
	sameVolume = 1e-9
)

// Choice is what has been chosen of some routes.
type Choice struct {
	// Use is the place of the route, -1 where none is possible.
	Use int
	// Fell is the rule by which each other fell behind.
	Fell []Rule
	// Least of all that had so many measurements as the one that is chosen, in mL, when
	// measurements were counted.
	Least float64
}

// chooser holds which routes are left.
type chooser struct {
	Question
	all  []Figures
	left []int
	Choice
}

// Choose applies the rules to some routes.
func (q Question) Choose(all []Figures) Choice {
	c := &chooser{Question: q, all: all, Choice: Choice{Use: -1, Fell: make([]Rule, len(all))}}
	for i := range all {
		if all[i].Possible {
			c.left = append(c.left, i)
		} else {
			c.Fell[i] = Impossible
		}
	}
	if len(c.left) == 0 {
		return c.Choice
	}
	c.narrow(Use, func(f *Figures) bool { return f.Usable })
	c.narrow(Doubt, func(f *Figures) bool { return !f.Doubted })
	c.bySureness()
	if q.Tolerant {
		c.narrow(Misreading, func(f *Figures) bool { return !f.OutsideIfMisread })
	}
	c.byOperations()
	c.narrowTo(LeftOver, q.Near()+sameVolume, func(f *Figures) float64 { return f.LeftOver })
	c.narrow(LowOnScale, func(f *Figures) bool { return !f.LowOnScale })
	c.narrow(BothWays, func(f *Figures) bool { return !f.BothWays })
	c.narrow(TooLarge, func(f *Figures) bool { return !f.TooLarge })
	c.narrowTo(Roundness, 0, func(f *Figures) float64 { return f.Roundness })
	c.narrowTo(Solute, 0, func(f *Figures) float64 { return f.Solute })
	c.bySurer()
	c.byName()
	c.Use = c.left[0]
	return c.Choice
}

// Handier compares two routes by the rules of [Question.Choose] that follow what is left over, as far as these need
// no chance: it is negative where f goes first.
func (f *Figures) Handier(g *Figures) int {
	return cmp.Or(falseFirst(f.LowOnScale, g.LowOnScale), falseFirst(f.BothWays, g.BothWays), falseFirst(f.TooLarge, g.TooLarge), cmp.Compare(f.Roundness, g.Roundness), cmp.Compare(f.Solute, g.Solute))
}

func falseFirst(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return 1
	}
	return -1
}

// narrow keeps those that are good, if any is.
func (c *chooser) narrow(by Rule, good func(*Figures) bool) (some bool) {
	var kept []int
	for _, i := range c.left {
		if good(&c.all[i]) {
			kept = append(kept, i)
		}
	}
	if len(kept) == 0 {
		return false
	}
	for _, i := range c.left {
		if !good(&c.all[i]) {
			c.Fell[i] = by
		}
	}
	c.left = kept
	return true
}

// narrowTo keeps those of which a figure is no more than the least and a bit. A figure that is no
// number is never the least.
func (c *chooser) narrowTo(by Rule, above float64, figure func(*Figures) float64) {
	least := c.least(func(f *Figures) bool { return true }, figure)
	c.narrow(by, func(f *Figures) bool { return figure(f) <= least+above })
}

// least of a figure among those that count, infinite without any.
func (c *chooser) least(counts func(*Figures) bool, figure func(*Figures) float64) float64 {
	least := math.Inf(1)
	for _, i := range c.left {
		if f := &c.all[i]; counts(f) && figure(f) < least {
			least = figure(f)
		}
	}
	return least
}

// bySureness keeps those with half the risk, else those with the chance, else the surest.
func (c *chooser) bySureness() {
	if !c.Tolerant {
		within := func(f *Figures) float64 { return f.Within }
		c.narrowTo(Holding, float64(sameHold*c.least(func(*Figures) bool { return true }, within))+sameVolume, within)
		return
	}
	if c.narrow(HalfRisk, func(f *Figures) bool { return f.Chance >= c.Halved() }) {
		for _, f := range c.fallen(HalfRisk) {
			if c.all[f].Chance < c.Asked {
				c.Fell[f] = Meeting
			}
		}
		return
	}
	if !c.narrow(Meeting, func(f *Figures) bool { return f.Chance >= c.Asked }) {
		c.narrowTo(Chance, sameChance, func(f *Figures) float64 { return -f.Chance })
	}
}

// has reports whether one of those that are left is good.
func (c *chooser) has(good func(*Figures) bool) bool {
	return slices.ContainsFunc(c.left, func(i int) bool { return good(&c.all[i]) })
}

// fallen are those that fell by a rule.
func (c *chooser) fallen(by Rule) (list []int) {
	for i, rule := range c.Fell {
		if rule == by {
			list = append(list, i)
		}
	}
	return list
}

// byOperations keeps those with so many measurements that what they save is worth it: of the least
// left over with each number n the one where this and n halves of what two must save are least,
// so that no other number saves more for what it takes. Ties go to more measurements, since what
// is worth two saves just as much. Where four have half the risk, nothing is worth more than six.
func (c *chooser) byOperations() {
	if c.Tolerant && c.has(func(f *Figures) bool { return f.Operations <= Enough && f.Chance >= c.Halved() }) {
		c.narrow(Operations, func(f *Figures) bool { return f.Operations <= MostBeside })
	}
	cost := func(f *Figures) float64 { return c.Cost(f.Operations, f.LeftOver) }
	least, most := c.least(func(*Figures) bool { return true }, cost), math.MinInt
	for _, i := range c.left {
		if f := &c.all[i]; cost(f) <= least+sameVolume {
			most = max(most, f.Operations)
		}
	}
	chosen := func(f *Figures) bool { return f.Operations == most }
	c.Least = c.least(chosen, func(f *Figures) float64 { return f.LeftOver })
	c.narrow(Operations, chosen)
}

// bySurer keeps the surest, or without a tolerance the tightest, before names decide.
func (c *chooser) bySurer() {
	if c.Tolerant {
		c.narrowTo(Surer, sameChance, func(f *Figures) float64 { return -f.Chance })
		return
	}
	c.narrowTo(Surer, 0, func(f *Figures) float64 { return f.Within })
}

// byName keeps the first by its name, and of those with one name the first.
func (c *chooser) byName() {
	first := c.left[0]
	for _, i := range c.left {
		if c.all[i].Name < c.all[first].Name {
			first = i
		}
	}
	for _, i := range c.left {
		if i != first {
			c.Fell[i] = Name
		}
	}
	c.left = []int{first}
}
