package equipment

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/equipment/benchfile/broken"
)

// An invented kit with an instrument of each kind and most keys.
const benchToBreak = `title = "Bench"
note = "invented"
shape = "rectangular"
[[balance]]
name = "scale"
capacity = "200 g"
readability = "0.01 g"
repeatability = "0.01 g"
linearity = "0.02 g"
linearity-law = "in-two-parts"
span = "0.1 % of reading"
count = 2
price = "90 EUR"
[[balance]]
name = "analytical"
capacity = "120 g"
readability = "0.0001 g"
readings = ["1.0001 g", "1.0002 g", "1.0000 g"]
weighing-uncertainty = "0.3 mg"
[[cylinder]]
name = "cylinder"
capacity = "50 mL"
class = "B"
standard = "ISO"
form = "tall"
material = "borosilicate"
marked = "Ex"
clinging = "0.2 mL"
numbered = "10 mL"
between-marks = 0.6
reading = "careful"
bore = "22 mm"
[[flask]]
name = "flask"
capacity = "25 mL"
class = "A"
expansion = "1e-5 /°C"
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "5 mL"
division = "0.05 mL"
tolerance = "0.04 mL"
retained = { mean = "0.02 mL", spread = "0.01 mL" }
[[pipette]]
name = "bulb"
kind = "one-mark"
capacity = "10 mL"
correction = { value = "0.01 mL", expanded = "0.01 mL", k = 2 }
[[syringe]]
name = "syringe"
capacity = "2 mL"
single-use = true
[[burette]]
name = "burette"
capacity = "25 mL"
division = "0.1 mL"
standard-uncertainty = "0.03 mL"
[[dropper]]
name = "dropper"
drop = "0.04 mL"
[[jar]]
name = "jar"
line = "100 mL"
set-with = "cylinder"
[[candidate]]
kind = "balance"
name = "new scale"
capacity = "100 g"
readability = "1 mg"
price = "400 EUR"
[[candidate]]
kind = "flask"
name = "new flask"
capacity = "50 mL"
class = "A"
`

func TestEachBreakOfAKitIsOneMistake(t *testing.T) {
	skipIfSlow(t)
	_, err := ParseKit("kit.toml", []byte(benchToBreak))
	require.NoError(t, err)
	for _, b := range broken.Breaks(benchToBreak) {
		_, err := ParseKit("kit.toml", []byte(b.Text))
		all, _ := benchfile.Told(err)
		if b.Maybe && len(all) == 0 {
			continue
		}
		if assert.Len(t, all, 1, "%s\n%v", b.What, err) && !b.Maybe {
			assert.Equal(t, b.Line, all[0].Line, "%s\n%v", b.What, err)
		}
	}
}

// Of two keys that are broken both are told, and nothing else; of the keys of a candidate
// whose kind is not known nothing can be said.
func TestTwoBreaksOfAKitAreTwoMistakes(t *testing.T) {
	skipIfSlow(t)
	var list []broken.Break
	for _, b := range broken.Breaks(benchToBreak) {
		if strings.HasSuffix(b.What, "shape") {
			list = append(list, b)
		}
	}
	for i, b := range list {
		for j := i + 1 + i%3; j < len(list); j += 3 { // a third of all pairs
			c := list[j]
			both, ok := b.And(benchToBreak, c)
			if !ok {
				continue
			}
			_, err := ParseKit("kit.toml", []byte(both))
			all, _ := benchfile.Told(err)
			if strings.Contains(b.What, "kind") && len(all) == 1 && all[0].Line == b.Line {
				continue
			}
			assert.Len(t, all, 2, "%s, %s\n%v", b.What, c.What, err)
		}
	}
}
