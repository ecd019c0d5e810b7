package bench

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/equipment/benchfile/broken"
)

// An invented bench, prep and record.
const (
	kitToBreak = `
[[balance]]
name = "scale"
capacity = "200 g"
readability = "0.01 g"
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
`
	prepOfRecord = `kit = "kit.toml"
target = "0.05 % w/v"
volume = "20 mL"
tolerance = "10 % of target"
[solute]
name = "gallate"
[solvent]
name = "water"
[[route]]
name = "one dilution"
steps = [
  { weigh = "0.35 g", on = "scale" },
  { make-up-to = "50 mL", in = "cylinder" },
  { take = "2.5 mL", with = "pipette" },
  { make-up-to = "35 mL", in = "cylinder" },
]
`
	recordToBreak = `route = "one dilution"
batch = "B 7"
note = "invented"
[entries]
1 = { temperature = "21 °C", within = "1 °C", by = "AK", at = "2026-11-28 10:00" }
2 = { step = 1, weigh = "0.36 g", on = "scale", weighed-back = true, by = "AK", at = "2026-11-28 10:05" }
3 = { step = 2, by = "AK", at = "2026-11-28 10:10", note = "as planned" }
4 = { step = 3, take = "2.50 mL", spoilt = "dropped", by = "AK", at = "2026-11-28 10:20" }
5 = { step = 3, take = "2.55 mL", with = "pipette", by = "AK", at = "2026-11-28 10:25" }
6 = { step = 4, make-up-to = "36 mL", by = "AK", at = "2026-11-28 10:30", late = true }
7 = { corrects = 2, weigh = "0.35 g", by = "AK", at = "2026-11-28 10:35" }
`
)

// A break is one mistake, or none, where what is blank or taken out need not be there.
func TestEachBreakOfARecordIsOneMistake(t *testing.T) {
	kit, err := ParseKit("kit.toml", []byte(kitToBreak))
	require.NoError(t, err)
	p, err := ParsePrep("prep.toml", []byte(prepOfRecord), kit)
	require.NoError(t, err)
	_, err = ParseRecord("record.toml", []byte(recordToBreak), p)
	require.NoError(t, err)
	for _, b := range broken.Breaks(recordToBreak) {
		_, err := ParseRecord("record.toml", []byte(b.Text), p)
		all, _ := benchfile.Told(err)
		if len(all) == 0 && (b.Maybe || strings.HasSuffix(b.What, "empty")) {
			continue
		}
		assert.Len(t, all, 1, "%s\n%v", b.What, err)
	}
}

// Of two keys that are broken both are told, and nothing else. Of the entries of a route that
// is not known nothing can be said, nor of what an entry says of a step that is not known,
// or corrects in an entry that could not be read: line 11 corrects line 6.
func TestTwoBreaksOfARecordAreTwoMistakes(t *testing.T) {
	kit, err := ParseKit("kit.toml", []byte(kitToBreak))
	require.NoError(t, err)
	p, err := ParsePrep("prep.toml", []byte(prepOfRecord), kit)
	require.NoError(t, err)
	var list []broken.Break
	for _, b := range broken.Breaks(recordToBreak) {
		if strings.HasSuffix(b.What, "shape") && b.Line > 1 {
			list = append(list, b)
		}
	}
	for i, b := range list {
		for _, c := range list[i+1:] {
			if both, ok := b.And(recordToBreak, c); ok {
				_, err := ParseRecord("record.toml", []byte(both), p)
				all, _ := benchfile.Told(err)
				if unknown := b.Line == c.Line || b.Line == 6 && c.Line == 11; unknown && len(all) == 1 && all[0].Line == b.Line {
					continue
				}
				assert.Len(t, all, 2, "%s, %s\n%v", b.What, c.What, err)
			}
		}
	}
}
