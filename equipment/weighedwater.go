package equipment

import (
	"math"

	"minim/uncertainty/portable"
)

// WaterDensity is the density in g/mL of water free of air at t °C and 101 325 Pa (Tanaka et al.,
// Metrologia 38 (2001) 301): see [WaterExpansion].
func WaterDensity(t float64) float64 {
	lack, _ := waterLack(t)
	return float64(0.99997495 * (1 - lack))
}

// airDensity is that of air in g/mL at t °C, a pressure in hPa and a relative humidity in %: the
// simplified formula that ISO 8655-6:2022 is quoted with,
//
//	ρ = (0.34848 p - 0.009 h exp(0.061 t))/(t + 273.15)  kg/m³
func airDensity(t, pressure, humidity float64) float64 {
	moist := float64(0.009 * humidity * portable.Exp(0.061*t))
	return (float64(0.34848*pressure) - moist) / (t + 273.15) / 1000
}

// weightDensity is that of the weights by which balances show masses, in g/mL (OIML R 111).
const weightDensity = 8

// zFactor is the volume in mL that 1 g of a liquid of a density in g/mL has, as a balance shows it in
// air: for water Z of ISO 8655-6,
//
//	Z = (1 - ρ_air/8)/(ρ - ρ_air)
//
// at t °C, a pressure in hPa and a relative humidity in %.
func zFactor(density, t, pressure, humidity float64) float64 {
	air := airDensity(t, pressure, humidity)
	return (1 - float64(air/weightDensity)) / (density - air)
}

// usualPressure in hPa and usualHumidity in % of the air in which water is weighed, and by how much
// the pressure may differ: 50 hPa change a volume by 0.005 %, all of the humidity by 0.001 %.
const (
	usualPressure = 1013.25
	usualHumidity = 50
	pressureMay   = 50
)

// DensityAt is the density of a liquid at the temperature at which it is weighed, in g/mL, with its
// relative standard uncertainty, and the cubic expansion of the liquid in 1/°C.
type DensityAt struct{ Density, Relative, Expansion float64 }

// What is assumed of the liquids of the table: handbooks and correlations differ by up to 0.1 % in a
// density. mostExpansion is that of the liquid which expands most there, for one that is not in it.
const (
	densitiesDiffer = 0.001
	mostExpansion   = 0.0015
)

// LiquidAt is the density of a liquid by its name at t °C; it is not known of every one.
func LiquidAt(name string, t float64) (d DensityAt, known bool) {
	l, known := FindLiquid(name)
	if !known {
		return DensityAt{Expansion: mostExpansion}, false
	}
	return DensityAt{l.Density * (1 - float64(l.Expansion*(t-20))), densitiesDiffer / math.Sqrt(3), l.Expansion}, true
}

// WeighedWater is [WeighedLiquid] for water.
func WeighedWater(temperature, within, expansion float64) (factor, relative float64) {
	return WeighedLiquid(DensityAt{Density: WaterDensity(temperature), Expansion: WaterExpansion(temperature)}, temperature, within, expansion)
}

// WeighedLiquid is what turns grams of a liquid that a balance shows into mL: at a temperature of the
// liquid within so many °C, and a vessel of that cubic expansion in 1/°C, which is calibrated for
// 20 °C. relative is the standard uncertainty of that factor over the factor: rectangular limits of
// the temperature and of the pressure of the air, and that of the density.
func WeighedLiquid(d DensityAt, temperature, within, expansion float64) (factor, relative float64) {
	z := zFactor(d.Density, temperature, usualPressure, usualHumidity)
	byPressure := (zFactor(d.Density, temperature, usualPressure+pressureMay, usualHumidity) - z) / z
	byLiquid := float64((d.Expansion - expansion) * within)
	relative = portable.Hypot(portable.Hypot(byLiquid, byPressure)/math.Sqrt(3), d.Relative)
	return z * (1 - float64(expansion*(temperature-20))), relative
}
