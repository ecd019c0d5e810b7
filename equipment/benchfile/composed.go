package benchfile

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// compositions are the Latin, Greek and Cyrillic letters with marks that the normal form NFC
// has: in each line the letter, the letter and the mark that it consists of, and the
// combining class of the mark. Source: Unicode Character Database 14.0, UnicodeData.txt,
// canonical decompositions of U+00C0 to U+024F, U+0370 to U+052F and U+1E00 to U+1FFF but for
// those that NFC does not put together.
//
//go:embed composed.txt
var compositions string

type pair struct{ letter, mark rune }

// composed and classes are what compositions say, apart the inverse of composed.
var composed, apart, classes = readCompositions(compositions)

func readCompositions(text string) (composed map[pair]rune, apart map[rune]pair, classes map[rune]int) {
	composed, apart, classes = make(map[pair]rune), make(map[rune]pair), make(map[rune]int)
	for line := range strings.Lines(text) {
		var whole, letter, mark rune
		var class int
		if _, err := fmt.Sscanf(line, "%X %X %X %d", &whole, &letter, &mark, &class); err != nil {
			panic("benchfile: a composition: " + err.Error())
		}
		composed[pair{letter, mark}], apart[whole], classes[mark] = whole, pair{letter, mark}, class
	}
	return composed, apart, classes
}

// Composed writes letters with marks in one character each, as the normal form NFC does, so
// that two texts that look the same are the same, whatever keyboard or system they come
// from. Scripts other than Latin, Greek and Cyrillic stay as they are.
func Composed(text string) string {
	if !strings.ContainsFunc(text, func(r rune) bool { return unicode.Is(unicode.Mn, r) }) {
		return text
	}
	var letters []rune
	for _, r := range text {
		letters = takeApart(letters, r)
	}
	sortMarks(letters)
	return string(putTogether(letters))
}

// takeApart appends a character, a letter with marks as the letter and its marks.
func takeApart(letters []rune, r rune) []rune {
	if p, ok := apart[r]; ok {
		return append(takeApart(letters, p.letter), p.mark)
	}
	return append(letters, r)
}

// sortMarks puts the marks of each letter in the order of their classes.
func sortMarks(letters []rune) {
	for from := 0; from < len(letters); {
		to := from
		for to < len(letters) && classes[letters[to]] > 0 {
			to++
		}
		slices.SortStableFunc(letters[from:to], func(a, b rune) int { return classes[a] - classes[b] })
		from = max(to, from+1)
	}
}

// putTogether puts each mark that is not kept from its letter by another of its class into
// the letter.
func putTogether(letters []rune) []rune {
	var list []rune
	letter, last := -1, 0
	for _, r := range letters {
		class := classes[r]
		if letter >= 0 && (class > last || len(list) == letter+1) {
			if whole, ok := composed[pair{list[letter], r}]; ok {
				list[letter] = whole
				continue
			}
		}
		if last = class; class == 0 {
			letter = len(list)
		}
		list = append(list, r)
	}
	return list
}
