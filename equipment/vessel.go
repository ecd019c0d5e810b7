package equipment

// plasticShare is the mass of a vessel of plastic over that of the water that it holds, of
// 1 g/mL. A vessel of glass is about as heavy as that water: beakers, flasks and bottles of 10 to
// 150 mL weigh between 0.3 and 1.7 times as much, a small cylinder on a foot up to four times;
// of plastic, bottles and beakers of 30 to 250 mL between 0.1 and 0.3 times. The figures are
// in testdata/vessel_masses.csv, with what they rest on.
const plasticShare = 0.2

// VesselMass is the mass of the empty vessel in g, and whether it is stated; by rule of thumb
// that of the water that it holds if it is of glass, and a fifth of that if of plastic.
func (k *Measure) VesselMass() (g float64, stated bool) {
	switch {
	case k.Vessel.Known:
		return k.Vessel.Value, true
	case k.Plastic:
		return plasticShare * k.Capacity, false
	}
	return k.Capacity, false
}
