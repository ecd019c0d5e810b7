package main

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hydratePrep is an invented prep of which the first route forgets that 0.88 g of the salt
// are in 1 g of what is weighed.
const hydratePrep = `
kit = "kit.toml"
target = "1.1 % w/v"
volume = "30 mL"
tolerance = "8 % of target"

[solute]
name = "citrate"
weighed-as = "citrate dihydrate"
form-factor = 0.88

[solvent]
name = "water"

[[route]]
name = "forgotten"
steps = [ { weigh = "0.44 g", on = "scale" }, { make-up-to = "40 mL", in = "50 mL cylinder" } ]
`

const rightRoute = `
[[route]]
name = "right"
steps = [ { weigh = "0.50 g", on = "scale" }, { make-up-to = "40 mL", in = "50 mL cylinder" } ]
`

// A route that aims elsewhere is told of the reading that would mend it before everything
// else, wherever its result is shown, and the route to use stays the one that is right as
// it is stated.
func TestAimingElsewhereIsSaidFirst(t *testing.T) {
	skipIfSlow(t)
	const want = "comes out 12 % too weak: weigh 0.50 g instead of 0.44 g on the scale (step 1); then it is inside"
	inFolder(t, map[string]string{"kit.toml": planKit, "one.toml": hydratePrep, "two.toml": hydratePrep + rightRoute})
	collapsed := func(text string) string { return strings.Join(strings.Fields(strings.ReplaceAll(text, "\\", "")), " ") }
	before := func(text, first, then string) {
		t.Helper()
		text = collapsed(text)
		at, next := strings.Index(text, first), strings.Index(text, then)
		assert.True(t, at >= 0 && next > at, "%q before %q in %s", first, then, text)
	}
	quick := func(args ...string) string { return output(t, append(args, "--trials", "20000")...) }

	whole := func(args ...string) string { return quick(append(args, "--all")...) }
	before(quick("compare", "one.toml"), "First: forgotten "+want, "NEAREST")
	before(whole("compare", "one.toml"), "First: forgotten "+want, "NEAREST")
	before(whole("compare", "two.toml"), "First: forgotten "+want, "USE right")
	before(whole("compare", "two.toml", "--route", "forgotten"), "First: forgotten "+want, "NEAREST")
	assert.NotContains(t, whole("compare", "two.toml", "--route", "right"), "First:")
	assert.Contains(t, collapsed(quick("compare", "two.toml")), "comes out 12 % too weak")
	before(quick("compare", "two.toml", "--format", "markdown"), "First: forgotten "+want, "USE: right")
	before(whole("plan", "one.toml", "--steps", "0"), "Your own routes", "forgotten: "+want)
	before(whole("plan", "one.toml", "--from", "forgotten"), "0.50 g in 40 mL", "Chosen")
	for _, paper := range []string{"sheet", "report"} {
		before(quick(paper, "two.toml", "--route", "forgotten"), "First: this route "+want, map[string]string{"sheet": "this batch", "report": "Purpose"}[paper])
	}
	assert.Contains(t, collapsed(quick("report", "two.toml")), want, "among what speaks against it")
	assert.NotContains(t, collapsed(quick("sheet", "two.toml")), want)

	type elsewhere struct {
		Off         float64 `json:"off_target"`
		Step        int
		Planned     float64
		Reading     float64
		Unit        string
		Conformance float64 `json:"conformance_probability"`
	}
	var got struct {
		Use    string
		Routes []struct {
			Name      string
			Elsewhere *elsewhere       `json:"aims_elsewhere"`
			Inside    []map[string]any `json:"inside"`
		}
	}
	require.NoError(t, json.Unmarshal([]byte(quick("compare", "two.toml", "--format", "json")), &got))
	assert.Equal(t, "right", got.Use)
	assert.Nil(t, got.Routes[1].Elsewhere)
	e := got.Routes[0].Elsewhere
	require.NotNil(t, e)
	assert.InDelta(t, -0.12, e.Off, 1e-12)
	assert.Equal(t, elsewhere{e.Off, 1, 0.44, 0.5, "g", e.Conformance}, *e)

	// When the user takes it, it has that chance.
	taken := strings.Replace(hydratePrep, "0.44 g", "0.50 g", 1)
	require.NoError(t, os.WriteFile("taken.toml", []byte(taken), 0o644))
	require.NoError(t, json.Unmarshal([]byte(quick("compare", "taken.toml", "--format", "json")), &got))
	assert.Equal(t, e.Conformance, got.Routes[0].Inside[0]["conformance_probability"])

	rows, err := csv.NewReader(strings.NewReader(quick("compare", "two.toml", "--format", "csv"))).ReadAll()
	require.NoError(t, err)
	at := slices.Index(rows[0], "aims_elsewhere_reading")
	require.GreaterOrEqual(t, at, 0)
	assert.Equal(t, []string{"0.5", ""}, []string{rows[1][at], rows[2][at]})
}
