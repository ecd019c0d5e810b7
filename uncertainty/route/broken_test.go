package route

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/equipment/benchfile/broken"
)

// Two invented preps that hold every key that can stand beside the others.
const (
	wholeKit = `
[[balance]]
name = "scale"
capacity = "200 g"
readability = "0.01 g"
price = "90 EUR"
[[cylinder]]
name = "cylinder"
capacity = "50 mL"
division = "1 mL"
tolerance = "0.5 mL"
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "5 mL"
division = "0.05 mL"
tolerance = "0.04 mL"
count = 2
[[dropper]]
name = "dropper"
`
	byAmountPrep = `title = "Etch"
note = "invented"
kit = "kit.toml"
target = "2 mmol/L"
volume = "20 mL"
tolerance = ["8 % of target", "0.05 g/L"]
least-chance = "90 %"
ladder = ["1 mmol/L", "0.2 g/L"]
ladder-with = "pipette"
ladder-in = "cylinder"
[bench]
temperature = "21 °C"
within = "2 °C"
reading = "careful"
meniscus = "counted"
vessels = "open"
[solute]
name = "gallate"
weighed-as = "gallate hydrate"
molar-mass = "310 g/mol"
weighed-molar-mass = "346 g/mol"
assay = "at least 98 %"
density = "1.6 g/mL"
specific-volume = "0.6 mL/g"
solubility = "40 g/L"
price = "2 EUR/g"
hazards = ["irritant"]
[solvent]
name = "water"
expansion = "2.1e-4 /°C"
density = "0.998 g/mL"
evaporation = "1 % of volume"
price = "0.01 EUR/mL"
hazards = ["none known"]
[[hazard]]
from = "1 g/L"
words = ["irritant"]
replaces = false
[[stock]]
name = "old stock"
strength = { value = "5 g/L", expanded = "0.1 g/L", k = 2 }
volume = "30 mL"
loss = "2 % of strength"
opened = 3
[[packet]]
name = "sachet"
content = "0.50 g"
[plan]
steps = 3
left-over = "90 mL"
volume = "120 mL"
solute = "3 g"
strongest = "20 g/L"
without = ["dropper"]
prefer = "cheapest"
[[route]]
name = "by weighing"
steps = [
  { weigh = "0.35 g", on = "scale", weighed-back = true },
  { make-up-to = "50 mL", in = "cylinder", reading = "ordinary" },
  { take = "2.5 mL", with = "pipette", piece = 2, rinsed = true },
  { make-up-to = "25 mL", in = "cylinder", state = "dry", open = "20 min", mouth = "25 mm" },
]
[[route]]
name = "from the stock"
steps = [
  { start = "old stock" },
  { take = "5 mL", with = "pipette" },
  { add = "25 mL", with = "cylinder", contraction = "0.1 % of volume" },
]
[[route]]
name = "the packet"
steps = [
  { packet = "sachet" },
  { make-up-to = "50 mL", in = "cylinder" },
  { take = "3 drops", with = "dropper" },
  { make-up-to = "20 mL", in = "cylinder" },
]
`
	byVolumePrep = `kit = "kit.toml"
target = "2 % v/v"
volume = "20 mL"
not-below = "1.8 % v/v"
not-above = "2.2 % v/v"
[solute]
name = "oil of something"
form-factor = 0.9
activity = "3 U/mg"
[solvent]
name = "white spirit"
[[stock]]
name = "strong"
strength = { from = "18 % v/v", to = "20 % v/v" }
solvent = "white spirit"
[[route]]
name = "measured"
steps = [
  { measure = "1 mL", with = "pipette", blown-out = true },
  { dissolve-in = "49 mL", with = "cylinder", contraction = "0.5 % of volume" },
]
[[route]]
name = "strengthened"
steps = [
  { start = "strong" },
  { take = "2 mL", with = "pipette" },
  { add = "20 mL", with = "cylinder" },
  { strengthen = "1 mL", of = "strong", with = "pipette", state = "used" },
]
`
)

func TestEachBreakIsOneMistake(t *testing.T) {
	skipIfSlow(t)
	kit, err := ParseKit("kit.toml", []byte(wholeKit))
	require.NoError(t, err)
	for _, text := range []string{byAmountPrep, byVolumePrep} {
		_, err := ParsePrep("prep.toml", []byte(text), kit)
		require.NoError(t, err)
		for _, b := range broken.Breaks(text) {
			_, err := ParsePrep("prep.toml", []byte(b.Text), kit)
			all, _ := benchfile.Told(err)
			if b.Maybe && len(all) == 0 {
				continue
			}
			if assert.Len(t, all, 1, "%s\n%v", b.What, err) && !b.Maybe {
				assert.Equal(t, b.Line, all[0].Line, "%s\n%v", b.What, err)
			}
		}
	}
}

// Of two keys that are broken both are told, and nothing else.
func TestTwoBreaksAreTwoMistakes(t *testing.T) {
	skipIfSlow(t)
	kit, err := ParseKit("kit.toml", []byte(wholeKit))
	require.NoError(t, err)
	for _, text := range []string{byAmountPrep, byVolumePrep} {
		var list []broken.Break
		for _, b := range broken.Breaks(text) {
			if strings.HasSuffix(b.What, "shape") {
				list = append(list, b)
			}
		}
		for i, b := range list {
			for j := i + 1 + i%3; j < len(list); j += 3 { // a third of all pairs
				c := list[j]
				both, ok := b.And(text, c)
				if !ok {
					continue
				}
				_, err := ParsePrep("prep.toml", []byte(both), kit)
				all, _ := benchfile.Told(err)
				assert.Len(t, all, 2, "%s, %s\n%v", b.What, c.What, err)
			}
		}
	}
}
