package quantity

import (
	"regexp"
	"strconv"
	"strings"
)

// fault is one foreseen way of writing a number that is not read. The pattern
// is matched against the whole trimmed text; the hint may use its groups.
type fault struct {
	pattern       *regexp.Regexp
	message, hint string
}

// faults lists the foreseen ways, the first that matches counts.
var faults = []fault{
	{regexp.MustCompile(`^$`), `is empty`, `write a number and its unit, as in "10 mL"`},
	{regexp.MustCompile(`^([+-]?)(\.[0-9]+.*)$`), `has no digit before the decimal point`, `write ${1}0$2`},
	{regexp.MustCompile(`^([+-]?[0-9]+)\.([^0-9].*)?$`), `has no digit after the decimal point`, `write $1$2`},
	{regexp.MustCompile(`^[−–‒]\pZ*([0-9].*)$`), `has a sign that is not read`, `write -$1 with the plain minus of the keyboard`},
	{regexp.MustCompile(`^([+-]?[1-9][0-9]{0,2}),([0-9]{3})(\pZ*[^0-9.,].*)?$`),
		`has a comma in its number`, `write $1.$2$3 or $1$2$3: a comma could mean either`},
	{regexp.MustCompile(`^([+-]?[0-9]+),([0-9]+)(\pZ*[^0-9.,].*)?$`), `has a comma in its number`, `write $1.$2$3: a decimal point, not a comma`},
	{regexp.MustCompile(`^[+-]?[0-9]+(?:[,'’_][0-9]+)+(?:\.|\pZ|\pL|$)`), `has separators between its digits`, `write the digits without them, as in 1000 mL`},
	{regexp.MustCompile(`^[+-]?[0-9]+\pZ+(?:[02-9]|1[^/])`), `has a space in its number`, `write the digits together, as in 1000 mL`},
	{regexp.MustCompile(`^[+-]?0[xX][0-9a-fA-F]`), `is not a decimal number`, `write the number in decimal digits, as in 16 mL`},
	{regexp.MustCompile(`^[+-]?[0-9.]+\pZ*(?:(?:[x×*·]\pZ*10)?\pZ*(?:\^|\*\*)|[x×*·]\pZ*10)`),
		`has a power of ten that is not read`, `write powers of ten with an e, as in 2.1e-4`},
	{regexp.MustCompile(`^[+-]?[0-9]+(?:,|\.[0-9]+(?:[eE][+-]?[0-9]+)?[.,]|[eE][+-]?[0-9]+[.,])`),
		`has a number that cannot be read`, `write one decimal point between digits, as in 0.5`},
	{regexp.MustCompile(`^[^0-9+-]|^[+-][^0-9]|^[+-]$`), `does not start with a number`, `write a number and its unit, as in "10 mL"`},
}

// numberFault says what is wrong with the number of a trimmed text, or nil.
func numberFault(trimmed string) error {
	for _, f := range faults {
		if at := f.pattern.FindStringSubmatchIndex(trimmed); at != nil {
			hint := f.pattern.ExpandString(nil, f.hint, trimmed, at)
			return refuse(trimmed, f.message, strings.TrimSpace(string(hint)))
		}
	}
	return nil
}

// Error is a text that is not the quantity it should be. Every error of this
// package is an *Error.
type Error struct {
	Found   string // the text, without the spaces round it
	Message string // what is wrong with it
	Hint    string // what would be right; may be empty
}

// Error returns the message without the hint.
func (e *Error) Error() string { return e.Message }

// refuse returns the error that says so of the found text.
func refuse(found, message, hint string) error {
	return &Error{Found: found, Message: quote(found) + " " + message, Hint: hint}
}

// quote shows a found text in straight quotes, with unprintable characters
// escaped and a long text cut.
func quote(text string) string { return strconv.Quote(Shortened(text)) }

// Shortened cuts a text to what a message can hold.
func Shortened(text string) string {
	const most = 40
	if runes := []rune(text); len(runes) > most {
		return string(runes[:most]) + "…"
	}
	return text
}
