// Package inline marks what in a text is to be set apart: the symbol of a quantity, which is
// italic, with its index, which is upright and stands lower (ISO 80000-1), and what is to be
// copied letter by letter. The marks are characters of the private use area, which no text of a
// user can hold, since files and options with characters that cannot be printed are refused, and
// pages leave them out; so whatever a name holds, it stays a name. Whoever writes a page takes
// the text apart by [Parts]; whoever writes data takes [Plain].
package inline

import (
	"regexp"
	"strings"
)

// The marks, each before what it marks; end stands behind.
const (
	symbol, index, verbatim, end = '\uE000', '\uE001', '\uE002', '\uE003'
)

// Symbol is the symbol of a quantity with its indices, if there are any: V, or V with the index
// 1, or with "1, 20 °C".
func Symbol(letter string, indices ...string) string {
	text := string(symbol) + unmarked(letter) + string(end)
	if len(indices) > 0 {
		text += string(index) + unmarked(strings.Join(indices, ", ")) + string(end)
	}
	return text
}

// Verbatim is a text that is to be copied letter by letter, such as a command: its hyphens stay
// hyphens, and its spaces spaces.
func Verbatim(text string) string { return string(verbatim) + unmarked(text) + string(end) }

// Style is how a part of a text is set.
type Style int

const (
	Words Style = iota
	Italic
	Index
	Letters // which are to be copied
)

// Part is a part of a text in one style.
type Part struct {
	Style Style
	Text  string
}

var styles = map[rune]Style{symbol: Italic, index: Index, verbatim: Letters}

// Parts takes a text apart. Marks that do not belong together are left out. Bytes that are no
// characters become �, since those on either side of a mark that is left out could make another mark.
func Parts(text string) (parts []Part) {
	text = strings.ToValidUTF8(text, "\uFFFD")
	for text != "" {
		at := strings.IndexFunc(text, isMark)
		if at < 0 {
			return append(parts, Part{Words, text})
		}
		if at > 0 {
			parts = append(parts, Part{Words, text[:at]})
		}
		mark, rest := text[at:at+markSize], text[at+markSize:]
		text = rest
		if to := strings.IndexFunc(rest, isMark); to > 0 && strings.HasPrefix(rest[to:], string(end)) && mark != string(end) {
			parts = append(parts, Part{styles[[]rune(mark)[0]], rest[:to]})
			text = rest[to+markSize:]
		}
	}
	return parts
}

// Of is another text in the style of a part.
func (p Part) Of(text string) string {
	switch p.Style {
	case Italic:
		return Symbol(text)
	case Index:
		return string(index) + unmarked(text) + string(end)
	case Letters:
		return Verbatim(text)
	}
	return text
}

// Plain is a text as a screen or a program has it: V_1 for V with the index 1.
func Plain(text string) string {
	if strings.IndexFunc(text, isMark) < 0 {
		return text
	}
	var plain strings.Builder
	for _, p := range Parts(text) {
		if p.Style == Index {
			plain.WriteString("_")
		}
		plain.WriteString(p.Text)
	}
	return plain.String()
}

// Outside changes what of a text is not to be copied letter by letter.
func Outside(text string, change func(string) string) string {
	var out strings.Builder
	for {
		words, rest, found := strings.Cut(text, string(verbatim))
		out.WriteString(change(words))
		if !found {
			return out.String()
		}
		to := strings.IndexRune(rest, end)
		if to < 0 {
			to = len(rest) - markSize
		}
		to = max(0, to+markSize)
		out.WriteString(string(verbatim) + rest[:to])
		text = rest[to:]
	}
}

// negative is a number below zero, at the start of a text or a word.
var negative = regexp.MustCompile(`(^|[\s\x{a0}(\[])-(\d)`)

// Minus gives the numbers of a text a true minus sign. Pages and pictures do so when all is
// said, and nothing else does, so that data and files keep the sign that programs read.
func Minus(text string) string { return negative.ReplaceAllString(text, "$1−$2") }

// markSize is how many bytes each mark has.
const markSize = len(string(end))

func isMark(r rune) bool { return r >= symbol && r <= end }

func unmarked(text string) string {
	return strings.Map(func(r rune) rune {
		if isMark(r) {
			return -1
		}
		return r
	}, text)
}
