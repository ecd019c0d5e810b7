package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const sizedKit = `
[[balance]]
name = "scale"
capacity = "200 g"
readability = "0.01 g"
[[cylinder]]
name = "cylinder"
capacity = "25 mL"
class = "B"
`

// sizedPrep has room for a line at its top and one below the solute.
const sizedPrep = `kit = "kit.toml"
target = "4 %% w/v"
volume = "15 mL"
%s
[solute]
name = "dye"
%s
[solvent]
name = "water"
[[route]]
name = "one"
steps = [
  { weigh = "1.00 g", on = "scale" }, { make-up-to = "25 mL", in = "cylinder" },
%s]
`

// TestOutOfAllProportion: what no bench can have is refused at its line, by every command
// that reads it (constructed).
func TestOutOfAllProportion(t *testing.T) {
	skipIfSlow(t)
	again := "{ take = \"5 mL\", with = \"cylinder\" }, { make-up-to = \"25 mL\", in = \"cylinder\" },\n"
	candidate := "[[candidate]]\nkind = \"beaker\"\nname = \"b%d\"\ncapacity = \"50 mL\"\n"
	flask := "[[flask]]\nname = \"f%d\"\ncapacity = \"5 mL\"\nclass = \"A\"\n"
	many := func(n int, line string) string {
		var b strings.Builder
		for i := range n {
			if strings.Contains(line, "%d") {
				fmt.Fprintf(&b, line, i)
			} else {
				b.WriteString(line)
			}
		}
		return b.String()
	}
	for name, c := range map[string]struct{ kit, top, solute, steps, at, says, hint string }{
		"a tolerance next to nothing":  {top: `tolerance = "1e-300 % of target"`, at: "prep.toml:4:13", says: "tolerance: ", hint: "write it as a share"},
		"a tolerance below rounding":   {top: `tolerance = "4e-15 % of target"`, at: "prep.toml:4:13", says: "tolerance: ", hint: "write it as a share"},
		"a tolerance none can keep":    {top: `tolerance = "1e-5 % of target"`, at: "prep.toml:4:13", says: `"1e-5 % of target" is narrower than any preparation can be`, hint: "at least 0.0001 %"},
		"two limits side by side":      {top: "not-below = \"4 % w/v\"\nnot-above = \"4.0000001 % w/v\"", at: "prep.toml:5:13", says: "is narrower than any preparation can be", hint: "at least 0.0001 %"},
		"a form factor of nothing":     {solute: "form-factor = 5e-324", at: "prep.toml:7:15", says: "from 0.001 to 10", hint: "write 0.903"},
		"an assay of nothing":          {solute: `assay = "1e-300 %"`, at: "prep.toml:7:9", says: "too small a number for a share", hint: "at least 1e-07 %"},
		"steps without end":            {steps: many(60, again), at: "prep.toml:63:1", says: "steps: this is number 101 of 122 in the list", hint: "at most 100 are read"},
		"a scale of too many lines":    {kit: "[[cylinder]]\nname = \"huge\"\ncapacity = \"25 L\"\ntolerance = \"0.1 mL\"\ndivision = \"0.5 mL\"\n", at: "kit.toml:13:12", says: "a scale of 50000 lines up to its capacity is not likely", hint: "at most 2000"},
		"a vessel of too many lines":   {kit: "[[beaker]]\nname = \"tub\"\ncapacity = \"2 L\"\ntolerance = \"0.5 mL\"\ndivision = \"0.5 mL\"\n", at: "kit.toml:13:12", says: "a scale of 4000 lines", hint: "at most 2000"},
		"more instruments than a room": {kit: many(101, flask), at: "kit.toml:401:1", says: "there are more than 100 instruments", hint: "a kit of their own"},
		"candidates without end":       {kit: many(51, candidate), at: "kit.toml:209:1", says: "candidate: this is number 51 of 51 in the list", hint: "at most 50"},
		"a count of pieces":            {kit: "[[flask]]\nname = \"f\"\ncapacity = \"5 mL\"\nclass = \"A\"\ncount = 4000\n", at: "kit.toml:13:9", says: "4000 pieces alike are not likely", hint: "at most 100"},
		"a name without end":           {solute: "", top: `title = "` + strings.Repeat("x", 301) + `"`, at: "prep.toml:4:9", says: "title: the text has 301 characters", hint: "at most 300"},
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			t.Chdir(dir)
			require.NoError(t, os.WriteFile(filepath.Join(dir, "kit.toml"), []byte(sizedKit[1:]+c.kit), 0o600))
			require.NoError(t, os.WriteFile(filepath.Join(dir, "prep.toml"), fmt.Appendf(nil, sizedPrep, c.top, c.solute, c.steps), 0o600))
			for _, command := range []string{"compare", "plan", "buy", "sheet"} {
				var out, complaint bytes.Buffer
				assert.Equal(t, exitFailed, run(context.Background(), []string{command, "prep.toml"}, &out, &complaint))
				assert.Contains(t, complaint.String(), "minim: error: "+c.at+": ", command)
				assert.Contains(t, complaint.String(), c.says, command)
				assert.Contains(t, complaint.String(), "minim: hint: ", command)
				assert.Contains(t, complaint.String(), c.hint, command)
			}
		})
	}
}
