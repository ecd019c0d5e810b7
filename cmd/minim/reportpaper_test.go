package main

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/webtest"
)

// A printed report has its result, the figure of it and the method on page 1, the figure of all routes in 7 pt
// or more, room to sign, and its title and page at the foot of each page. No heading and no row of heads stands
// last on a page, and no page ends or begins with the lone line of a paragraph, or holds only a few lines.
func TestReportOnPaper(t *testing.T) {
	skipIfSlow(t)
	b := webtest.Start(t)
	dir := t.TempDir()
	t.Chdir(dir)
	output(t, "new", "b")
	batchOf(t, "1.06 g")
	for name, report := range map[string]struct {
		args []string
		foot string
	}{
		"report": {nil, "Toning dye for a glass fill · 2026-11-28"},
		"made":   {[]string{"b/dye.toml", "--record", "record.toml"}, "Toning dye for a glass fill · batch ____________ · 2026-11-28"},
	} {
		path := filepath.Join(dir, name+".html")
		output(t, append(append([]string{"report"}, report.args...), "--trials", "10000", "--date", "2026-11-28", "--out", path)...)
		b.Open("file://" + path)
		var heads []string
		for _, head := range b.Run(`return Array.from(document.querySelectorAll("h2, thead, caption")).map(h => h.textContent)`).([]any) {
			heads = append(heads, strings.ReplaceAll(head.(string), " ", ""))
		}
		for paper, size := range map[string][2]float64{"A4": a4, "Letter": letter} {
			checkReport(t, name+" on "+paper, b.Paper(size[0], size[1]), heads, report.foot)
		}
		narrow(t, b, name)
	}
}

func checkReport(t *testing.T, name string, sheets []webtest.Sheet, heads []string, foot string) {
	t.Helper()
	require.True(t, 4 <= len(sheets) && len(sheets) <= 8, "%s: %d pages", name, len(sheets))
	all := ""
	wide := 0.0
	for i, sheet := range sheets {
		lines := sheet.Lines()
		last := len(lines) - 1
		require.Greater(t, last, 5, "%s, page %d", name, i+1)
		assert.Equal(t, fmt.Sprintf("%spage %d of %d", foot, i+1, len(sheets)), lines[last].Words, name)
		assert.NotContains(t, heads, strings.ReplaceAll(lines[last-1].Words, " ", ""), "%s, page %d", name, i+1)
		page := ""
		for _, line := range lines {
			assert.GreaterOrEqual(t, line.Size, 6.95, "%s: %s", name, line.Words)
			page += line.Words + "\n"
		}
		for _, picture := range sheet.Pictures {
			wide = max(wide, picture.Width)
		}
		if i == 0 {
			require.NotEmpty(t, sheet.Pictures, name)
			assert.InDelta(t, 85, sheet.Pictures[0].Width, 0.5, name)
			for _, part := range []string{"Result", "Method, to be quoted", "The largest part of the uncertainty"} {
				assert.Contains(t, page, part, name)
			}
		}
		all += page
	}
	const figureWidth, figureType = 576, 8 // in pt, as it is drawn
	assert.GreaterOrEqual(t, figureType*wide*72/25.4/figureWidth, 6.95, "%s: the figure is %.0f mm wide", name, wide)
	assert.Contains(t, all, "drawn up by")
	assert.Contains(t, all, "checked by")
}
