package strengths

import (
	"strings"

	"minim/equipment/quantity"
)

// unitSpellings are the other ways in which people write units of strength, with what they
// mean: percentages in lower case without spaces and brackets, and the rest as it
// stands, for mM and MM are not the same. Package quantity has those of mL and the like.
var unitSpellings = map[string]string{
	"%w/v": "% w/v", "%m/v": "% w/v", "%wt/vol": "% w/v", "w/v%": "% w/v", "m/v%": "% w/v",
	"%w/w": "% w/w", "%m/m": "% w/w", "%wt/wt": "% w/w", "w/w%": "% w/w", "m/m%": "% w/w", "wt%": "% w/w", "%wt": "% w/w",
	"%v/v": "% v/v", "%vol/vol": "% v/v", "v/v%": "% v/v", "vol%": "% v/v", "%vol": "% v/v",
	"g/100mL": "% w/v", "g/100 mL": "% w/v", "g/100ml": "% w/v", "g/100 ml": "% w/v", "g/dL": "% w/v",
	"volume": "volumes", "vol": "volumes", "vols": "volumes", "vol.": "volumes",
	"M": "mol/L", "mM": "mmol/L", "µM": "µmol/L", "uM": "µmol/L",
}

var loose = strings.NewReplacer(" ", "", "(", "", ")", "", ".", "")

// respelt returns the name of a unit that is written in another way, and the text with it.
func respelt(unit, text string) (name, written string) {
	name, ok := unitSpellings[unit]
	if !ok && strings.Contains(unit, "%") {
		name, ok = unitSpellings[strings.ToLower(loose.Replace(unit))]
	}
	if !ok {
		name = unit
	}
	for _, u := range units {
		if u.Name == name {
			return name, quantity.Digits(text) + " " + name
		}
	}
	return unit, text
}
