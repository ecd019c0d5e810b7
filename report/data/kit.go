package data

import (
	"cmp"
	"slices"

	"minim/equipment"
	"minim/report/words/kits"
)

// Kit is a kit. Its table has a row for each instrument.
func Kit(k *equipment.Kit) Data {
	list := func() []object {
		return slices.Concat(instruments(&k.Instruments, true), instruments(&k.Candidates, false))
	}
	return records(func() object {
		return object{
			{"schema", "minim.kit/1"}, {"invented_example", k.Invented}, {"title", k.Title}, {"note", k.Note}, {"kit", k.File}, {"instruments", list()}, {"own_readings", ownReadings(k)}, {"check_weights", checkWeights(k)},
		}
	}, list)
}

// ownReadings are sets of readings of volumes, with what their means say of the pieces.
func ownReadings(k *equipment.Kit) []object {
	out := []object{}
	for _, m := range slices.Concat(k.Measures, k.Candidates.Measures) {
		for i := range m.Judged {
			j := &m.Judged[i]
			out = append(out, object{
				{"name", m.Name}, {"of", orNull(string(j.Of))}, {"mark_mL", positive(j.Mark)}, {"readings", int(j.Readings())}, {"mean_mL", j.Mean},
				{"standard_deviation_mL", j.S}, {"degrees_of_freedom", j.DegreesOfFreedom}, {"expected_mL", only(j.Compared(), j.Expected)},
				{"chance_of_lying_so_far_off", only(j.Compared(), j.Chance)}, {"counts", string(j.Standing)}, {"liquid", orNull(j.Liquid)},
			})
		}
	}
	return out
}

// checkWeights are sets of readings of check weights, with what their means say of the balances.
func checkWeights(k *equipment.Kit) []object {
	out := []object{}
	for _, b := range slices.Concat(k.Balances, k.Candidates.Balances) {
		for i := range b.Checks {
			c := &b.Checks[i]
			out = append(out, object{
				{"name", b.Name}, {"weight_g", c.Weight.Mass}, {"weight_class", orNull(c.Weight.Class)}, {"weight_standard_uncertainty_g", c.Weight.Uncertainty},
				{"readings", int(c.Readings())}, {"mean_g", c.Mean}, {"standard_deviation_g", c.S}, {"degrees_of_freedom", c.DegreesOfFreedom},
				{"chance_of_lying_so_far_off", only(c.Compared(), c.Chance)}, {"counts", string(c.Standing)},
			})
		}
	}
	return out
}

// instruments are those of a kit. Amounts are in its unit, g or mL; null is what an
// instrument does not have, or what is not stated.
func instruments(all *equipment.Instruments, owned bool) []object {
	out := []object{}
	for _, b := range all.Balances {
		out = append(out, slices.Concat(object{
			{"name", b.Name}, {"kind", "balance"}, {"owned", owned}, {"count", b.Count}, {"unit", "g"}, {"capacity", b.Capacity}, {"division", b.Readability},
			{"limit_of_error", stated(b.Linearity)}, {"repeatability", only(b.Repeatability.Known, b.Repeatability.S)},
			{"standard_uncertainty", b.Uncertainty(kits.SampleOf(b))}, {"least_to_10_percent", ifAny(b.Least(0.10))}, {"least_to_5_percent", ifAny(b.Least(0.05))},
			{"class", nil}, {"class_trust", nil}, {"linearity_law", only(!b.Weighing.Known, cmp.Or(string(b.Law), "in-two-parts"))},
		}, priced(b.Price)))
	}
	for _, m := range all.Measures {
		class, trust := any(nil), any(nil)
		if m.Class != nil {
			class, trust = orNull(m.Class.String()), orNull(m.Class.Trust)
		}
		out = append(out, slices.Concat(object{
			{"name", m.Name}, {"kind", string(m.Kind)}, {"owned", owned}, {"count", m.Count}, {"unit", "mL"}, {"capacity", m.Capacity}, {"division", positive(m.Division)},
			{"limit_of_error", only(m.Bias.Shape != equipment.Gauss, m.Bias.Limit)}, {"repeatability", only(m.Repeatability.Known, m.Repeatability.S)},
			{"standard_uncertainty", m.Uncertainty(m.Capacity)}, {"least_to_10_percent", ifAny(m.Least(0.10))}, {"least_to_5_percent", ifAny(m.Least(0.05))},
			{"class", class}, {"class_trust", trust}, {"linearity_law", nil},
		}, priced(m.Price)))
	}
	return out
}

