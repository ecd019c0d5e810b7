package bench

import (
	"bytes"
	"unicode/utf8"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty/record"
)

// struck ends a line that was cut off and below which more has been written.
const struck = "# cut off, left out"

// wholeLines returns the text of a record without the lines that were cut off, and these
// lines. They are blanked, a space for each byte, so that all else stays in its place.
// Cut off are the lines that [appendTo] has struck with a mark, and a last line without
// a line end that does not close what it opens and is all that is wrong with the TOML
// of the text. Any other mistake is left to be found. The name stands for the file.
func wholeLines(name string, text []byte) (whole []byte, cut []record.Cut) {
	whole = bytes.Clone(text)
	number, from := 0, 0
	for line := range bytes.Lines(whole) {
		number++
		written, ended := bytes.CutSuffix(line, []byte("\n"))
		written = bytes.TrimSuffix(written, []byte("\r"))
		// A last line is broken off where it is a piece of a line. One below another mistake is
		// not: that mistake may be a text that opened there and is closed here.
		brokenOff := !ended && !closed(written) && !right(name, written) && right(name, whole[:from])
		if brokenOff || bytes.HasSuffix(written, []byte(struck)) {
			cut = append(cut, record.Cut{Line: number, Text: quantity.Printable(string(written))})
			blankOut(written)
		}
		from += len(line)
	}
	if half, ok := bytes.CutSuffix(whole, []byte("\r")); ok { // of the line end "\r\n"
		blankOut(whole[len(half):])
	}
	return whole, cut
}

// right reports right TOML, which may hold nothing.
func right(name string, text []byte) bool {
	text = bytes.TrimPrefix(text, []byte("\uFEFF"))
	for line := range bytes.Lines(text) {
		if line = bytes.TrimSpace(line); len(line) > 0 && line[0] != '#' {
			_, err := benchfile.Parse(name, text)
			return err == nil
		}
	}
	return utf8.Valid(text)
}

// closed reports a line whose last bracket closes its first: be it right or wrong, it
// was written to its end.
func closed(line []byte) bool {
	depth, quote := 0, byte(0)
	for i := 0; i < len(line); i++ {
		switch c := line[i]; {
		case quote == '"' && c == '\\':
			i++
		case quote != 0 && c != quote:
		case c == '"' || c == '\'':
			quote ^= c // opens or closes
		case c == '{' || c == '[':
			depth++
		case c == '}' || c == ']':
			depth--
		}
	}
	last := bytes.TrimRight(line, " \t")
	return depth == 0 && quote == 0 && len(last) > 0 && bytes.IndexByte([]byte("}]"), last[len(last)-1]) >= 0
}

// blankOut puts a space in the place of each byte.
func blankOut(text []byte) { copy(text, bytes.Repeat([]byte(" "), len(text))) }
