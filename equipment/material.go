package equipment

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"sync"
)

// material is a row of a table of materials: what is known of all of them.
type material struct {
	Name      string   `csv:"name"`
	Aliases   []string `csv:"aliases"`
	Expansion float64  `csv:"expansion_per_K"` // cubic, 1/°C, of a liquid at 20 °C
	Source    string   `csv:"source"`
	Trust     string   `csv:"trust"` // as in [Class]
	Note      string   `csv:"note"`
}

// liquid is a solvent by a known name.
type liquid struct {
	material
	Density        float64 `csv:"density_g_per_mL"`              // g/mL at 20 °C
	SurfaceTension float64 `csv:"surface_tension_mN_per_m,none"` // mN/m at 20 °C, 0 when not known
	// Alcohol is the volume fraction of ethanol in ethanol and water, NaN in anything else.
	Alcohol float64 `csv:"alcohol,fraction"`
	// Volatile: it is known to evaporate from an open vessel (common practice, no source).
	Volatile bool `csv:"volatile"`
	// Cushion is how far a piston over a cushion of air may be off with it, as a share of the
	// volume; 0 where there is no figure.
	Cushion float64 `csv:"cushion_share,none"`
}

// glass is what a vessel is made of: a glass or a plastic.
type glass struct {
	material
	Plastic bool `csv:"plastic"`
	// WaterAngle is the contact angle of water in degrees, Tension the surface tension of the solid
	// in mN/m; 0 for glass, which is wetted by all.
	WaterAngle float64 `csv:"water_angle_deg,none"`
	Tension    float64 `csv:"surface_tension_mN_per_m,none"`
}

// FindLiquid finds a liquid by its name or an alias, however it is spaced and
// written in capitals.
func FindLiquid(name string) (liquid, bool) { return liquids().named(name) }

// FindGlass finds the material of a vessel by its name or an alias, likewise.
func FindGlass(name string) (glass, bool) { return glasses().named(name) }

// liquidName is the name by which the table knows a liquid, or the name as it is given, in
// small letters and with single spaces.
func liquidName(name string) string {
	if l, found := FindLiquid(name); found {
		return l.Name
	}
	return plain(name)
}

// SameLiquid reports whether two names are of one liquid, by the table of known ones or
// as they are spelt, whatever their capitals and spaces.
func SameLiquid(a, b string) bool { return liquidName(a) == liquidName(b) }

// water is what glass is adjusted with.
const water = "water"

// IsWater reports whether a name is one of water's.
func IsWater(name string) bool { return SameLiquid(name, water) }

func plain(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

// GlassNames lists the known materials of vessels in table order, without aliases.
func GlassNames() []string { return slices.Clone(glasses().names) }

var (
	liquids = sync.OnceValue(func() materials[liquid] { return readMaterials[liquid](tableFiles, "liquids") })
	glasses = sync.OnceValue(func() materials[glass] { return readMaterials[glass](tableFiles, "glasses") })
)

// materials is a table of materials: the names, and each material by name and alias.
type materials[T any] struct {
	names []string
	find  map[string]T
}

func (m materials[T]) named(name string) (material T, found bool) {
	material, found = m.find[plain(name)]
	return material, found
}

func (m material) called() []string { return append([]string{m.Name}, m.Aliases...) }

// readMaterials panics when two materials share a name or alias.
func readMaterials[T interface{ called() []string }](files fs.FS, table string) materials[T] {
	m := materials[T]{find: map[string]T{}}
	for i, row := range readTable[T](files, table) {
		names := row.called()
		m.names = append(m.names, names[0])
		for _, name := range names {
			if _, taken := m.find[name]; taken {
				failTable(fmt.Sprintf("%s.csv:%d", table, i+2), "name %q is taken", name)
			}
			m.find[name] = row
		}
	}
	return m
}
