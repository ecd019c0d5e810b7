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
strength = "34 % w/v"
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
	skipIfSlow(t)
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
		assert.Equal(t, 1, strings.Count(paper, "## To be kept in mind"), command)
	}
}

const correctedPrep = `
kit = "bench.toml"
target = "1 % w/v"
volume = "20 mL"
tolerance = "5 % of target"
solute = { name = "stuff", hazards = ["toxic"] }
solvent = { name = "water" }
[[hazard]]
from = "30 % w/v"
words = ["corrosive"]
[[stock]]
name = "weak stuff"
strength = "10 % w/v"
volume = "2.5 mL"
[[stock]]
name = "strong stuff"
strength = "34 % w/v"
solvent = "acetone"
[[route]]
name = "r"
steps = [
  { start = "weak stuff" },
  { take = "2.5 mL", with = "pipette" },
  { make-up-to = "25 mL", in = "flask" },
]
`

// What a correction brings in is spoken of as well: an invented batch, too weak, of which the
// stock is too little to bring it right.
func TestCautionsOfACorrection(t *testing.T) {
	skipIfSlow(t)
	kit := `
pipette = [{ name = "pipette", kind = "graduated", capacity = "5 mL", class = "B", standard = "ISO", material = "borosilicate" }, { name = "small", kind = "graduated", capacity = "1 mL", class = "B", standard = "ISO", material = "borosilicate" }]
flask = [{ name = "flask", capacity = "25 mL", class = "A", standard = "ISO", material = "borosilicate" }]
`
	record := "route = \"r\"\n[entries]\n1 = { step = 1, start = \"weak stuff\" }\n2 = { step = 2, take = \"1.5 mL\" }\n3 = { step = 3, make-up-to = \"25 mL\" }\n"
	inFolder(t, map[string]string{"bench.toml": kit, "prep.toml": correctedPrep, "record.toml": record})
	for _, format := range []string{"text", "markdown", "json"} {
		screen := strings.Join(strings.Fields(output(t, "made", "prep.toml", "record.toml", "--trials", "10000", "--all", "--format", format)), " ")
		require.Contains(t, screen, "of strong stuff", "the correction that this is about")
		for _, want := range []string{
			"Strong stuff (34 % w/v): corrosive", "Acetone: not stated, treat as unknown.", "Stuff, undiluted: toxic",
			"and the solutions of steps 3 (0.600 % w/v) and 5 (0.996 % w/v): not stated, treat as undiluted.",
		} {
			assert.Contains(t, screen, want, format)
		}
	}
}
