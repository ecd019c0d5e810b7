package main

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const mindsKit = `
dropper = [{ name = "dropper", drop = "0.05 mL" }]
flask = [{ name = "small flask", capacity = "10 mL", class = "A", standard = "ISO", material = "borosilicate" }]
`

// An invented prep with two things to be minded: drops of a liquid of which nothing is known,
// and less than is wanted.
const mindsPrep = `
kit = "bench.toml"
target = "1 % w/v"
volume = "12 mL"
tolerance = "30 % of target"
solute = { name = "stuff" }
solvent = { name = "water" }
[[stock]]
name = "strong stuff"
strength = "40 % w/v"
solvent = "some oil"
[[route]]
name = "drops"
steps = [
  { start = "strong stuff" },
  { take = "5 drops", with = "dropper" },
  { make-up-to = "10 mL", in = "small flask" },
]
`

// All that the screen says is to be minded stands on the sheet and the report as well.
func TestWhatIsToBeMindedIsOnPaper(t *testing.T) {
	t.Chdir(t.TempDir())
	require.NoError(t, os.WriteFile("bench.toml", []byte(mindsKit), 0o644))
	require.NoError(t, os.WriteFile("prep.toml", []byte(mindsPrep), 0o644))
	screen := output(t, "compare", "prep.toml", "--trials", "10000", "--format", "markdown")
	minds := regexp.MustCompile(`(?s)## Mind\n\n(.*?)\n\n##`).FindStringSubmatch(screen)
	require.NotNil(t, minds, screen)
	lines := strings.Split(minds[1], "\n")
	require.NotEmpty(t, lines)
	for _, command := range []string{"sheet", "report"} {
		paper := output(t, command, "prep.toml", "--trials", "10000")
		for _, line := range lines {
			text := strings.TrimPrefix(line, "- ")
			assert.Contains(t, paper, "- "+strings.ToUpper(text[:1])+text[1:]+".", command)
		}
		assert.Equal(t, 1, strings.Count(paper, "## To be minded"), command)
	}
}
