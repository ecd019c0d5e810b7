package benchfile

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"minim/equipment/quantity"
)

// Text returns the text at the key without the space round it, as [Composed] writes it, ""
// when absent. A text that is empty, or holds characters that cannot be printed, is a
// mistake.
func (t *Table) Text(key string) string { return Composed(t.FileName(key)) }

// FileName is Text for the name of a file, which stays as it is written.
func (t *Table) FileName(key string) string {
	v := t.ask(key)
	if v == nil {
		return ""
	}
	return t.text(key, v)
}

// Word returns the text at the key, which must be one of the words; "" when
// absent or another.
func (t *Table) Word(key string, allowed ...string) string {
	word := t.Text(key)
	if word == "" || slices.Contains(allowed, word) {
		return word
	}
	hint := ""
	if near := Nearest(word, allowed); near != "" {
		hint = "write " + quote(near)
	}
	t.Fail(key, quote(word)+" is not one of "+strings.Join(allowed, ", "), hint)
	return ""
}

// Texts returns the texts of a list, nil when absent. One text without brackets
// is a list of one.
func (t *Table) Texts(key string) (texts []string) {
	for _, v := range t.items(key) {
		texts = append(texts, Composed(t.text(key, v)))
	}
	return texts
}

// items returns the values of a list, or the one value that stands in its place.
func (t *Table) items(key string) []*value {
	v := t.ask(key)
	switch {
	case v == nil:
		return nil
	case v.shape == isList && !v.headed():
		return t.atMost(key, v.items)
	}
	return []*value{v}
}

// atMost returns the items of a list, and no more than it may have: the first that is too
// many is a mistake.
func (t *Table) atMost(key string, items []*value) []*value {
	most := LongestList(key)
	if len(items) <= most {
		return items
	}
	t.refuse(key, items[most], fmt.Sprintf("this is number %d of %d in the list", most+1, len(items)), fmt.Sprintf("at most %d are read here", most))
	return items[:most]
}

// text returns the trimmed text of a value, "" when it is no text to be shown.
func (t *Table) text(key string, v *value) string {
	if v.shape != isText {
		t.noText(key, v)
		return ""
	}
	text, written := strings.TrimSpace(v.text), string(t.file.data[v.at.from:v.at.to])
	unprintable := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsGraphic(r) })
	switch most := longestText(key); {
	case utf8.RuneCountInString(text) > most:
		t.refuse(key, v, fmt.Sprintf("the text has %d characters", utf8.RuneCountInString(text)), fmt.Sprintf("at most %d are read here", most))
	case text == "":
		t.refuse(key, v, "the text is empty", "write something between the quotes, or leave the key out")
	case unprintable < 0:
		return text
	case strings.Contains(written, `:\`):
		t.refuse(key, v, fmt.Sprintf("the text holds the character %U, which cannot be printed", []rune(text[unprintable:])[0]), onBackslash)
	default:
		t.refuse(key, v, fmt.Sprintf("the text holds the character %U, which cannot be printed", []rune(text[unprintable:])[0]), "take it out")
	}
	return ""
}

// noText records that a value is no text.
func (t *Table) noText(key string, v *value) {
	if v.text == "" {
		t.wrong(key, v, "a text in quotes", "")
	} else {
		t.wrong(key, v, "a text in quotes", "put quotes round it: "+quote(v.text))
	}
}

// quote shows a text in quotes, with unprintable characters escaped.
func quote(text string) string { return strconv.Quote(quantity.Shortened(text)) }

// longestLists are the most items of lists by their key, of tables of the same header, and
// of what they make together.
var longestLists = map[string]int{
	"instruments of a kit": 100, "candidate": 50, "route": 200, "steps": 100, "stock": 50, "packet": 50, "hazard": 50, "tolerance": 20,
	"ladder": 50, "entries": 2000, "readings": 1000, "hazards": 50, "words": 50, "without": 100, "any other list": 200,
}

// longestTexts are the most characters of a text by its key.
var longestTexts = map[string]int{"note": 5000, "title": 300, "any other text": 500}

// longestText is the most characters that a text at a key may have.
func longestText(key string) int { return cmp.Or(longestTexts[key], longestTexts["any other text"]) }

// LongestList is the most items that a list at a key may have.
func LongestList(key string) int { return cmp.Or(longestLists[key], longestLists["any other list"]) }

// FailWith records the mistake that a parser found in the text at a key, or [NoSuch].
func (t *Table) FailWith(key string, err error) {
	var e *quantity.Error
	if errors.As(err, &e) {
		t.Fail(key, e.Message, e.Hint)
	} else {
		t.Fail(key, err.Error(), "")
	}
}

// NoSuch says that a name is not among those it is chosen from, and suggests the nearest
// or else lists them.
func NoSuch(noun, name string, among []string) *quantity.Error {
	e := quantity.Error{Message: "there is no " + noun + " called " + quote(name), Hint: "there is none to choose from"}
	if near := Nearest(name, among); near != "" {
		return &quantity.Error{Message: e.Message, Hint: "perhaps " + quote(near) + " is meant"}
	} else if len(among) > 0 {
		return &quantity.Error{Message: e.Message, Hint: "choose from " + strings.Join(among, ", ")}
	}
	return &e
}

// Refuse returns a mistake about the file as a whole, whatever else is in it, with what
// else helps.
func (t *Table) Refuse(message, hint string, help ...Help) *Mistake {
	return t.file.mistake(t.at, message, hint).with(help)
}

// Nearest returns the word that a mistyped one most likely stands for: equal
// but for case, or nearest by letters added, left out, changed or swapped, at
// most one for three letters. It returns "" when none is near.
func Nearest(word string, among []string) string {
	const most = 64 // bytes; nothing longer is a slip of the keyboard
	if len(word) > most {
		return ""
	}
	best, least := "", 1+len([]rune(word))/3
	for _, candidate := range among {
		if strings.EqualFold(word, candidate) {
			return candidate
		}
		if d := distance([]rune(word), []rune(candidate)); d < least {
			best, least = candidate, d
		}
	}
	return best
}

// distance counts the single letters to add, leave out or change, and the
// neighbours to swap, between two words (optimal string alignment).
func distance(a, b []rune) int {
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			change := rows[i-1][j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			rows[i][j] = min(change, rows[i-1][j]+1, rows[i][j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				rows[i][j] = min(rows[i][j], rows[i-2][j-2]+1)
			}
		}
	}
	return rows[len(a)][len(b)]
}
