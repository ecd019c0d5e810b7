package bench

import (
	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
)

// vessel reads the mass of an empty vessel, and what it is made of.
func vessel(t *benchfile.Table, k *equipment.Measure) {
	k.Vessel = vesselMass(t)
	glass, _ := equipment.FindGlass(t.Text("material"))
	k.Plastic = glass.Plastic || k.Kind.Traits().Forms != nil && t.Text("form") == "plastic"
}

// vesselMass reads the mass of what stands on a balance with what is weighed in it.
func vesselMass(t *benchfile.Table) equipment.Stated {
	s := equipment.Stated{Value: t.Positive("vessel", quantity.Mass), Known: t.Has("vessel")}
	plausible(t, "vessel", s.Value, quantity.Limits.Vessel, "no vessel of a bench has this mass", "state the mass of the empty vessel, as in \"35 g\"")
	return s
}
