package figure

import (
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
)

// key explains the marks of a figure: one after the other, on as many lines as
// they need.
type key struct {
	// stretch is how much wider than measured words may be, and gap what stands between items.
	stretch, gap vg.Length
	items        []keyItem
}

type keyItem struct {
	style text.Style
	words string
	// wide is the room that the mark before the words takes, 0 for none; draw
	// draws it from x, round the height y.
	wide vg.Length
	draw func(on *sheet, x, y vg.Length)
}

const keyLine = vg.Length(15)

func (k *key) width(i keyItem) vg.Length { return i.wide + k.stretch*i.style.Width(i.words) }

func (k *key) say(style text.Style, words string) {
	k.items = append(k.items, keyItem{style: style, words: words})
}

func (k *key) show(wide vg.Length, words string, draw func(on *sheet, x, y vg.Length)) {
	k.items = append(k.items, keyItem{nameText, words, wide + 4, draw})
}

// lines breaks the key.
func (k *key) lines() (lines [][]keyItem) {
	x := vg.Length(0)
	for _, item := range k.items {
		if len(lines) == 0 || x+k.width(item) > textWide {
			lines, x = append(lines, nil), 0
		}
		last := len(lines) - 1
		lines[last] = append(lines[last], item)
		x += k.width(item) + k.gap
	}
	return lines
}

func (k *key) height() vg.Length { return keyLine * vg.Length(len(k.lines())) }

// draw writes the key from the base line y downwards.
func (k *key) draw(on *sheet, y vg.Length) {
	for _, line := range k.lines() {
		x := margin
		for _, item := range line {
			if item.draw != nil {
				item.draw(on, x, y+3.3)
			}
			on.write(item.style, left, x+item.wide, y, item.words)
			x += k.width(item) + k.gap
		}
		y -= keyLine
	}
}
