package quantity

import "strconv"

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
