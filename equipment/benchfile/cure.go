package benchfile

import (
	"cmp"
	"fmt"
	"regexp"
	"strings"

	"minim/equipment/quantity"
)

// ofMistake is a piece of a mistake that several have.
type ofMistake = string

const (
	lineForms   ofMistake = "a line is key = value, a [header] or a # comment"
	onBackslash ofMistake = `write / or \\ for each backslash, or put the text in single quotes`
	tooDeep     ofMistake = "tables and lists stand inside each other more than 32 deep"
	tooLarge    ofMistake = "the number is too large"
	plainQuotes ofMistake = `straight quotes: "`
)

// worded is the mistake of a fault: the first foreseen cause that fits, or the parser's
// own message.
func (f *fault) worded() *Mistake {
	causes := []func() *Mistake{
		f.curlyQuotes, f.backslash, f.openText, f.decimal, f.notClosed, f.noComma, f.oddQuotes,
		f.noEquals, f.header, f.badKey, f.extraComma, f.afterValue, f.bare,
	}
	for _, cause := range causes {
		if m := cause(); m != nil {
			return m
		}
	}
	return f.mistake(f.at, plain(f.message), "")
}

var curly = strings.NewReplacer("“", `"`, "”", `"`, "„", `"`, "‟", `"`, "«", `"`, "»", `"`, "‘", "'", "’", "'")

// curlyQuotes: capacity = “10 mL”
func (f *fault) curlyQuotes() *Mistake {
	line := f.bounds(f.line(f.at.from))
	first := f.at.from
	if f.quote >= 0 {
		first = f.quote
	}
	rest := string(f.data[min(first, line.to):line.to])
	at := strings.IndexAny(rest, "“”„‟«»‘’")
	if at < 0 || at > 0 && f.quote < 0 || f.says("escape") {
		return nil
	}
	from := first + at
	char := string([]rune(rest[at:])[:1])
	return f.mistake(span{from, from + len(char)}, "found the curly quote "+char+", expected a straight one", "write "+straight(rest))
}

// straight returns the first quoted text in straight quotes, for a hint.
func straight(rest string) string {
	text := regexp.MustCompile(`^["'][^"']+["']`).FindString(curly.Replace(rest))
	return cmp.Or(quantity.Printable(text), plainQuotes)
}

// backslash: kit = "C:\bench.toml"
func (f *fault) backslash() *Mistake {
	if f.quote < 0 || !f.says("escape") {
		return nil
	}
	return f.mistake(f.at, "a backslash in double quotes has a meaning of its own, and none before this", onBackslash)
}

// openText: capacity = "10 mL
func (f *fault) openText() *Mistake {
	if !f.says("new lines", "unterminated", "not terminated") {
		return nil
	}
	from := f.at.from
	if f.quote >= 0 {
		from = f.quote
	}
	return f.mistake(span{from, f.bounds(f.line(from)).to}, "the quote that opens here is not closed", "put a quote at the end of the text")
}

var newExpression = regexp.MustCompile(`^\s*(\[+\s*[A-Za-z][\w-]*\s*\]|[\w-]+\s*=)`)

// notClosed: steps = [ … without its ]
func (f *fault) notClosed() *Mistake {
	from := f.line(f.start)
	later := from < f.line(f.at.from) && len(f.open) > 0 && newExpression.MatchString(f.text()) && f.open[0] == '['
	if !later && !f.says("is incomplete") {
		return nil
	}
	closing, opened := "]", "list"
	if len(f.open) > 0 && f.open[0] == '{' {
		closing, opened = "}", "table"
	}
	at, closing := span{f.start, f.bounds(from).to}, "put "+closing
	if later {
		return f.mistake(at, "the "+opened+" that starts here is not closed", fmt.Sprintf("%s at its end, before line %d", closing, 1+f.line(f.at.from)))
	}
	return f.mistake(at, "the "+opened+" that starts here is not closed", closing+" at its end")
}

// noComma: two items of a list, or two keys between braces, without a comma.
func (f *fault) noComma() *Mistake {
	c := f.char()
	if !f.says("expected ',' or") || !strings.ContainsAny(c, `{["'`) && !f.says("'}'") {
		return nil
	}
	if f.says("'}'") && !regexp.MustCompile(`^[a-z][a-z0-9-]* *=`).Match(f.data[f.at.from:]) {
		return nil
	}
	if f.quotesAreOdd() {
		return nil
	}
	return f.mistake(f.at, "a comma is missing before this", "put a comma between the two")
}

// oddQuotes: { weigh = "1 g, on = "scale" }
func (f *fault) oddQuotes() *Mistake {
	if !f.quotesAreOdd() || f.says("comment") {
		return nil
	}
	return f.mistake(f.at, "a quote is missing on this line, before or after this", "see that each text has a quote before it and one after it")
}

// quotesAreOdd counts the double quotes on the line, those after a backslash
// and those in a comment after the fault not.
func (f *fault) quotesAreOdd() bool {
	line := f.bounds(f.line(f.at.from))
	after, _, _ := strings.Cut(string(f.data[f.at.from:max(f.at.from, line.to)]), "#")
	text := string(f.data[line.from:min(f.at.from, line.to)]) + after
	text = strings.ReplaceAll(strings.ReplaceAll(text, `\\`, ""), `\"`, "")
	return strings.Count(text, `"`)%2 == 1
}

// phrase is a piece of what the parser says.
type phrase = string

// parserWords turns the parser's words into those of the house.
var parserWords = strings.NewReplacer([]phrase{"toml: ", "",
	"multiline basic strings", "texts in triple quotes", "multiline literal strings", "texts in triple quotes",
	"basic strings", "texts in double quotes", "literal strings", "texts in single quotes"}...)

// plain returns a message of the parser in plain words.
func plain(message string) string {
	switch {
	case says(message, "levels deep"):
		return tooDeep
	case says(message, "out of range", "too large to fit"):
		return tooLarge
	}
	return parserWords.Replace(message)
}

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
