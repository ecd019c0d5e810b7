package influence

import (
	"strings"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// grounds are what figures rest on. {of} is the standard, the table or the word, {trust} how it was
// seen, {1} to {3} the figures, {unit} the unit of the influence.
var grounds = map[string]string{
	string(uncertainty.Tabled):         "{of} ({trust})",
	string(uncertainty.Observed):       "own readings, n = {1}, at {2} {unit}",
	string(uncertainty.ObservedWithin): "own readings, n = {1}, at {2} {unit}, with the limit: {of} ({trust})",
	string(uncertainty.Computed):       "computed",
	string(uncertainty.Definition):     "by definition",
	string(uncertainty.Remembered):     "from memory",
	"reading of a scale":               "{of} reading, within {1} of a division of {2} mL",
	"reading of a level":               "{of} reading, s = {1} mm of level at a bore of {2} mm",
	"shape of a meniscus":              "Young and Laplace, for {2} mN/m, {3} g/mL",
	"law of drops":                     "Tate's law",
	"formula of water":                 "Tanaka et al. 2001",
	"table of ethanol and water":       "OIML R 22",
	"table of liquids":                 "table of liquids: {of} ({trust})",
	"table of glasses":                 "table of glasses: {of} ({trust})",
	"table of stocks":                  "table of stocks: {of} ({trust})",
	"density of a stock":               "from the density of {of}",
	"diffusion of vapour":              "Stefan diffusion through still air, within a factor of 2",
	"buoyancy":                         "air of 1.2 kg/m³, weights of 8 g/mL, density {1} g/mL",
}

const (
	statedInKit  = "the kit states"
	statedInPrep = "the prep states"
	assumed      = "assumed"
)

// Ground is what the figure of an influence, or of a constant, rests on.
func Ground(in *uncertainty.Influence) string {
	g := &in.Ground
	byDefault := in.Assumed && !in.AssumedShape
	text := grounds[string(g.By)]
	switch {
	case g.By == uncertainty.Stated && byDefault:
		return assumed
	case g.By == uncertainty.Stated:
		return filled(stated(in)+ofLimit(in), in)
	case g.By == uncertainty.Tabled:
		text += ofLimit(in)
	case g.By == uncertainty.ObservedWithin && g.Of == "":
		text, _, _ = strings.Cut(text, ":")
		text += " that the kit states"
	case g.By == "shape of a meniscus" && g.Figures[1] == 0:
		text = "between those of its parts"
	case g.By == "shape of a meniscus" && g.Figures[0] > 0:
		text += ", bore {1} mm"
	}
	if byDefault {
		text += ", " + assumed
	}
	return filled(text, in)
}

// filled puts the figures of a ground into its words.
func filled(text string, in *uncertainty.Influence) string {
	g := &in.Ground
	figure := func(i int) string { return quantity.Number(g.Figures[i]) }
	return strings.NewReplacer("{of}", g.Of, "{trust}", g.Trust, "{1}", figure(0), "{2}", figure(1), "{3}", figure(2), "{unit}", in.Unit).Replace(text)
}

// ofLimit names the limit that an influence is a part of.
func ofLimit(in *uncertainty.Influence) string {
	if in.Ground.Figures[0] == 0 {
		return ""
	}
	return ", of the limit ±{1} {unit}"
}

// stated says where a figure is: those of instruments in the kit, but for what a step says.
func stated(in *uncertainty.Influence) string {
	ofInstrument := in.Group.Kind == uncertainty.Instrument || in.Group.Kind == "film"
	if ofInstrument && in.Code != "left on the boat" {
		return statedInKit
	}
	return statedInPrep
}
