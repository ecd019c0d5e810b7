package benchfile

import "strings"

// The parser says where keys and plain values stand; the rest is found by
// looking at the text round them.

// afterEquals returns where the value starts after a key that ends at from.
func (s *source) afterEquals(from int) int {
	from = s.skip(from, " \t") + 1
	return s.skip(from, " \t")
}

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
