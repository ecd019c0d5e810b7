package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/webtest"
)

// barStyle is how the first bar looks, and whether a printer keeps its colours.
const barStyle = `
const s = getComputedStyle(document.querySelector(".bar"));
return s.backgroundColor + " " + s.color + " " + s.printColorAdjust;`

// openQuiet opens a page, which must be quiet: no message on the console, no script, nothing
// asked for; it keeps our rules for pages; and at twice the size, or at 400 px,
// nothing is wider than the window, and no word or number with its unit broken, folds open or not.
func openQuiet(t *testing.T, b *webtest.Browser, path string) {
	t.Helper()
	name := filepath.Base(path)
	b.Open("file://" + path)
	assert.Equal(t, 0.0, b.Run("return document.scripts.length"), name)
	for _, open := range []bool{false, true} {
		b.Run("for (const fold of document.querySelectorAll('details')) fold.open = arguments[0]", open)
		for _, width := range []int{1200, 600, 400} { // 600 px is what 200 % leaves of it
			b.Size(width, 900)
			assert.Empty(t, b.Overflowing(), "%s at %d px", name, width)
		}
		if name != "classes.html" { // which has long addresses
			assert.Empty(t, b.Run(partedWords), "%s at 400 px", name)
		}
		assert.Empty(t, b.Faults(), name)
	}
	assert.Empty(t, b.Console(), name)
	assert.Empty(t, b.Requests(), name)
	keep(t, b, name)
}

// The papers are quiet, and have the pages that they should on A4 and on Letter.
func TestPapersInABrowser(t *testing.T) {
	skipIfSlow(t)
	b := webtest.Start(t)
	dir := t.TempDir()
	t.Chdir(dir)
	output(t, "new", "b")
	batchOf(t, "1.06 g")
	quick := []string{"--trials", "10000", "--date", "2026-11-28", "--out"}
	for name, doc := range map[string]struct {
		args        []string
		least, most int
	}{
		"report":        {[]string{"report"}, 0, 0}, // printed by TestReportOnPaper
		"made":          {[]string{"report", "b/dye.toml", "--record", "record.toml"}, 0, 0},
		"sheet":         {[]string{"sheet", "--route", "three dilutions"}, 2, 3},
		"sheet-weighed": {[]string{"sheet", "--route", "diluted by weighing"}, 2, 2},
		"label":         {[]string{"label", "--by", "AK", "--batch", "7", "--use-by", "2026-12-28"}, 0, 0}, // printed by TestLabelsOnPaper
	} {
		path := filepath.Join(dir, name+".html")
		output(t, append(append(doc.args, quick...), path)...)
		openQuiet(t, b, path)
		for paper, size := range map[string][2]float64{"A4": {21, 29.7}, "Letter": {21.59, 27.94}} {
			if doc.most == 0 {
				continue
			}
			pages := b.Print(size[0], size[1])
			assert.True(t, doc.least <= pages && pages <= doc.most, "%s has %d pages on %s", name, pages, paper)
		}
		if name != "made" { // which is about a bench of the user's
			assert.Equal(t, "rgb(0, 0, 0) rgb(255, 255, 255) exact", b.Run(barStyle), name)
		}
	}
}

// The screens as pages are quiet as well, and show every picture that they hold.
func TestScreensInABrowser(t *testing.T) {
	skipIfSlow(t)
	b := webtest.Start(t)
	dir := t.TempDir()
	t.Chdir(dir)
	output(t, "new", "b")
	batchOf(t, "1.06 g")
	quick := func(args ...string) []string { return append(args, "--trials", "10000") }
	for name, args := range map[string][]string{
		"compare": quick("compare"),
		"plan":    quick("plan", "--steps", "1"),
		"made":    quick("made", "b/dye.toml", "record.toml"),
		"buy":     quick("buy", "--steps", "0"),
		"rescue":  quick("rescue", "b/dye.toml", "--has", "0.07 % w/v, 20 mL"),
		"kit":     {"kit"}, "classes": {"kit", "--classes"},
	} {
		path := filepath.Join(dir, name+".html")
		require.NoError(t, os.WriteFile(path, []byte(output(t, append(args, "--format", "html")...)), 0o644))
		openQuiet(t, b, path)
		assert.Equal(t, []any{}, b.Run("return Array.from(document.images).filter(i => !i.naturalWidth).map(i => i.alt)"), name)
	}
}

// keep saves what a page looks like, in colour and in grey, where MINIM_SCREENSHOTS names
// a folder, for people to look at.
func keep(t *testing.T, b *webtest.Browser, name string) {
	dir := os.Getenv("MINIM_SCREENSHOTS")
	if dir == "" {
		return
	}
	for end, filter := range map[string]string{"": "none", "-grey": "grayscale(1)"} {
		b.Run("document.documentElement.style.filter = arguments[0]", filter)
		path := filepath.Join(dir, strings.TrimSuffix(name, ".html")+end+".png")
		require.NoError(t, os.WriteFile(path, b.Picture(), 0o644))
	}
}
