package main

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/page"
	"minim/report/webtest"
)

// onPaper is what labels should be like when they are printed: of a size, so many side by side and below
// each other, the first so far from the edges of the paper, and with gaps.
type onPaper struct {
	paper         [2]float64 // in cm
	size          page.Size
	columns, rows int
	margin, gap   page.Size
}

var a4, letter = [2]float64{21, 29.7}, [2]float64{21.59, 27.94}

// Labels stand on paper where they should to 0.3 mm: on sheets that come cut, and where they are to be cut
// out. Nothing of a label is cut off or broken, the strength is its largest type, none is under 6 pt,
// and the field to write in is 35 mm wide.
func TestLabelsOnPaper(t *testing.T) {
	skipIfSlow(t)
	b := webtest.Start(t)
	dir := t.TempDir()
	for name, test := range map[string]struct {
		args []string
		want []onPaper
	}{
		"sheet": {[]string{"--sheet", "A4, 3 x 7, margin 7 mm, gap 2.5 mm"}, []onPaper{{a4, page.Size{Width: 191.0 / 3, Height: 268.0 / 7}, 3, 7, page.Size{Width: 7, Height: 7}, page.Size{Width: 2.5, Height: 2.5}}}},
		"sheet of unequal margins": {[]string{"--sheet", "Letter, 2 x 5, margin 4 x 12.7 mm, gap 5 x 0 mm", "--size", "100 x 50.8 mm"},
			[]onPaper{{letter, page.Size{Width: 100, Height: 50.8}, 2, 5, page.Size{Width: 4, Height: 12.7}, page.Size{Width: 5}}}},
		"size": {[]string{"--size", "60 x 45 mm"}, []onPaper{
			{a4, page.Size{Width: 60, Height: 45}, 3, 6, page.Size{Width: 4.5, Height: 4.5}, page.Size{}}, {letter, page.Size{Width: 60, Height: 45}, 3, 6, page.Size{Width: 4.5, Height: 4.5}, page.Size{}}}},
		"usual": {nil, []onPaper{
			{a4, page.Size{Width: 90, Height: 54}, 2, 5, page.Size{Width: 4.5, Height: 4.5}, page.Size{}}, {letter, page.Size{Width: 90, Height: 54}, 2, 5, page.Size{Width: 4.5, Height: 4.5}, page.Size{}}}},
	} {
		path := filepath.Join(dir, name+".html")
		output(t, append([]string{"label", "--trials", "10000", "--count", "22", "--out", path}, test.args...)...)
		b.Open("file://" + path)
		assert.Empty(t, b.Run(`return Array.from(document.querySelectorAll(".label")).filter(l => l.scrollHeight > l.clientHeight || l.scrollWidth > l.clientWidth).map(l => l.textContent)`), name)
		for _, want := range test.want {
			want.check(t, name, b.Paper(want.paper[0], want.paper[1]))
		}
		keep(t, b, name+"-label.html")
	}
}

// check looks at the labels of three bottles, of the last 22.
func (want *onPaper) check(t *testing.T, name string, sheets []webtest.Sheet) {
	t.Helper()
	const labels = 24
	perPage := want.columns * want.rows
	require.Equal(t, (labels+perPage-1)/perPage, len(sheets), name)
	for p, sheet := range sheets {
		found := boxesOf(sheet.Boxes, want.size)
		require.Equal(t, min(perPage, labels-p*perPage), len(found), "%s, page %d", name, p+1)
		for i, box := range found {
			x := want.margin.Width + float64(i%want.columns)*(want.size.Width+want.gap.Width)
			y := want.margin.Height + float64(i/want.columns)*(want.size.Height+want.gap.Height)
			assert.True(t, math.Abs(box.X-x) < 0.3 && math.Abs(box.Y-y) < 0.3, "%s, page %d: label %d stands at %.2f, %.2f, and should at %.2f, %.2f mm", name, p+1, i+1, box.X, box.Y, x, y)
			want.checkText(t, fmt.Sprintf("%s, label %d", name, i+1), sheet.Texts, box)
		}
		fields := 0
		for _, box := range sheet.Boxes {
			if math.Abs(box.Width-35) < 0.4 && box.Height > 4 && box.Height < 7 {
				fields++
			}
		}
		assert.Equal(t, len(found), fields, "%s: each label has a field 35 mm wide", name)
	}
}

// checkText looks at what stands on a label.
func (want *onPaper) checkText(t *testing.T, name string, texts []webtest.Text, box webtest.Box) {
	t.Helper()
	on := webtest.Sheet{}
	for _, text := range texts {
		if text.X > box.X && text.X < box.X+box.Width && text.Y > box.Y && text.Y < box.Y+box.Height {
			on.Texts = append(on.Texts, text)
		}
	}
	lines := on.Lines()
	require.NotEmpty(t, lines, name)
	largest := slices.MaxFunc(lines, func(a, b webtest.Text) int { return int(math.Copysign(1, a.Size-b.Size)) })
	assert.Contains(t, largest.Words, "% w/v", name)
	words := ""
	for _, line := range lines {
		words += line.Words + " "
		assert.Greater(t, line.Size, 5.9, "%s: %s", name, line.Words)
	}
	for _, must := range []string{"dye in ethanol", "irritant", "flammable", "not stated, treat as undiluted", "made on, by", "bottle"} {
		assert.Contains(t, words, must, name)
	}
}

// boxesOf are those of a size.
func boxesOf(boxes []webtest.Box, size page.Size) (list []webtest.Box) {
	for _, box := range boxes {
		if math.Abs(box.Width-size.Width) < 0.3 && math.Abs(box.Height-size.Height) < 0.3 {
			list = append(list, box)
		}
	}
	return list
}

// What may not meet stands on a page of its own before labels that come cut, which stay in their places.
func TestStopBeforeLabelsOnPaper(t *testing.T) {
	skipIfSlow(t)
	b := webtest.Start(t)
	stopFolder(t, stopPrep)
	path := filepath.Join(t.TempDir(), "stop.html")
	output(t, "label", "prep.toml", "--trials", "10000", "--sheet", "A4, 2 x 4, margin 8 x 10 mm, gap 0 mm", "--out", path)
	b.Open("file://" + path)
	sheets := b.Paper(a4[0], a4[1])
	require.Equal(t, 2, len(sheets), "pages")
	size := page.Size{Width: 97, Height: 277.0 / 4}
	assert.Contains(t, sheets[0].Lines()[0].Words, "STOP: these two may not meet")
	assert.Empty(t, boxesOf(sheets[0].Boxes, size))
	for _, sheet := range sheets[1:] {
		found := boxesOf(sheet.Boxes, size)
		require.NotEmpty(t, found)
		assert.InDelta(t, 8, found[0].X, 0.3)
		assert.InDelta(t, 10, found[0].Y, 0.3)
	}
}
