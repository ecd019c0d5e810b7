package benchfile

import (
	"cmp"
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
