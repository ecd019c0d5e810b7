package data

import (
	"minim/equipment"
	"minim/report/words/kits"
)

// The forms of the JSON of a kit and of the class tables.
const (
	kitSchema     = "minim.kit/1"
	classesSchema = "minim.classes/1"
)

type kitJSON struct {
	Schema      string           `json:"schema"`
	Invented    bool             `json:"invented_example"`
	Title       string           `json:"title"`
	Note        string           `json:"note"`
	Kit         string           `json:"kit"`
	Instruments []instrumentJSON `json:"instruments"`
}

// instrumentJSON is an instrument of a kit. Amounts are in its unit, g or mL; null is what it
// does not have, or what is not stated.
type instrumentJSON struct {
	Name       string  `json:"name"`
	Kind       string  `json:"kind"`
	Owned      bool    `json:"owned"`
	Count      int     `json:"count"`
	Unit       string  `json:"unit"`
	Capacity   number  `json:"capacity"`
	Division   *number `json:"division"`
	Limit      *number `json:"limit_of_error"`
	Spread     *number `json:"repeatability"`
	U          number  `json:"standard_uncertainty"`
	LeastTo10  *number `json:"least_to_10_percent"`
	LeastTo5   *number `json:"least_to_5_percent"`
	Class      *string `json:"class"`
	ClassTrust *string `json:"class_trust"`
	Price      *number `json:"price"`
	Currency   *string `json:"currency"`
}

// KitJSON is a kit in full precision.
func KitJSON(k *equipment.Kit) ([]byte, error) { return indented(kitToJSON(k)) }

// KitCSV is a row for each instrument, with columns as in the JSON.
func KitCSV(k *equipment.Kit) ([]byte, error) {
	return recordsCSV(kitToJSON(k).Instruments, "name", "kind", "owned", "count", "unit", "capacity", "division", "limit_of_error", "repeatability",
		"standard_uncertainty", "least_to_10_percent", "least_to_5_percent", "class", "class_trust", "price", "currency")
}

func kitToJSON(k *equipment.Kit) *kitJSON {
	out := &kitJSON{Schema: kitSchema, Invented: k.Invented, Title: k.Title, Note: k.Note, Kit: k.File, Instruments: []instrumentJSON{}}
	for _, list := range []*equipment.Instruments{&k.Instruments, &k.Candidates} {
		for _, b := range list.Balances {
			out.Instruments = append(out.Instruments, balanceToJSON(b, list == &k.Instruments))
		}
		for _, m := range list.Measures {
			out.Instruments = append(out.Instruments, measureToJSON(m, list == &k.Instruments))
		}
	}
	return out
}

func balanceToJSON(b *equipment.Balance, owned bool) instrumentJSON {
	out := instrumentJSON{
		Name: b.Name, Kind: "balance", Owned: owned, Count: b.Count, Unit: "g", Capacity: number(b.Capacity), Division: some(b.Readability),
		U: number(b.Uncertainty(kits.SampleOf(b))), LeastTo10: ifAny(b.Least(0.10)), LeastTo5: ifAny(b.Least(0.05)), Limit: stated(b.Linearity),
	}
	if b.Repeatability.Known {
		out.Spread = some(b.Repeatability.S)
	}
	out.price(b.Price)
	return out
}

func measureToJSON(m *equipment.Measure, owned bool) instrumentJSON {
	out := instrumentJSON{
		Name: m.Name, Kind: string(m.Kind), Owned: owned, Count: m.Count, Unit: "mL", Capacity: number(m.Capacity), Division: positive(m.Division),
		U: number(m.Uncertainty(m.Capacity)), LeastTo10: ifAny(m.Least(0.10)), LeastTo5: ifAny(m.Least(0.05)),
	}
	if m.Bias.Shape != equipment.Gauss {
		out.Limit = some(m.Bias.Limit)
	}
	if m.Repeatability.Known {
		out.Spread = some(m.Repeatability.S)
	}
	if m.Class != nil {
		out.Class, out.ClassTrust = orNull(m.Class.String()), orNull(m.Class.Trust)
	}
	out.price(m.Price)
	return out
}

func (i *instrumentJSON) price(p equipment.Price) {
	if p.Stated() {
		i.Price, i.Currency = some(p.Amount), orNull(p.Currency)
	}
}

