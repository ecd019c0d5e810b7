package main

import (
	"bytes"
	"context"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// An invented bench and prep: two stocks of which one stands in vinegar.
const (
	stopKit = `[[balance]]
name = "scale"
capacity = "200 g"
readability = "0.01 g"
[[flask]]
name = "flask"
capacity = "25 mL"
class = "B"
[[pipette]]
name = "pipette"
kind = "graduated"
capacity = "5 mL"
class = "B"
[[candidate]]
kind = "flask"
name = "larger flask"
capacity = "50 mL"
class = "B"
`
	stopPrep = `kit = "kit.toml"
target = "0.5 % w/v"
volume = "15 mL"
tolerance = "10 % of target"
[solute]
name = "washing agent"
[solvent]
name = "water"
[[stock]]
name = "household bleach"
strength = "5 % w/v"
[[stock]]
name = "sour rinse"
strength = "4 % w/v"
solvent = "vinegar"
[[route]]
name = "from bleach"
steps = [
  { start = "household bleach" },
  { take = "2.5 mL", with = "pipette" },
  { make-up-to = "25 mL", in = "flask" },
]
[[route]]
name = "both"
steps = [
  { start = "sour rinse" },
  { take = "1 mL", with = "pipette" },
  { strengthen = "1 mL", of = "household bleach", with = "pipette" },
  { add = "5 mL", with = "pipette", contraction = "0 % of volume" },
]
`
)

// stopCommands are all that show a prep, with few trials.
var stopCommands = [][]string{
	{"compare", "prep.toml"}, {"plan", "prep.toml"}, {"buy", "prep.toml"}, {"rescue", "prep.toml", "--has", "5 % w/v, 20 mL"}, {"made", "prep.toml", "record.toml"},
	{"sheet", "prep.toml"}, {"report", "prep.toml"}, {"label", "prep.toml"}, {"report", "prep.toml", "--record", "record.toml"}, {"label", "prep.toml", "--record", "record.toml"},
}

func stopFolder(t *testing.T, prep string) {
	t.Helper()
	record := "route = \"from bleach\"\n[entries]\n"
	for i, step := range []string{"1", "2", "3"} {
		record += string(rune('1'+i)) + " = { step = " + step + ", by = \"AK\", at = \"2026-11-28 09:00\" }\n"
	}
	inFolder(t, map[string]string{"kit.toml": stopKit, "prep.toml": prep, "record.toml": record})
}

// What stands on the bench and may not meet comes above everything else, and what brings
// it together is not used.
func TestStopComesFirst(t *testing.T) {
	skipIfSlow(t)
	stopFolder(t, stopPrep)
	for _, args := range stopCommands {
		formats := []string{"text", "markdown"}
		if args[0] == "sheet" || args[0] == "report" || args[0] == "label" {
			formats = []string{""}
		}
		for _, format := range formats {
			with := append(append([]string(nil), args...), "--trials", "10000")
			if format != "" {
				with = append(with, "--format", format)
			}
			screen := output(t, with...)
			words := strings.Join(strings.Fields(screen), " ")
			assert.True(t, strings.HasPrefix(strings.TrimPrefix(words, "**"), "STOP: these two may not meet: household bleach (a stock; recognised by its name, "), "%v: %.300s", with, screen)
			assert.NotContains(t, words, "http", "%v", with)
			assert.Contains(t, words, "toxic gas at once – chlorine", "%v", with)
			assert.NotContains(t, words, "USE both")
			assert.NotContains(t, words, "USE sour rinse")
		}
	}
	words := strings.Join(strings.Fields(output(t, "compare", "prep.toml", "--trials", "10000", "--all")), " ")
	assert.Contains(t, output(t, "compare", "prep.toml", "--trials", "10000"), "STOP: not to be used")
	assert.Contains(t, words, "both: STOP: not to be used: it brings together vinegar and household bleach, which may not meet")
}

func TestStopInJSON(t *testing.T) {
	skipIfSlow(t)
	stopFolder(t, stopPrep)
	for _, args := range stopCommands[:5] {
		var found struct {
			MayNotMeet []struct {
				First, Second struct{ Name, Role, Recognised string }
				Happens       string `json:"what_happens"`
				Product       string `json:"gas_or_product"`
			} `json:"may_not_meet"`
		}
		require.NoError(t, json.Unmarshal([]byte(output(t, append(args, "--trials", "10000", "--format", "json")...)), &found))
		require.NotEmpty(t, found.MayNotMeet, "%v", args)
		assert.Equal(t, "household bleach", found.MayNotMeet[0].First.Name)
		assert.Equal(t, "the solvent of sour rinse", found.MayNotMeet[0].Second.Role)
		assert.Equal(t, "chlorine", found.MayNotMeet[0].Product)
	}
}

// In HTML the bar stands above the title.
func TestStopOnPaper(t *testing.T) {
	skipIfSlow(t)
	stopFolder(t, stopPrep)
	for _, name := range []string{"sheet", "report", "label"} {
		output(t, name, "prep.toml", "--trials", "10000", "--out", name+".html")
		_, body, _ := strings.Cut(read(t, name+".html"), "<body")
		at := strings.Index(body, "STOP: these two may not meet")
		require.Positive(t, at, name)
		if title := strings.Index(body, "<h1"); title >= 0 {
			assert.Less(t, at, title, name)
		}
	}
}

// Where every route brings such a pair together nothing is proposed, and nothing written.
func TestStopLeavesNothing(t *testing.T) {
	skipIfSlow(t)
	stopFolder(t, strings.NewReplacer(`"water"`, `"household ammonia"`, `"washing agent"`, `"sodium hypochlorite"`).Replace(stopPrep))
	commands := append([][]string{{"new", "--record", "prep.toml", "--route", "from bleach"}, {"sheet", "prep.toml", "--route", "from bleach", "--out", "sheet.html"}}, stopCommands...)
	for _, args := range commands {
		var out, errs bytes.Buffer
		assert.Equal(t, exitFailed, run(context.Background(), args, &out, &errs), "%v", args)
		assert.Empty(t, out.String(), "%v", args)
		assert.True(t, strings.HasPrefix(errs.String(), "minim: error: STOP: these two may not meet: sodium hypochlorite (the solute; "), "%v: %s", args, errs.String())
		assert.NotContains(t, errs.String(), "http")
	}
	assert.NoFileExists(t, "sheet.html")
}

// Left-overs are never told to be brought together.
func TestLeftOversStayApart(t *testing.T) {
	stopFolder(t, stopPrep)
	sheet := output(t, "sheet", "prep.toml", "--trials", "10000")
	assert.Contains(t, sheet, "Each left-over to its own labelled waste")
	assert.Contains(t, sheet, "Each left-over goes with its rinses to its own labelled waste, none back, none down the drain.")
	assert.NotContains(t, strings.ToLower(sheet), "leftovers and")
}

// A route that is named is not used either.
func TestStopOfANamedRoute(t *testing.T) {
	skipIfSlow(t)
	stopFolder(t, stopPrep)
	for _, name := range []string{"compare", "sheet", "report", "label"} {
		var out, errs bytes.Buffer
		assert.Equal(t, exitFailed, run(context.Background(), []string{name, "prep.toml", "--route", "both"}, &out, &errs), name)
		assert.Contains(t, errs.String(), "STOP: these two may not meet", name)
		assert.Empty(t, out.String(), name)
	}
}

// Where nothing is known nothing is said, least of all that it is safe.
func TestNoStopSaysNothing(t *testing.T) {
	skipIfSlow(t)
	stopFolder(t, strings.Replace(stopPrep, `solvent = "vinegar"`, ``, 1))
	for _, args := range stopCommands {
		screen := output(t, append(append([]string(nil), args...), "--trials", "10000")...)
		assert.NotContains(t, screen, "STOP", "%v", args)
		assert.NotContains(t, screen, "compatible", "%v", args)
	}
}
