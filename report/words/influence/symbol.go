package influence

import (
	"strings"

	"minim/uncertainty"
)

// symbols of influences, and of quantities on the way, by their codes: a letter, and behind "_" what
// tells it from others of the letter. Several with one symbol are numbered.
var symbols = map[string]string{
	// Of volumetric instruments.
	"bias":                       "δ_cal",
	"bias of the piece":          "δ_cal",
	"bias common to marks":       "δ_com",
	"bias own to a mark":         "δ_own",
	"bias relative to its limit": "z_cal",
	"correction":                 "δ_corr",
	"bias by readings":           "δ_mean",
	"delivered by readings":      "δ_del",
	"bias by readings with":      "δ_mean",
	"delivered by readings with": "δ_del",
	"pen line":                   "δ_line",
	"retained":                   "V_stay",
	"scatter of pours":           "e_pour",
	"should have kept":           "V_keep",
	"retained by design":         "V_keep",
	"film":                       "V_film",
	"scatter of drops":           "δ_drop",
	"size of drops":              "f_drop",
	"repeatability":              "δ_rep",
	"reading":                    "δ_read",
	secondReading:                "δ_end",
	"clinging drops":             "V_cling",
	"meniscus":                   "f_men",
	"bore":                       "d",
	"wetting":                    "f_wet",
	"meniscus of a mixture":      "x_men",
	"expansion of a mixture":     "x_exp",
	"cushion":                    "z_air",
	"cushion of the piece":       "z_air",
	"cushion common to marks":    "z_air",
	"cushion own to a mark":      "z_air",
	"expansion":                  "β",
	"expansion of a liquid":      "β_liq",
	"span of expansion":          "Δβ",
	"limit of error":             "L",
	"limit with a cushion":       "L_air",
	"part of a meniscus":         "V_men",
	"meniscus by bore":           "s_men",
	"part left by a rinse":       "r",
	"drop":                       "V_drop",
	"fill of a line":             "V_fill",
	// Of balances.
	"weighing":                        "δ_weigh",
	repeatedWeighing:                  "δ_rep",
	"rounding at zero":                "δ_zero",
	"rounding at load":                "δ_load",
	"linearity":                       "δ_lin",
	"linearity at zero":               "δ_lin0",
	"linearity at a load":             "δ_loc",
	"linearity at a load in a boat":   "δ_loc",
	"error at a check weight":         "δ_chk",
	"linearity at a load in a vessel": "δ_loc",
	emptyBoat:                         "δ_loc",
	emptyVessel:                       "δ_loc",
	"curve of linearity":              "δ_cur",
	"curve of linearity that grows":   "δ_grow",
	"error of linearity":              "E_lin",
	"sensitivity":                     "e_span",
	"left on the boat":                "m_left",
	// Of materials and the day.
	"temperature":                 "ΔT",
	"evaporation":                 "e_evap",
	"loss with age":               "e_age",
	"buoyancy":                    "b",
	"content":                     "m_pack",
	"strength":                    "s",
	"volume":                      "V_bottle",
	"assay":                       "P",
	"molar mass":                  "M",
	"density":                     "ρ",
	"activity":                    "a",
	"specific volume":             "φ",
	"shrinking":                   "ε",
	"density of a liquid":         "ρ_liq",
	"conversion":                  "f_unit",
	"form factor":                 "F",
	"contraction":                 "f_mix",
	"slope of a density":          "s_ρ",
	"counted of a form":           "F_as",
	"purity":                      "w_pure",
	"mass weighed":                "m",
	"volume measured":             "V",
	"volume in a vessel":          "V",
	"mixed volume":                "V_mix",
	"volume of the solution":      "V_sol",
	"total mass":                  "m_tot",
	"mass of the solution":        "m_sol",
	"density of the solution":     "ρ_sol",
	"solvent in the solution":     "w_solv",
	"concentration of a solution": "γ",
	"concentration of a stock":    "γ_st",
	"fraction of a solution":      "w",
	"strength in a unit":          "γ",
	"":                            "x",
}

// Symbol is the letter of an influence, or of a quantity on the way; "x" of one that has no words.
func Symbol(in *uncertainty.Influence) string {
	code, _ := key(in)
	text, found := symbols[code]
	if !found {
		return symbols[""]
	}
	if rest, ok := strings.CutPrefix(text, "γ"); ok && concentrations[in.Unit] != "" {
		return concentrations[in.Unit] + rest
	}
	return text
}

// concentrations are the letters of those that are not of a mass, by their units (ISO 80000-9, from
// memory).
var concentrations = map[string]string{"mol/mL": "c", "mL/mL": "σ", "U/mL": "b"}

// shapes are how distributions are called.
var shapes = map[string]string{
	"normal": "normal", "t": "Student's t", "gamma": "gamma", "gamma-cut": "gamma, cut off", "rectangular": "rectangular",
	"triangular": "triangular", "table": "posterior of the limit and the readings", "exact": "exact",
}

// Shape is how the distribution of an influence is called.
func Shape(in *uncertainty.Influence) string { return shapes[uncertainty.Shape(in.Distribution)] }

// Type is how its standard uncertainty was evaluated: "A" from readings alone, "A and B" from readings
// and a limit together, else "B" (JCGM 100, 2.3.2 and 2.3.3).
func Type(in *uncertainty.Influence) string {
	switch alone, together := in.Ground.IsStatistical(); {
	case alone:
		return "A"
	case together:
		return "A and B"
	}
	return "B"
}

// key is the code by which an influence has its words, and what it is compared with.
func key(in *uncertainty.Influence) (code, beside string) {
	code, beside, _ = strings.Cut(string(in.Code), " beside ")
	switch {
	case code == "reading" && in.At > 0:
		code = secondReading
	case code == "repeatability" && in.Unit == "g":
		code = repeatedWeighing
	case beside != "" && strings.HasSuffix(code, " by readings"):
		code += " with"
	case code == "linearity at a load in a boat" && in.At == 0:
		code = emptyBoat
	case code == "linearity at a load in a vessel" && in.At == 0:
		code = emptyVessel
	}
	return code, beside
}