// ifAny is null for an amount that there is none of.
func ifAny(amount float64, ok bool) *number {
	if !ok {
		return nil
	}
	return some(amount)
}

type classesJSON struct {
	Schema     string      `json:"schema"`
	Classes    []classJSON `json:"classes"`
	MayNotMeet []pairJSON  `json:"may_not_meet"`
}

// classJSON is a row of a class table, in g for a balance and in mL for all else; null is
// what the row does not have.
type classJSON struct {
	Kind           string  `json:"kind"`
	Form           *string `json:"form"`
	Published      string  `json:"standard"`
	Name           *string `json:"class"`
	Marked         *string `json:"marked"`
	Unit           string  `json:"unit"`
	Capacity       *number `json:"capacity"`
	Division       *number `json:"division"`
	Tolerance      *number `json:"limit_of_error"`
	Share          *number `json:"limit_of_error_share"`
	BelowHalfFixed *number `json:"limit_below_half_fixed"`
	BelowHalfShare *number `json:"limit_below_half_share"`
	Random         *number `json:"random"`
	DeadSpace      *number `json:"dead_space"`
	Bore           *number `json:"bore_mm"`
	Numbered       *number `json:"numbered_every"`
	Trust          string  `json:"trust"`
	DivisionTrust  *string `json:"division_trust"`
	RandomTrust    *string `json:"random_trust"`
	DeadSpaceTrust *string `json:"dead_space_trust"`
	BoreTrust      *string `json:"bore_trust"`
	NumberedTrust  *string `json:"numbered_trust"`
	Source         string  `json:"source"`
	Note           *string `json:"note"`
}

type pairJSON struct {
	First   string  `json:"first"`
	Second  string  `json:"second"`
	Happens string  `json:"what_happens"`
	Product *string `json:"gas_or_product"`
	Trust   string  `json:"trust"`
	Source  *string `json:"source"`
}

// ClassesJSON is the class tables in full precision.
func ClassesJSON(t *kits.Tables) ([]byte, error) {
	out := &classesJSON{Schema: classesSchema, Classes: []classJSON{}, MayNotMeet: []pairJSON{}}
	for _, c := range t.Classes {
		out.Classes = append(out.Classes, classToJSON(c))
	}
	for i := range t.MayNotMeet {
		m := &t.MayNotMeet[i]
		out.MayNotMeet = append(out.MayNotMeet, pairJSON{m.A, m.B, m.Happens, orNull(m.Product), m.Trust, orNull(m.Source)})
	}
	return indented(out)
}

// ClassesCSV is a row for each row of the class tables, with columns as in the JSON; what may
// not meet is not among them.
func ClassesCSV(t *kits.Tables) ([]byte, error) {
	var rows []classJSON
	for _, c := range t.Classes {
		rows = append(rows, classToJSON(c))
	}
	return recordsCSV(rows, "kind", "form", "standard", "class", "marked", "unit", "capacity", "division", "limit_of_error", "limit_of_error_share",
		"limit_below_half_fixed", "limit_below_half_share", "random", "dead_space", "bore_mm", "numbered_every", "trust", "division_trust",
		"random_trust", "dead_space_trust", "bore_trust", "numbered_trust", "source", "note")
}

func classToJSON(c equipment.Class) classJSON {
	unit := "mL"
	if c.Kind == "balance" {
		unit = "g"
	}
	return classJSON{
		Kind: c.Kind, Form: orNull(c.Form), Published: c.Published(), Name: orNull(c.Name), Marked: orNull(c.Marked), Unit: unit,
		Capacity: positive(c.Capacity), Division: positive(c.Division), Tolerance: positive(c.Tolerance), Share: positive(c.Share),
		BelowHalfFixed: positive(c.BelowHalfFixed), BelowHalfShare: positive(c.BelowHalfShare), Random: positive(c.Random),
		DeadSpace: positive(c.DeadSpace), Bore: positive(c.Bore), Numbered: positive(c.Numbered), Trust: c.Trust,
		DivisionTrust: orNull(c.DivisionTrust), RandomTrust: orNull(c.RandomTrust), DeadSpaceTrust: orNull(c.DeadSpaceTrust),
		BoreTrust: orNull(c.BoreTrust), NumberedTrust: orNull(c.NumberedTrust), Source: c.Source, Note: orNull(c.Note),
	}
}
