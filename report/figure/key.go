package figure

import (
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
)

// key explains the marks of a figure: one after the other, on as many lines as
// they need.
type key []keyItem

type keyItem struct {
	style text.Style
	words string
	// wide is the room that the mark before the words takes, 0 for none; draw
	// draws it from x, round the height y.
	wide vg.Length
	draw func(on *sheet, x, y vg.Length)
}

const (
	keyGap  = vg.Length(14)
	keyLine = vg.Length(15)
)

func (i keyItem) width() vg.Length { return i.wide + 1.04*i.style.Width(i.words) }

func (k *key) say(style text.Style, words string) {
	*k = append(*k, keyItem{style: style, words: words})
}

func (k *key) show(wide vg.Length, words string, draw func(on *sheet, x, y vg.Length)) {
	*k = append(*k, keyItem{nameText, words, wide + 4, draw})
}

// lines breaks the key.
func (k key) lines() (lines []key) {
	x := vg.Length(0)
	for _, item := range k {
		if len(lines) == 0 || x+item.width() > textWide {
			lines, x = append(lines, nil), 0
		}
		last := len(lines) - 1
		lines[last] = append(lines[last], item)
		x += item.width() + keyGap
	}
	return lines
}

func (k key) height() vg.Length { return keyLine * vg.Length(len(k.lines())) }

// draw writes the key from the base line y downwards.
func (k key) draw(on *sheet, y vg.Length) {
	for _, line := range k.lines() {
		x := margin
		for _, item := range line {
			if item.draw != nil {
				item.draw(on, x, y+3.3)
			}
			on.write(item.style, left, x+item.wide, y, item.words)
			x += item.width() + keyGap
		}
		y -= keyLine
	}
}
