package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// finished begins a record of the two dilutions of a prep and adds that all was done.
func finished(t *testing.T) {
	t.Helper()
	output(t, "new", "b")
	output(t, "new", "--record", "b/dye.toml", "--route", "two dilutions", "record.toml")
	args := []string{"made", "b/dye.toml", "record.toml", "--trials", "10000", "--by", "AK"}
	for _, step := range strings.Fields("1 2 3 4 5 6") {
		args = append(args, "--add", "step "+step+": done")
	}
	output(t, args...)
}

// With a mistake in one option nothing is added: the record stays as it is.
func TestMistakeInOneOptionAddsNothing(t *testing.T) {
	t.Chdir(t.TempDir())
	finished(t)
	output(t, "new", "--record", "b/dye.toml", "--route", "two dilutions", "begun.toml")
	require.NoError(t, os.WriteFile("file", nil, 0o600))
	require.NoError(t, os.MkdirAll("full", 0o700))
	require.NoError(t, os.WriteFile("full/made.txt", nil, 0o600))
	for _, c := range []struct {
		record string
		add    []string
		code   int
	}{
		{"record.toml", []string{"--to", "0.03 %"}, 2}, {"record.toml", []string{"--to", "0.03"}, 2}, {"record.toml", []string{"--to", "strong"}, 2}, {"record.toml", []string{"--to", "400 % w/v"}, 2},
		{"record.toml", []string{"--to", "1 mol/L"}, 2}, {"begun.toml", []string{"--to", "0.03 % w/v"}, 2}, {"record.toml", []string{"--to", ""}, 2},
		{"record.toml", []string{"--format", "pdf"}, 2}, {"record.toml", []string{"--trials", "0"}, 2}, {"record.toml", []string{"--trials", "5"}, 2}, {"record.toml", []string{"--coverage", "95"}, 2},
		{"record.toml", []string{"--coverage", "0.9999", "--trials", "10000"}, 2},
		{"record.toml", []string{"--seed", "-1"}, 2}, {"record.toml", []string{"--force"}, 2}, {"record.toml", []string{"--out", "file"}, 1}, {"record.toml", []string{"--out", "full"}, 1},
		{"record.toml", []string{"--kit", "none.toml"}, 1}, {"record.toml", []string{"--kit", "b/dye.toml"}, 1},
		{"record.toml", []string{"--at", "2062-11-28 10:00"}, 2}, {"record.toml", []string{"--at", "noon"}, 2}, {"record.toml", []string{"--colour"}, 2},
		{"record.toml", []string{"--add", "bench: within 1e300 °C"}, 1}, {"record.toml", []string{"--add", "bench: 22 °C within 1e300 °C"}, 1}, {"record.toml", []string{"--add", "bench: 1e300 °C"}, 1},
		{"record.toml", []string{"--add", "entry 8: weighed 1e300 g"}, 2}, {"record.toml", []string{"--add", "step 7: added 1e300 mL with the 5 mL pipette"}, 2}, {"record.toml", []string{"--add", "entry 8: weighed 999999 g"}, 1},
		{"record.toml", []string{"--add", "step 7: took"}, 2}, {"record.toml", []string{"--by", strings.Repeat("A", 41)}, 1}, {"record.toml", []string{"--by", "A\u200bK"}, 1},
		{"record.toml", []string{"another"}, 2},
	} {
		before := read(t, c.record)
		args := append([]string{"made", "b/dye.toml", c.record, "--trials", "10000", "--by", "AK", "--add", "bench: 22 °C"}, c.add...)
		var out, errs bytes.Buffer
		code := run(t.Context(), args, &out, &errs)
		stdout, stderr := out.String(), errs.String()
		assert.Equal(t, c.code, code, "%v: %s", c.add, stderr)
		assert.Empty(t, stdout, c.add)
		assert.Contains(t, stderr, "minim: error: ", c.add)
		assert.NotContains(t, stderr, "added to", c.add)
		assert.Equal(t, before, read(t, c.record), c.add)
	}
	output(t, "made", "b/dye.toml", "record.toml", "--trials", "10000", "--by", "AK", "--add", "bench: 22 °C", "--to", "0.03 % w/v")
	assert.Contains(t, read(t, "record.toml"), `{ temperature = "22 °C", by = "AK", at = "2026-11-30 12:00 +01:00" }`)
}

