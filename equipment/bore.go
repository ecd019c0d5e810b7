package equipment

import (
	"sync"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// BoreRange is how wide what a standard allows may be inside at its marks, in mm: a cylinder at
// most so wide that the scale has its least length, at least so wide that its greatest height holds
// it; a neck as wide as it is made to be, within its limits.
type BoreRange struct {
	Number   string  `csv:"number"` // of the standard
	Kind     string  `csv:"kind"`
	Form     string  `csv:"form"`
	Capacity float64 `csv:"capacity_mL"`
	Least    float64 `csv:"least_bore_mm"`
	Greatest float64 `csv:"greatest_bore_mm"`
	Source   string  `csv:"source"`
	Trust    string  `csv:"trust"` // as in [Class]
	Note     string  `csv:"note"`
	// class that the range is of.
	class string
	// ByRule: the least is a share of the greatest.
	ByRule bool
}

var boreRanges = sync.OnceValue(func() []BoreRange { return readTable[BoreRange](tableFiles, "bores") })

// leastOfGreatest is the least bore of a cylinder over the greatest, where no greatest height is
// known: 0.81 to 0.86 by geometry, and 0.88 of twelve real ones of 1000 mL (github
// evanmascitti/asi468).
const leastOfGreatest = 0.85

// Bores is the range of a class; one of a cylinder that no table has goes down from its greatest by a rule.
// There is none for a class of which no bore is known.
func (c *Class) Bores() (BoreRange, bool) {
	for _, r := range boreRanges() {
		if r.Number == c.Number && r.Kind == c.Kind && r.Form == c.Form && sameVolume(r.Capacity, c.Capacity) {
			r.class = c.String()
			return r, true
		}
	}
	r := BoreRange{Number: c.Number, Kind: c.Kind, Least: c.Bore, Greatest: c.Bore, Trust: c.BoreTrust, class: c.String()}
	if c.Kind == "cylinder" {
		r.Least, r.ByRule = leastOfGreatest*c.Bore, true
	}
	return r, c.Bore > 0
}

// takeBore fills in the bore of what is as its class has it: that of its class, or of ASTM for the
// same size; of a cylinder of plastic that of one of glass.
func (k *Measure) takeBore(c Class) {
	if k.Bore > 0 || !k.Kind.Traits().Read {
		return
	}
	likely := []Class{c, {Kind: c.Kind, Form: c.Form, Standard: "ASTM", Name: c.Name, Capacity: c.Capacity, Division: c.Division}}
	if c.Form == "plastic" {
		likely = append(likely, Class{Kind: c.Kind, Form: "tall", Standard: "ISO", Name: c.Name, Capacity: c.Capacity})
	}
	for i, other := range likely {
		if i > 0 {
			found, err := findClass(other)
			if err != nil {
				continue
			}
			other = found
		}
		if r, known := other.Bores(); known {
			k.Bore, k.bores, k.BoreAssumed = (r.Least+r.Greatest)/2, &r, i > 0
			return
		}
	}
}

// widths are the least and the greatest that the bore may be; equal where it is stated.
func (k *Measure) widths() (least, greatest float64) {
	if k.bores == nil {
		return k.Bore, k.Bore
	}
	return k.bores.Least, k.bores.Greatest
}

// byBore appends a volume that goes from low to high as the bore goes over its range.
func (k *Measure) byBore(u Use, low, high float64) uncertainty.Node {
	m := u.Model
	least, greatest := k.widths()
	if least == greatest {
		return k.known(u, meniscusPart, (low+high)/2, "mL", k.groundOfMeniscus(u, least))
	}
	slope := (high - low) / (greatest - least)
	in := influence(k.owner(u), BoreCode, "mm", uncertainty.Rectangular{Low: least, High: greatest})
	in.Nominal, in.Assumed, in.Ground = (least+greatest)/2, true, k.bores.ground()
	part := k.known(u, meniscusPart, low-float64(slope*least), "mL", k.groundOfMeniscus(u, 0))
	return m.Add(part, m.Multiply(k.known(u, meniscusByBore, slope, "mL/mm", k.groundOfMeniscus(u, 0)), m.Influence(in)))
}

// noteBore says how wide it is taken to be, where that counts.
func (k *Measure) noteBore(u Use) {
	r := k.bores
	switch {
	case r == nil || r.Least == r.Greatest:
	case k.BoreAssumed:
		u.Notes.Assume("bore-of-other", k.Name, r.Least, r.Greatest, r.class)
	case r.ByRule:
		u.Notes.Assume("bore-by-rule", k.Name, quantity.Round(r.Least, 3), r.Greatest, r.class)
	case r.Kind == "cylinder":
		u.Notes.Assume("bore-by-height", k.Name, r.Least, r.Greatest, r.class)
	default:
		u.Notes.Assume("bore-range", k.Name, r.Least, r.Greatest, r.class)
	}
	if r != nil && r.Trust == fromMemory {
		u.Notes.Remember("bore", k.Name, quantity.Round(k.Bore, 4), r.class)
	}
}
