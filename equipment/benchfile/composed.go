package benchfile

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"sync"
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

// marked is what compositions say: composed and the classes of marks, apart the inverse of composed.
type marked struct {
	composed map[pair]rune
	apart    map[rune]pair
	classes  map[rune]int
}

// knownMarks are read once a text has marks.
var knownMarks = sync.OnceValue(func() *marked { return readCompositions(compositions) })

func readCompositions(text string) *marked {
	m := &marked{make(map[pair]rune), make(map[rune]pair), make(map[rune]int)}
	for line := range strings.Lines(text) {
		var whole, letter, mark rune
		var class int
		if _, err := fmt.Sscanf(line, "%X %X %X %d", &whole, &letter, &mark, &class); err != nil {
			panic("benchfile: a composition: " + err.Error())
		}
		m.composed[pair{letter, mark}], m.apart[whole], m.classes[mark] = whole, pair{letter, mark}, class
	}
	return m
}

// Composed writes letters with marks in one character each, as the normal form NFC does, so
// that two texts that look the same are the same, whatever keyboard or system they come
// from. Scripts other than Latin, Greek and Cyrillic stay as they are.
func Composed(text string) string {
	if !strings.ContainsFunc(text, func(r rune) bool { return unicode.Is(unicode.Mn, r) }) {
		return text
	}
	known := knownMarks()
	var letters []rune
	for _, r := range text {
		letters = known.takeApart(letters, r)
	}
	known.sortMarks(letters)
	return string(known.putTogether(letters))
}

// takeApart appends a character, a letter with marks as the letter and its marks.
func (m *marked) takeApart(letters []rune, r rune) []rune {
	if p, ok := m.apart[r]; ok {
		return append(m.takeApart(letters, p.letter), p.mark)
	}
	return append(letters, r)
}

// sortMarks puts the marks of each letter in the order of their classes.
func (m *marked) sortMarks(letters []rune) {
	for from := 0; from < len(letters); {
		to := from
		for to < len(letters) && m.classes[letters[to]] > 0 {
			to++
		}
		slices.SortStableFunc(letters[from:to], func(a, b rune) int { return m.classes[a] - m.classes[b] })
		from = max(to, from+1)
	}
}

// putTogether puts each mark that is not kept from its letter by another of its class into
// the letter.
func (m *marked) putTogether(letters []rune) []rune {
	var list []rune
	letter, last := -1, 0
	for _, r := range letters {
		class := m.classes[r]
		if letter >= 0 && (class > last || len(list) == letter+1) {
			if whole, ok := m.composed[pair{list[letter], r}]; ok {
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
