package benchfile

import (
	"regexp"
	"strings"
)

var spacedKey = regexp.MustCompile(`^\s*([A-Za-z][\w-]*(?: +[\w-]+)+)\s*=`)

// noEquals: capacity: "10 mL"
func (f *fault) noEquals() *Mistake {
	if !f.says("expected '=' after key") {
		return nil
	}
	from := f.keyStart()
	line := string(f.data[from:f.bounds(f.line(from)).to])
	key := regexp.MustCompile(`^[\w-]+`).FindString(line)
	if spaced := spacedKey.FindStringSubmatch(line); spaced != nil {
		cure := strings.ToLower(strings.Join(strings.Fields(spaced[1]), "-"))
		return f.mistake(span{from, from + len(spaced[1])}, "found a key with spaces", "write "+cure+" =")
	}
	hint := lineForms
	if isOneOf((f.char() + " ")[0], `:"'0123456789`) {
		hint = "write " + key + " = …"
	}
	return f.mistake(span{from, max(from+len(key), f.at.to)}, "found no = after "+quote(key), hint)
}

// keyStart returns where the key before the fault starts.
func (f *fault) keyStart() int {
	from := f.start
	if len(f.marks) > 0 {
		from = f.marks[len(f.marks)-1]
	}
	return f.skip(from, " \t\r\n")
}

// header: [[balance]
func (f *fault) header() *Mistake {
	onceMore := f.data[min(f.start, f.at.from)] == '[' && f.char() == "]" && f.says("expected newline")
	if !onceMore && !f.says("to close table name", "to close array table name") {
		return nil
	}
	at := span{f.start, f.bounds(f.line(f.start)).to}
	return f.mistake(at, "the header is not closed as it was opened", "a header is [one-word] or, where there may be several, [[one-word]]")
}

// badKey: // a comment
func (f *fault) badKey() *Mistake {
	if !f.says("at start of key", "reached end of input") {
		return nil
	}
	switch f.char() {
	case "/", ";", "%", "-", "*":
		return f.mistake(f.at, "found "+quote(f.char())+", expected a key", "a comment starts with #; "+lineForms)
	case "":
		return f.mistake(f.at, "found the end of the line, expected a key", lineForms)
	}
	return f.mistake(f.at, "found "+quote(f.char())+", expected a key", lineForms)
}

// extraComma: [ , 1]
func (f *fault) extraComma() *Mistake {
	if !f.says("unexpected comma", "expected value but got U+002C") {
		return nil
	}
	return f.mistake(f.at, "found a comma with nothing before it", "take it out")
}