// An instrument that the record knows and the bench no longer has is not advised.
func TestGoneInstrumentIsNotAdvised(t *testing.T) {
	skipIfSlow(t)
	const kit = "[[balance]]\nname = \"scale\"\ncapacity = \"20 g\"\nreadability = \"0.01 g\"\n[[flask]]\nname = \"flask\"\ncapacity = \"50 mL\"\nclass = \"A\"\n"
	const cylinder = "[[cylinder]]\nname = \"large cylinder\"\ncapacity = \"250 mL\"\nclass = \"A\"\n"
	const prep = "kit = \"bench.toml\"\ntarget = \"2 % w/v\"\nvolume = \"50 mL\"\ntolerance = \"8 % of target\"\n[solute]\nname = \"borax\"\n[solvent]\nname = \"water\"\n" +
		"[[route]]\nname = \"direct\"\nsteps = [ { weigh = \"1.00 g\", on = \"scale\" }, { make-up-to = \"50 mL\", in = \"flask\" } ]\n"
	inFolder(t, map[string]string{"bench.toml": kit + cylinder, "less.toml": kit, "prep.toml": prep})
	output(t, "new", "--record", "prep.toml", "record.toml")
	args := []string{"made", "prep.toml", "record.toml", "--trials", "10000", "--by", "AK", "--to", "0.5 % w/v", "--all", "--add"}
	assert.Contains(t, output(t, append(args, "step 1: done", "--add", "step 2: done")...), "large cylinder")
	without := output(t, append(args, "bench: 20 °C within 1 °C", "--kit", "less.toml")...)
	assert.Contains(t, without, "To correct it")
	assert.NotContains(t, without, "large cylinder")
}

// A batch of six steps that were entered as done is inside, and stays so when the prep
// changes for the next batch (see the archive made-after-the-prep-changed).
func TestSixStepsDoneStayInside(t *testing.T) {
	skipIfSlow(t)
	t.Chdir(t.TempDir())
	finished(t)
	inside := output(t, "made", "b/dye.toml", "record.toml", "--trials", "10000", "--all")
	require.Contains(t, inside, "\nINSIDE  two dilutions\n")
	prep := read(t, "b/dye.toml")
	route := prep[strings.Index(prep, `name = "two dilutions"`):]
	_, reading, _ := strings.Cut(route, `weigh = "`)
	reading, _, _ = strings.Cut(reading, `"`)
	changed := strings.Replace(route, reading, "3.00 g", 1)
	require.NoError(t, os.WriteFile("b/dye.toml", []byte(strings.Replace(prep, route, changed, 1)), 0o600))
	later := output(t, "made", "b/dye.toml", "record.toml", "--trials", "10000", "--all")
	assert.Contains(t, later, "\nINSIDE  two dilutions\n")
	assert.Contains(t, later, "step 1, weigh: planned then "+reading+", now 3.00 g")
	var rest []string
	for line := range strings.Lines(later) {
		if !strings.Contains(inside, line) {
			rest = append(rest, line)
		}
	}
	assert.LessOrEqual(t, len(rest), 6, rest)
	assert.Contains(t, output(t, "made", "b/dye.toml", "record.toml", "--trials", "10000", "--format", "json"), `"planned_now": "3.00 g"`)
	assert.Contains(t, output(t, "report", "b/dye.toml", "--record", "record.toml", "--trials", "10000"), "planned then "+reading+", now 3.00 g")
}
