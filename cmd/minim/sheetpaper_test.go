package main

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/webtest"
)

// A printed sheet has its steps in 11 pt, a box of 25 x 11 mm for each reading with its unit in it, the
// planned value in 11 pt with its room below, and its title, a line for the batch and its page on every
// page; a row of the table stands whole, and a heading not alone at the foot.
func TestSheetOnPaper(t *testing.T) {
	skipIfSlow(t)
	b := webtest.Start(t)
	path := filepath.Join(t.TempDir(), "sheet.html")
	output(t, "sheet", "--trials", "10000", "--out", path)
	b.Open("file://" + path)
	for name, paper := range map[string][2]float64{"A4": a4, "Letter": letter} {
		sheets := b.Paper(paper[0], paper[1])
		assert.Equal(t, 2, len(sheets), name)
		boxes, all := 0, ""
		for i, sheet := range sheets {
			lines := sheet.Lines()
			last := len(lines) - 1
			assert.Equal(t, fmt.Sprintf("Bench sheet: Toning dye for a glass fill · batch ____________page %d of %d", i+1, len(sheets)), lines[last].Words, name)
			assert.NotContains(t, []string{"Steps", "You get", "All along", "You need"}, lines[last-1].Words, name)
			at := math.Inf(-1)
			for _, box := range sheet.Boxes {
				if math.Abs(box.Width-25) < 0.3 && math.Abs(box.Height-11) < 0.3 && math.Abs(box.Y-at) > 2 { // it is filled and outlined
					boxes++
					at = box.Y
				}
			}
			for _, line := range lines {
				all += line.Words + "\n"
				assert.GreaterOrEqual(t, line.Size, 7.9, "%s: %s", name, line.Words)
				for _, step := range []string{"rinse the boat into it", "into dry bottle", "from it with the", "its label"} {
					if strings.Contains(line.Words, step) {
						assert.InDelta(t, 11, line.Size, 0.1, "%s: %s", name, line.Words)
					}
				}
			}
		}
		assert.Equal(t, 6, boxes, "%s: each of six readings has a box", name)
		assert.Less(t, strings.Index(all, "All along"), strings.Index(all, "Steps"), "rules come before the steps")
		assert.Contains(t, all, "1.46 g to 1.54 g")
	}
	narrow(t, b, "sheet")
}

// narrow looks at a page on a window of 400 px: nothing is wider than it, and no number is parted from its
// unit.
func narrow(t *testing.T, b *webtest.Browser, name string) {
	t.Helper()
	b.Size(400, 900)
	assert.Empty(t, b.Overflowing(), "%s at 400 px", name)
	assert.Empty(t, b.Run(partedWords), "%s at 400 px", name)
	b.Size(1200, 900)
}

// partedWords are the words of a page, with the units bound to their numbers, that stand on two lines.
const partedWords = `
const found = [], range = document.createRange();
const walk = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT);
for (let n = walk.nextNode(); n; n = walk.nextNode())
	for (const m of n.data.matchAll(/[^ \t\n\-\u2010-\u2015\/·]+/g)) {
		if (m[0].length > 40 || !n.parentElement.checkVisibility()) continue; // a check sum goes on
		range.setStart(n, m.index); range.setEnd(n, m.index + m[0].length);
		const tops = new Set(Array.from(range.getClientRects()).filter(r => r.width > 0).map(r => Math.round(r.top)));
		if (tops.size > 1) found.push(m[0]);
	}
return found;`
