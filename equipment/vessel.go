package equipment

// PlasticShare is the mass of a vessel of plastic over that of the water that it holds. A
// vessel of glass is about as heavy as that water: beakers, flasks and bottles of 10 to 150
// mL weigh between 0.3 and 1.7 times as much, a small cylinder on a foot up to four times;
// of plastic, bottles and beakers of 30 to 250 mL between 0.1 and 0.3 times. The figures are
// in testdata/vessel_masses.csv, with what they rest on.
const PlasticShare = 0.2

// GlassMass is the mass in g of a vessel of glass of a capacity in mL, by that rule of
// thumb, with water of 1 g/mL.
func GlassMass(mL float64) float64 { return mL }

// VesselMass is the mass of the empty vessel in g, and whether it is stated.
func (k *Measure) VesselMass() (g float64, stated bool) {
	switch {
	case k.Vessel.Known:
		return k.Vessel.Value, true
	case k.Plastic:
		return PlasticShare * GlassMass(k.Capacity), false
	}
	return GlassMass(k.Capacity), false
}
