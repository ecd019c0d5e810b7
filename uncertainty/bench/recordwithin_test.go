package bench

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

const littleKit = `
[[balance]]
name = "scale"
capacity = "50 g"
readability = "0.01 g"
[[cylinder]]
name = "cylinder"
capacity = "50 mL"
class = "B"
`

const littlePrep = `target = "2 % w/v"
volume = "40 mL"
bench = { BENCH }
[solute]
name = "gum"
[solvent]
name = "water"
[[route]]
name = "direct"
steps = [ { weigh = "1.00 g", on = "scale" }, { make-up-to = "50 mL", in = "cylinder" } ]
[[route]]
name = "by weighing"
steps = [ { weigh = "0.50 g", on = "scale" }, { weigh-up-to = "24.00 g", on = "scale" } ]
`

// little is a prep of this test with the bench as it says.
func little(bench string) (*route.Prep, error) {
	kit, err := ParseKit("bench.toml", []byte(littleKit))
	if err != nil {
		return nil, err
	}
	return ParsePrep("prep.toml", []byte(strings.Replace(littlePrep, "BENCH", bench, 1)), kit)
}

// A record refuses a bench that a prep refuses, in the same words, and takes what it takes.
func TestRecordAndPrepTakeTheSameBench(t *testing.T) {
	good, err := little("")
	require.NoError(t, err)
	for bench, want := range map[string]string{
		`temperature = "20 °C", within = "400 °C"`:   "within: a bench that varies by 400 °C is not likely",
		`temperature = "20 °C", within = "25.01 °C"`: "within: a bench that varies by 25.01 °C is not likely",
		`temperature = "20 °C", within = "-1 °C"`:    `within: must not be below 0, found "-1 °C"`,
		`temperature = "51 °C"`:                      "temperature: a bench at 51 °C is not likely",
		`temperature = "-0.5 °C", within = "1 °C"`:   "temperature: a bench at -0.5 °C is not likely",
		`temperature = "1e-9 °C"`:                    `temperature: "1e-9 °C" is too small a number for a temperature`,
		`temperature = "20 °C", within = "25 °C"`:    "",
		`temperature = "0 °C", within = "0 °C"`:      "",
	} {
		_, ofPrep := little(bench)
		_, ofRecord := ParseRecord("record.toml", []byte(recordOf("direct", "1 = { "+bench+" }")), good)
		if want == "" {
			assert.NoError(t, ofPrep, bench)
			assert.NoError(t, ofRecord, bench)
			continue
		}
		for _, err := range []error{ofPrep, ofRecord} {
			m, ok := err.(*benchfile.Mistake)
			require.True(t, ok, "%s: %v", bench, err)
			assert.Equal(t, want, m.Message, bench)
		}
		assert.Equal(t, ofPrep.(*benchfile.Mistake).Hint, ofRecord.(*benchfile.Mistake).Hint, bench)
	}
}

// A record of more entries than are read is refused at the first that is too many.
func TestEntriesWithoutEnd(t *testing.T) {
	p, err := little("")
	require.NoError(t, err)
	var b strings.Builder
	b.WriteString("route = \"direct\"\n[entries]\n")
	for i := range 2001 {
		fmt.Fprintf(&b, "%d = { temperature = \"20 °C\" }\n", i+1)
	}
	_, err = ParseRecord("record.toml", []byte(b.String()), p)
	m, ok := err.(*benchfile.Mistake)
	require.True(t, ok, "%v", err)
	assert.Equal(t, "record.toml:2003:1: 2001: a record has at most 2000 entries", m.String()+": "+m.Message)
	_, err = ParseRecord("record.toml", []byte(recordOf("direct", `20000 = { temperature = "20 °C" }`)), p)
	assert.ErrorContains(t, err, "entries are numbered")
}

// What a record says was weighed stands on the balance with its vessel, which is as planned
// unless it says otherwise.
func TestRecordedLoad(t *testing.T) {
	p, err := little("")
	require.NoError(t, err)
	for entry, want := range map[string]string{
		`1 = { step = 2, weigh-up-to = "24.50 g", BY }`:                  "",
		`1 = { step = 2, weigh-up-to = "30.00 g", BY }`:                  "weigh-up-to: 30.00 g in a vessel of 30.1 g (assumed of glass as heavy as the water that it holds; where it is lighter, state vessel = \"… g\" in the step) is more than the scale carries: 50 g",
		`1 = { step = 2, weigh-up-to = "30.00 g", vessel = "12 g", BY }`: "",
		`1 = { step = 2, weigh-up-to = "24.50 g", vessel = "26 g", BY }`: "weigh-up-to: 24.50 g in a vessel of 26 g is more than the scale carries: 50 g",
	} {
		_, err := ParseRecord("record.toml", []byte(recordOf("by weighing", entry)), p)
		if want == "" {
			assert.NoError(t, err, entry)
			continue
		}
		m, ok := err.(*benchfile.Mistake)
		require.True(t, ok, "%s: %v", entry, err)
		assert.Equal(t, want, m.Message)
	}
}

// What is to be added is looked at before it is written: with an error nothing is.
func TestCheckBeforeAdding(t *testing.T) {
	p, err := little("")
	require.NoError(t, err)
	path := t.TempDir() + "/record.toml"
	require.NoError(t, os.WriteFile(path, []byte(recordOf("direct", "")), 0o600))
	refused := errors.New("refused")
	err = Add(t.Context(), path, p, Addition{By: "AK", At: "2026-11-28 10:05", Lines: []string{"step 1: weighed 1.02 g", "step 2: done"}, Check: func(r *record.Record) error {
		assert.True(t, r.Finished())
		return refused
	}})
	assert.Equal(t, refused, err)
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, recordOf("direct", ""), string(now))
	err = Add(t.Context(), path, p, Addition{By: "AK", At: "2026-11-28 10:05", Lines: []string{"step 9: done"}, Check: func(r *record.Record) error {
		t.Error("a record that is not right is not looked at")
		return nil
	}})
	assert.Error(t, err)
}
