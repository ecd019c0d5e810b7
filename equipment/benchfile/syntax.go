package benchfile

import (
	"bytes"
	"slices"
	"strings"
)

// fault is a place where the parser gave up, and what can be seen round it.
type fault struct {
	*source
	at      span
	message string // the parser's own
	start   int    // where the expression starts
	open    []byte // brackets and braces that are open at the fault
	marks   []int  // offsets after each = [ { , before the fault, outside texts
	quote   int    // where the text starts in which the fault stands, or -1
}

// newFault looks at the text of the expression that starts after an offset.
func newFault(src *source, at span, message string, after int) *fault {
	f := &fault{source: src, at: at, message: message, start: after, quote: -1}
	for f.start < at.from && isOneOf(src.data[f.start], " \t\r\n#") {
		if src.data[f.start] == '#' {
			f.start = src.bounds(src.line(f.start)).to
		} else {
			f.start++
		}
	}
	f.look()
	return f
}

// look goes through the expression up to the fault.
func (f *fault) look() {
	for i := f.start; i < f.at.from; {
		switch c := f.data[i]; c {
		case '"', '\'':
			end := f.textEnd(i)
			if end > f.at.from {
				f.quote = i
				return
			}
			i = end
			continue
		case '#':
			i = f.bounds(f.line(i)).to
			continue
		case '[', '{':
			f.open = append(f.open, c)
			f.marks = append(f.marks, i+1)
		case ']', '}':
			f.open = f.open[:max(0, len(f.open)-1)]
		case '=', ',':
			f.marks = append(f.marks, i+1)
		}
		i++
	}
}

// textEnd returns the offset after the text that is opened at i, which for one
// that is not closed is past the fault.
func (f *fault) textEnd(i int) int {
	delimiter := f.data[i : i+1]
	if triple := bytes.Repeat(delimiter, 3); bytes.HasPrefix(f.data[i:], triple) {
		delimiter = triple
	}
	for j := i + len(delimiter); j < len(f.data); j++ {
		switch {
		case delimiter[0] == '"' && f.data[j] == '\\':
			j++
		case bytes.HasPrefix(f.data[j:], delimiter):
			return j + len(delimiter)
		case len(delimiter) == 1 && f.data[j] == '\n':
			return len(f.data) + 1
		}
	}
	return len(f.data) + 1
}

// text returns the line of the fault.
func (f *fault) text() string {
	b := f.bounds(f.line(f.at.from))
	return string(f.data[b.from:b.to])
}

// char returns the character at the fault, "" at the end of a line.
func (f *fault) char() string {
	rest := f.data[min(f.at.from, len(f.data)):f.bounds(f.line(f.at.from)).to]
	for _, r := range string(rest) {
		return string(r)
	}
	return ""
}

// says reports whether the parser's message holds one of the phrases.
func (f *fault) says(phrases ...phrase) bool { return says(f.message, phrases...) }

func says(message string, phrases ...phrase) bool {
	return slices.ContainsFunc(phrases, func(p phrase) bool { return strings.Contains(message, p) })
}

// bareSpan returns the value without quotes in which the fault stands, with a
// comma between two of its digits. It may be empty.
func (f *fault) bareSpan() span {
	if len(f.marks) == 0 {
		return span{f.at.from, f.at.from}
	}
	i := len(f.marks) - 1
	if i > 0 && f.decimalComma(f.marks[i]-1) {
		i--
	}
	line := f.bounds(f.line(f.at.from))
	from := min(f.skip(f.marks[i], " \t\r\n"), line.to)
	to := max(from, f.at.from)
	for to < line.to && f.data[to] != '#' && !f.ends(to) {
		to++
	}
	for to > from && isOneOf(f.data[to-1], " \t") {
		to--
	}
	return span{from, to}
}

// ends reports whether a value in brackets or braces ends at the offset.
func (f *fault) ends(i int) bool {
	return len(f.open) > 0 && isOneOf(f.data[i], ",]}") && !f.decimalComma(i)
}

// decimalComma reports a comma between two digits.
func (f *fault) decimalComma(i int) bool {
	return f.data[i] == ',' && i > 0 && i+1 < len(f.data) && isDigit(f.data[i-1]) && isDigit(f.data[i+1])
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }
