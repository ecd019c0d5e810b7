package route

import (
	"errors"
	"io/fs"
	"path/filepath"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/uncertainty"
)

// Prep is what is to be made, and the routes by which it might be.
type Prep struct {
	// File is the name of the file that it was read from.
	File string
	// Title and Note are free text.
	Title, Note string
	// Kit is the bench that it is made on.
	Kit *equipment.Kit
	// Target strength, and the Volume wanted in mL.
	Target Strength
	Volume float64
	// Tolerances on the strength. The first decides; there may be none.
	Tolerances []Tolerance
	// LeastChance of being inside that is asked for.
	LeastChance float64
	Bench       Bench
	Solute      Solute
	Solvent     Solvent
	Stocks      []*Stock
	Routes      []*Route
}

// Tolerance is a range of permitted strengths, in the unit of the target.
type Tolerance struct {
	// Text is as the file states it: "8 % of target".
	Text   string
	Limits uncertainty.Limits
}

// Stated reports whether the limits were stated one by one, as not-above and
// not-below, so that the text says all.
func (t Tolerance) Stated() bool { return strings.HasPrefix(t.Text, "not ") }

// Bench is the state of the bench on the day.
type Bench struct {
	// Temperature in °C and the half-width within which it is known.
	Temperature, Within equipment.Stated
	// Reading is how carefully scales are read.
	Reading equipment.Reading
}

// Solute is what is dissolved.
type Solute struct {
	Name  string
	Assay Estimate
	// FormFactor is the mass of the substance that the strength counts over
	// the mass of the form that is weighed.
	FormFactor float64
	// MolarMass in g/mol of the substance that the strength counts; 0 when
	// not stated.
	MolarMass float64
	// Density of the solid in g/mL, for air buoyancy; 0 when not stated.
	Density float64
	// SpecificVolume is the apparent specific volume φ in solution, in mL/g.
	SpecificVolume equipment.Stated
	Hazards        []string
}

// Solvent is what it is dissolved and diluted in.
type Solvent struct {
	Name string
	// Expansion, cubic, in 1/°C, and Density at 20 °C in g/mL.
	Expansion, Density equipment.Stated
	Hazards            []string
}

// Stock is a solution that stands ready.
type Stock struct {
	Name string
	// Text is the strength as stated, and Strength in g/mL.
	Text     string
	Strength Estimate
}

// Route is an ordered list of steps that ends in the wanted solution.
type Route struct {
	Name  string
	Steps []Step
}

// LoadPrep reads a prep file and the kit that it names, relative to its own
// folder; a kitPath that is not empty takes the place of the kit named.
func LoadPrep(path, kitPath string) (*Prep, error) {
	root, err := benchfile.Load(path)
	if err != nil {
		return nil, err
	}
	kit, err := findKit(root, path, kitPath)
	if err != nil {
		return nil, err
	}
	return readPrep(root, kit)
}

// findKit loads the kit of a prep. When the prep names none, or one that is not
// there, that is a mistake in the prep, which reading on will return; the kit
// is then empty.
func findKit(root *benchfile.Table, path, kitPath string) (*equipment.Kit, error) {
	named := root.Text("kit")
	if kitPath != "" {
		return equipment.LoadKit(kitPath)
	}
	if named == "" {
		if !root.Has("kit") {
			root.Fail("", "the prep does not name its kit", "write kit = \"bench.toml\", or use --kit")
		}
		return new(equipment.Kit), nil
	}
	kit, err := equipment.LoadKit(filepath.Join(filepath.Dir(path), filepath.FromSlash(named)))
	if errors.Is(err, fs.ErrNotExist) {
		root.Fail("kit", "there is no file "+named, "it is looked for beside the prep; or use --kit")
		return new(equipment.Kit), nil
	}
	return kit, err
}

// ParsePrep reads the text of a prep file that is made with the given kit; name
// stands for the file in messages.
func ParsePrep(name string, data []byte, kit *equipment.Kit) (*Prep, error) {
	root, err := benchfile.Parse(name, data)
	if err != nil {
		return nil, err
	}
	root.Text("kit")
	return readPrep(root, kit)
}
