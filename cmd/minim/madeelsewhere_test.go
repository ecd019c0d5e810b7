package main

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A batch of which nothing is made yet is told first that its plan aims elsewhere; one that
// was begun is told where its plan aims.
func TestMadeSaysThatThePlanAimsElsewhere(t *testing.T) {
	skipIfSlow(t)
	inFolder(t, map[string]string{
		"kit.toml": planKit, "prep.toml": hydratePrep + rightRoute,
		"none.toml":  "route = \"forgotten\"\n[entries]\n",
		"begun.toml": "route = \"forgotten\"\n[entries]\n1 = { step = 1, weigh = \"0.44 g\", by = \"AK\", at = \"2026-11-28 09:00\" }\n",
		"right.toml": "route = \"right\"\n[entries]\n",
	})
	made := func(record string, args ...string) string {
		return strings.Join(strings.Fields(output(t, append([]string{"made", "prep.toml", record, "--trials", "20000", "--all"}, args...)...)), " ")
	}
	const first = "First: the plan comes out 12 % too weak: weigh 0.50 g instead of 0.44 g on the scale (step 1); then it is inside"
	for _, format := range []string{"text", "markdown"} {
		text := made("none.toml", "--format", format)
		assert.Contains(t, text, first)
		assert.Less(t, strings.Index(text, first), strings.Index(text, "NOTHING DONE YET"))
		begun := made("begun.toml", "--format", format)
		assert.NotContains(t, begun, "First:")
		assert.Contains(t, begun, "12 % below the target")
		assert.NotContains(t, made("right.toml", "--format", format), "First:")
	}
	var got struct {
		Planned struct {
			Elsewhere *struct{ Reading float64 } `json:"aims_elsewhere"`
		} `json:"planned"`
	}
	require.NoError(t, json.Unmarshal([]byte(made("none.toml", "--format", "json")), &got))
	require.NotNil(t, got.Planned.Elsewhere)
	assert.InDelta(t, 0.5, got.Planned.Elsewhere.Reading, 1e-12)
}

// A table says what its strengths count, as the other formats do.
func TestTablesSayWhatStrengthsCount(t *testing.T) {
	skipIfSlow(t)
	t.Chdir(t.TempDir())
	require.NoError(t, os.WriteFile("kit.toml", []byte(planKit), 0o644))
	require.NoError(t, os.WriteFile("prep.toml", []byte(hydratePrep+rightRoute), 0o644))
	rows, err := csv.NewReader(strings.NewReader(output(t, "compare", "prep.toml", "--format", "csv", "--trials", "20000"))).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, []string{"strength_unit", "strength_counts", "counted_of_weighed"}, rows[0][:3])
	assert.Equal(t, []string{"% w/v", "citrate", "0.88"}, rows[1][:3])
}
