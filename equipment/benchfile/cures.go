package benchfile

import (
	"regexp"
	"strings"

	"minim/equipment/quantity"
)

var commaNumber = regexp.MustCompile(`^([+-]?[0-9]+),([0-9]+) *([^0-9.,"']*)$`)

// decimal: capacity = 0,5 mL
func (f *fault) decimal() *Mistake {
	at := f.bareSpan()
	found := string(f.data[at.from:at.to])
	parts := commaNumber.FindStringSubmatch(found)
	if parts == nil {
		return nil
	}
	found, cure := "found "+found, parts[1]+"."+parts[2]
	if parts[3] != "" {
		return f.mistake(at, found+", a number with a decimal comma", `write "`+cure+" "+parts[3]+`" with a decimal point, in quotes`)
	}
	return f.mistake(at, found+", a number with a decimal comma", "write "+cure+", and a quantity in quotes with its unit")
}

// afterValue: capacity = "10 mL" nominal
func (f *fault) afterValue() *Mistake {
	at := f.bareSpan()
	quoted := at.from < at.to && isOneOf(f.data[at.from], `"'[{`)
	if !f.says("expected newline") || at.from == at.to || !quoted && !strings.Contains(string(f.data[at.from:at.to]), "=") {
		return nil
	}
	extra := span{f.at.from, max(f.at.to, at.to)}
	found := "found " + quote(string(f.data[extra.from:extra.to]))
	if f.char() == "," {
		return f.mistake(extra, found+" after the value", "put several values in brackets, as in [1, 2]")
	}
	return f.mistake(extra, found+" after the value", "start a comment with #, a new key on a new line")
}

// bare: capacity = 10 mL
func (f *fault) bare() *Mistake {
	at := f.bareSpan()
	found := string(f.data[at.from:at.to])
	if f.quote >= 0 || f.says("comment", "nested") {
		return nil
	}
	short := quantity.Shortened(found)
	switch strings.ToLower(found) {
	case "":
		if !f.says("value") {
			return nil
		}
		return f.mistake(f.at, "found no value", `write the value after the =, as in key = "10 mL"`)
	case "true", "yes", "on", "false", "no", "off":
		return f.mistake(at, "found "+short+" without quotes", "write true or false, or put quotes round it: "+quote(found))
	}
	switch {
	case strings.ContainsAny(found[:1], `"'[{`):
		return nil
	case badNumber.MatchString(found):
		return f.mistake(at, "found "+short+", which is not a number", "write digits before and after the point, no zero in front; a quantity stands in quotes with its unit")
	}
	return f.mistake(at, "found "+short+" without quotes", "put quotes round it: "+quote(found))
}

var badNumber = regexp.MustCompile(`^[0-9.+-][0-9.+_eE-]*$`)

var spacedKey = regexp.MustCompile(`^\s*([A-Za-z][\w-]*(?: +[\w-]+)+)\s*=`)

// noEquals: capacity: "10 mL"
func (f *fault) noEquals() *Mistake {
	if !f.says("expected '=' after key") {
		return nil
	}
	from := f.start // of the key
	if len(f.marks) > 0 {
		from = f.marks[len(f.marks)-1]
	}
	from = f.skip(from, " \t\r\n")
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
