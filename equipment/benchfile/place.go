// Package benchfile reads the TOML files of a bench and knows where everything
// in them stands, so that a mistake is shown with its line, a mark under it and
// the cure.
//
// A file is read through a cursor. Accessors of Table return zero values for
// what is absent or wrong and record the mistake; Err closes the file, adds the
// keys that nobody asked for, and returns all mistakes. Loading code is
// therefore a straight line that ends with one check.
//
//	root, err := benchfile.Parse("bench.toml", data)
//	if err != nil {
//		return err
//	}
//	for _, t := range root.Tables("balance") {
//		t.Need("name", "capacity")
//		name, capacity := t.Text("name"), t.Positive("capacity", quantity.Mass)
//	}
//	return root.Err()
package benchfile

import (
	"bytes"
	"fmt"
	"sort"
	"strings"
	"unicode/utf8"
)

// place is where something stands in a file. Lines and columns count from 1;
// columns count characters, a tab as one. In a [Change], File is what the change
// goes by, and Line is 0.
type place struct {
	File         string
	Line, Column int
}

// String returns the place as file:line:column, or what a change goes by.
func (p place) String() string {
	if p.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// span is a range of bytes in a file.
type span struct{ from, to int }

// on is the span so many bytes further on.
func (s span) on(by int) span { return span{s.from + by, s.to + by} }

// source is the text of a file with the start of each of its lines.
type source struct {
	name  string
	data  []byte
	lines []int
	// read is the whole file as it was read.
	read  []byte
	added map[int]string // what the lines of changes go by
}

// newSource finds the lines of a text.
func newSource(name string, data []byte) *source {
	s := &source{name: name, data: data, lines: []int{0}}
	for i, b := range data {
		if b == '\n' {
			s.lines = append(s.lines, i+1)
		}
	}
	return s
}

// line returns the number, counted from 0, of the line that holds the offset.
func (s *source) line(offset int) int { return sort.SearchInts(s.lines, offset+1) - 1 }

// bounds returns the span of a line, counted from 0, without its line end.
func (s *source) bounds(line int) span {
	from, to := s.lines[line], len(s.data)
	if line+1 < len(s.lines) {
		to = s.lines[line+1] - 1
	}
	return span{from, from + len(bytes.TrimSuffix(s.data[from:to], []byte("\r")))}
}

// place returns where an offset stands.
func (s *source) place(offset int) place {
	line := s.line(offset)
	p := place{s.name, line + 1, 1 + utf8.RuneCount(s.data[s.lines[line]:offset])}
	if name, ok := s.added[line]; ok {
		p.File, p.Line = name, 0
	}
	return p
}

// addLine puts the line of a change below the text, so that spans can point into
// it, and returns its offset.
func (s *source) addLine(name, line string) int {
	if last := len(s.data); s.lines[len(s.lines)-1] != last {
		s.data = append(s.data, '\n')
		s.lines = append(s.lines, len(s.data))
	}
	from := len(s.data)
	if s.added == nil {
		s.added = map[int]string{}
	}
	s.added[len(s.lines)-1] = name
	s.data = append(s.data, line+"\n"...)
	s.lines = append(s.lines, len(s.data))
	return from
}

// isAdded reports whether a span points into the line of a change.
func (s *source) isAdded(at span) bool { return s.added[s.line(at.from)] != "" }

// mistake returns a mistake that marks the part of a span on its first line.
func (s *source) mistake(at span, message, hint string) *Mistake {
	bounds := s.bounds(s.line(at.from))
	from, to := min(at.from, bounds.to), min(at.to, bounds.to)
	return &Mistake{
		place:   s.place(from),
		Source:  strings.ToValidUTF8(string(s.data[bounds.from:bounds.to]), "\uFFFD"),
		Width:   max(1, utf8.RuneCount(s.data[from:max(from, to)])),
		Message: message,
		Hint:    hint,
	}
}

// The parser says where keys and plain values stand; the rest is found by
// looking at the text round them.

// closing returns the end of the brace that closes after from, or from itself
// where a comment stands before it.
func (s *source) closing(from int) int {
	if end := s.skip(from, " \t\r\n,"); end < len(s.data) && s.data[end] == '}' {
		return end + 1
	}
	return from
}

// header returns the span of a header with its brackets.
func (s *source) header(parts []part) span {
	from, to := parts[0].at.from, parts[len(parts)-1].at.to
	for from > 0 && isOneOf(s.data[from-1], " \t[") {
		from--
	}
	return span{s.skip(from, " \t"), s.skip(s.skip(to, " \t"), "]")}
}

// skip returns the first offset from the given one on that holds none of the bytes.
func (s *source) skip(from int, bytes string) int {
	for from < len(s.data) && isOneOf(s.data[from], bytes) {
		from++
	}
	return from
}

// tokenEnd returns where the bare word or number at an offset ends.
func (s *source) tokenEnd(from int) int {
	to := from
	for to < len(s.data) && !isOneOf(s.data[to], " \t\r\n,]}=#") {
		to++
	}
	return to
}

func isOneOf(b byte, bytes string) bool { return strings.IndexByte(bytes, b) >= 0 }
