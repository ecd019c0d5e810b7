package main

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// gumFiles puts an invented prep, its kit and a record into a folder of their own.
func gumFiles(t *testing.T) {
	t.Helper()
	inFolder(t, map[string]string{
		"kit.toml": sizedKit,
		"prep.toml": `kit = "kit.toml"
target = "4 % w/v"
volume = "15 mL"
tolerance = "8 % of target"
[solute]
name = "gum"
[solvent]
name = "water"
[[route]]
name = "direct"
steps = [ { weigh = "1.00 g", on = "scale" }, { make-up-to = "25 mL", in = "cylinder" } ]
`,
		"record.toml": "route = \"direct\"\n[entries]\n",
	})
}

// stopping keeps what is written to it, and stops the program when an entry was added.
type stopping struct {
	bytes.Buffer
	stop func()
}

func (s *stopping) Write(text []byte) (int, error) {
	if bytes.Contains(text, []byte("added to")) {
		s.stop()
	}
	return s.Buffer.Write(text)
}

// What is wrong with the options of made is found before an entry is added; an error that
// comes after it says that the entry stays.
func TestMadeSaysWhatItAdded(t *testing.T) {
	gumFiles(t)
	add := []string{"made", "prep.toml", "record.toml", "--trials", "10000", "--by", "AK", "--at", "2026-11-28 10:00", "--add", "step 1: weighed 1.02 g"}
	before := read(t, "record.toml")
	for _, more := range [][]string{
		{"--to", "3 % w/v"},       // not finished
		{"--to", "3 ppm"},         // no unit
		{"--add", "step 7: done"}, // no such step
	} {
		var out, complaint bytes.Buffer
		assert.NotEqual(t, exitDone, run(context.Background(), append(append([]string(nil), add...), more...), &out, &complaint))
		assert.Equal(t, before, read(t, "record.toml"), "%s", complaint.String())
		assert.NotContains(t, complaint.String(), "added")
	}
	ctx, cancel := context.WithCancel(context.Background())
	var out bytes.Buffer
	complaint := stopping{stop: cancel}
	assert.Equal(t, exitFailed, run(ctx, add, &out, &complaint))
	assert.Equal(t, before+"1 = { step = 1, weigh = \"1.02 g\", by = \"AK\", at = \"2026-11-28 10:00\" }\n", read(t, "record.toml"))
	assert.Equal(t, "minim: added to record.toml: step 1: weighed 1.02 g\nminim: stopped\nminim: what was added to record.toml stays there\n", complaint.String())
	assert.Empty(t, out.String())
}

// The legend of the names of routes stands in both forms of a plan.
func TestPlanHasItsLegend(t *testing.T) {
	skipIfSlow(t)
	gumFiles(t)
	text := output(t, "plan", "prep.toml", "--steps", "1", "--trials", "10000", "--all")
	markdown := output(t, "plan", "prep.toml", "--steps", "1", "--trials", "10000", "--format", "markdown")
	for _, part := range []string{"made up to the mark at", "measured solvent"} {
		assert.Contains(t, strings.Join(strings.Fields(text), " "), part)
		assert.Contains(t, strings.Join(strings.Fields(markdown), " "), part)
	}
}
