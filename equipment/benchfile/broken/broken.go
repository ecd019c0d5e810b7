// Package broken breaks the keys of a good file one by one, for tests that each break is
// one mistake, told where it stands, with nothing after it that only follows from it.
package broken

import (
	"fmt"
	"regexp"
	"strings"
)

// Break is a file with one key or header broken, in a line counted from 1.
type Break struct {
	What string
	Line int
	Text string
	// Maybe: the key was taken out, or holds nonsense, which may be no mistake, or one
	// elsewhere.
	Maybe bool

	from, to int
	with     string
}

var (
	pair   = regexp.MustCompile(`([a-z][a-z0-9-]*) = ("[^"]*"|[0-9.]+|true|false|\[[^\[\]{}]*\])`)
	header = regexp.MustCompile(`(?m)^\[+([a-z-]+)\]+`)
)

// Breaks are those of a text: each value of another shape, empty and nonsense, each key
// and header misspelt, and each key taken out of its line.
func Breaks(text string) (list []Break) {
	for _, at := range pair.FindAllStringSubmatchIndex(text, -1) {
		key, value := text[at[2]:at[3]], text[at[4]:at[5]]
		other := "7"
		switch {
		case strings.HasPrefix(value, `"`):
			list = append(list, broken(text, key+" is empty", at[4], at[5], `""`))
			if key != "name" { // which several others may go by
				nonsense := broken(text, key+" is nonsense", at[4], at[5], `"?"`)
				nonsense.Maybe = true
				list = append(list, nonsense)
			}
		case !strings.HasPrefix(value, "["):
			other = `"seven"`
		}
		absent := broken(text, key+" is taken out", at[0], at[1], "")
		if end := at[1]; strings.HasPrefix(text[end:], ", ") {
			absent = broken(text, absent.What, at[0], end+2, "")
		} else if before := strings.TrimSuffix(text[:at[0]], ", "); len(before) < at[0] {
			absent = broken(text, absent.What, len(before), end, "")
		}
		absent.Maybe = true
		list = append(list, broken(text, key+" has another shape", at[4], at[5], other), absent)
		if len(key) > 1 { // else it cannot be guessed what was meant
			list = append(list, broken(text, key+" is misspelt", at[3], at[3], "x"))
		}
	}
	for _, at := range header.FindAllStringSubmatchIndex(text, -1) {
		list = append(list, broken(text, text[at[2]:at[3]]+" is misspelt", at[3], at[3], "x"))
	}
	return list
}

func broken(text, what string, from, to int, with string) Break {
	line := 1 + strings.Count(text[:from], "\n")
	return Break{
		What: fmt.Sprintf("line %d: %s", line, what), Line: line, Text: text[:from] + with + text[to:],
		from: from, to: to, with: with,
	}
}

// And is the file broken in a second place; ok is false where the two places touch.
func (b Break) And(text string, c Break) (both string, ok bool) {
	if b.from > c.from {
		b, c = c, b
	}
	if b.to >= c.from {
		return "", false
	}
	return text[:b.from] + b.with + text[b.to:c.from] + c.with + text[c.to:], true
}
