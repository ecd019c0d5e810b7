package figure

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"gonum.org/v1/plot/vg"
)

// wrap breaks words into at most the given number of lines of a width. What
// does not fit is cut, and the cut shown by an ellipsis.
func (h hand) wrap(style textStyle, width vg.Length, most int, words string) []string {
	rest := h.clean(words)
	var lines []string
	for len(lines) < most-1 && style.Width(rest) > width {
		line := head(style, width, rest)
		after := strings.TrimSpace(rest[len(line):])
		if word, _, _ := strings.Cut(rest, " "); len(line) < len(word) && whole(word) {
			line, after = h.cut(style, width, word), strings.TrimSpace(rest[len(word):])
		}
		if lines, rest = append(lines, strings.TrimSpace(line)), after; rest == "" {
			return lines
		}
	}
	return append(lines, h.cut(style, width, rest))
}

// head is as much of the text as fits a width: up to a space when it holds one,
// otherwise part of the word, at least one letter with its marks.
func head(style textStyle, width vg.Length, words string) string {
	fits, end := 0, 0
	for end < len(words) {
		_, size := utf8.DecodeRuneInString(words[end:])
		end += size
		for end < len(words) { // the marks of a letter stay with it
			mark, size := utf8.DecodeRuneInString(words[end:])
			if !unicode.Is(unicode.M, mark) {
				break
			}
			end += size
		}
		if fits > 0 && style.Width(words[:end]) > width {
			break
		}
		fits = end
	}
	if fits == len(words) {
		return words
	}
	end = fits // a space right behind what fits is a place to break at as well
	if words[fits] == ' ' {
		end++
	}
	last := strings.LastIndex(words[:end], " ")
	for space := last; space > 0; space = strings.LastIndex(words[:space], " ") {
		if !bound(words, space) {
			return words[:space]
		}
	}
	if last > 0 {
		return words[:last]
	}
	return words[:fits]
}

// bound reports whether no line is to break at a space: between a number and its unit, or in a chance.
func bound(words string, space int) bool {
	next := words[space+1:]
	if strings.HasPrefix(next, "100") && strings.HasSuffix(words[:space], " in") || strings.HasPrefix(next, "× ") || strings.HasSuffix(words[:space], "×") {
		return true
	}
	return words[space-1] >= '0' && words[space-1] <= '9' && next != "" && (next[0] == '%' || unicode.IsLetter(rune(next[0])) && len(strings.Fields(next)[0]) <= 3)
}

// whole reports whether a word is not to be broken at the end of a line: its letters stand in
// another order than they are written in, or change with their neighbours.
func whole(word string) bool {
	return strings.ContainsFunc(word, func(r rune) bool {
		return fromRight(r) || unicode.Is(unicode.M, r) || unicode.In(r, unicode.Devanagari, unicode.Thai, unicode.Bengali, unicode.Tamil, unicode.Khmer, unicode.Myanmar)
	})
}

func (h hand) cut(style textStyle, width vg.Length, words string) string {
	words = h.clean(words)
	if style.Width(words) <= width {
		return words
	}
	return strings.TrimSpace(head(style, width-style.Width("…"), words)) + "…"
}

// shortened is a name of so many letters at most, cut between words where it can be.
func shortened(name string, most int) string {
	letters := []rune(name)
	if len(letters) <= most {
		return name
	}
	end := most - 1
	for end > 0 && unicode.Is(unicode.M, letters[end]) {
		end--
	}
	short := string(letters[:end])
	if space := strings.LastIndex(short, " "); space > len(short)/2 {
		short = short[:space]
	}
	return strings.TrimSpace(short) + "…"
}
