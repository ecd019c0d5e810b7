package figure

import (
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/inline"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
)

// spellings of characters that the font does not have.
var spellings = strings.NewReplacer("℃", "°C", "⁻", "-", "μ", "µ")

// clean makes words fit for drawing: on one line, without marks that turn the
// direction of writing, and with a question mark for every character that the
// font does not have, which would otherwise be left out without a word.
func clean(words string) string {
	words = strings.Map(func(r rune) rune {
		if !drawable(r) {
			return '?'
		}
		return r
	}, quantity.OneLine(spellings.Replace(inline.Minus(inline.Plain(words)))))
	return strings.Join(strings.Fields(words), " ")
}

// drawable reports whether both weights of the font have a glyph.
func drawable(r rune) bool {
	for _, style := range []text.Style{nameText, boldText} {
		face := style.Handler.Cache().Lookup(style.Font, style.Font.Size)
		if glyph, err := face.Face.GlyphIndex(nil, r); err != nil || glyph == 0 {
			return false
		}
	}
	return true
}

// wrap breaks words into at most the given number of lines of a width. What
// does not fit is cut, and the cut shown by an ellipsis.
func wrap(style text.Style, width vg.Length, most int, words string) []string {
	rest := clean(words)
	var lines []string
	for len(lines) < most-1 && style.Width(rest) > width {
		line := head(style, width, rest)
		lines = append(lines, strings.TrimSpace(line))
		rest = strings.TrimSpace(rest[len(line):])
	}
	return append(lines, cut(style, width, rest))
}

// head is as much of the text as fits a width: up to a space when it holds one,
// otherwise part of the word, at least one letter.
func head(style text.Style, width vg.Length, words string) string {
	fits := 0
	for i, r := range words {
		end := i + len(string(r))
		if fits > 0 && style.Width(words[:end]) > width {
			break
		}
		fits = end
	}
	if space := strings.LastIndex(words[:fits], " "); space > 0 && fits < len(words) && words[fits] != ' ' {
		return words[:space]
	}
	return words[:fits]
}

func cut(style text.Style, width vg.Length, words string) string {
	if style.Width(words) <= width {
		return words
	}
	return strings.TrimSpace(head(style, width-style.Width("…"), words)) + "…"
}