// ifAny is null for an amount that there is none of.
func ifAny(amount float64, ok bool) any { return only(ok, amount) }

// Classes are the class tables, with a row for each of theirs; what may not meet is not among
// the rows.
func Classes(t *kits.Tables) Data {
	list := func() []object { return each(t.Classes, class) }
	return records(func() object {
		return object{{"schema", "minim.classes/1"}, {"classes", list()}, {"check_weights", each(t.Weights, weight)}, {"stocks", each(t.Stocks, stockOf(t.StockRows))}, {"may_not_meet", each(t.MayNotMeet, func(m *equipment.Incompatible) object {
			return object{
				{"first", m.A}, {"second", m.B}, {"what_happens", m.Happens}, {"gas_or_product", orNull(m.Product)}, {"trust", m.Trust}, {"source", orNull(m.Source)},
			}
		})}}
	}, list)
}

// weight has the limits of check weights of a nominal mass, by class; null where there is none.
func weight(r *equipment.WeightRow) object {
	out := object{{"nominal_g", r.Nominal}}
	for i, class := range equipment.WeightClasses() {
		out = append(out, field{"limit_" + class + "_mg", positive(r.Limits()[i])})
	}
	return append(out, object{{"trust", r.Trust}, {"source", r.Source}}...)
}

// stockOf is a substance with the densities of its solutions, of all rows; null is what it
// does not have.
func stockOf(rows []equipment.StockRow) func(**equipment.StockSubstance) object {
	return func(p **equipment.StockSubstance) object {
		s, densities := *p, []object{}
		for _, r := range rows {
			if r.Name == s.Name {
				densities = append(densities, object{
					{"strength_pct_ww", r.Percent}, {"density_g_per_mL", r.Density}, {"limit_g_per_mL", r.Limit}, {"usual_bottle", orNull(r.Bottle)},
					{"trust", r.Trust}, {"source", r.Source}, {"note", orNull(r.Note)},
				})
			}
		}
		return object{
			{"name", s.Name}, {"as", s.As}, {"also_as", orNull(s.AlsoAs)}, {"also_holds", positive(s.AlsoHolds)}, {"trust", orNull(s.Trust)},
			{"source", orNull(s.Source)}, {"note", orNull(s.Note)}, {"densities", densities},
		}
	}
}

// class is a row of a class table, in g for a balance and in mL for all else; null is
// what the row does not have.
func class(c *equipment.Class) object {
	unit := "mL"
	if c.Kind == "balance" {
		unit = "g"
	}
	bore, _ := c.Bores()
	return object{
		{"kind", c.Kind}, {"form", orNull(c.Form)}, {"standard", c.Published()}, {"superseded_by_edition", orNull(c.Superseded)}, {"class", orNull(c.Name)}, {"marked", orNull(c.Marked)}, {"unit", unit},
		{"capacity", positive(c.Capacity)}, {"division", positive(c.Division)},
		{"limit_of_error", positive(c.Tolerance)}, {"limit_of_error_share", positive(c.Share)},
		{"limit_below_half_fixed", positive(c.BelowHalfFixed)}, {"limit_below_half_share", positive(c.BelowHalfShare)},
		{"random", positive(c.Random)}, {"dead_space", positive(c.DeadSpace)}, {"bore_mm", positive(c.Bore)}, {"numbered_every", positive(c.Numbered)},
		{"trust", c.Trust}, {"division_trust", orNull(c.DivisionTrust)}, {"random_trust", orNull(c.RandomTrust)}, {"dead_space_trust", orNull(c.DeadSpaceTrust)},
		{"bore_trust", orNull(c.BoreTrust)}, {"numbered_trust", orNull(c.NumberedTrust)}, {"source", c.Source}, {"note", orNull(c.Note)},
		{"bore_least_mm", positive(bore.Least)}, {"bore_greatest_mm", positive(bore.Greatest)}, {"bore_source", orNull(bore.Source)},
	}
}
