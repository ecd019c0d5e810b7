package page

import (
	"regexp"

	"minim/report/words/inline"
)

const unbroken = "\u00a0"

var (
	// bound are two words that one line must hold: a number and what is behind it, the parts
	// of a unit, a chance in a hundred, a piece or a step by its number, both sides of a sign,
	// the unit of what stands in brackets, and the number of a document.
	bound = []*regexp.Regexp{
		regexp.MustCompile(`(\d) ()`),
		regexp.MustCompile(`(%) ([wv]/[wv])`),
		regexp.MustCompile(`\b(in) (100\b)`),
		regexp.MustCompile(`\b(piece|steps?) (\d)`),
		regexp.MustCompile(`\b(over|under) (\d[\d.]*\x{a0}in\b)`),
		regexp.MustCompile(`(\S) ([±=×≤≥])`),
		regexp.MustCompile(`([±=×≤≥]) (\S)`),
		regexp.MustCompile(`(\d\)) (%|m?mol|µ?mol|[mµ]?[gL]\b|U/)`),
		regexp.MustCompile(`\b(JCGM|ISO|TR|R|ASTM|DIN|class) ([0-9A-E])`),
	}
)

// typeset gives a text the minus signs of numbers and, in place of spaces at which no line may
// break, U+00A0. What is to be copied stays as it is.
func typeset(text string) string {
	return inline.Outside(text, func(words string) string {
		words = inline.Minus(words)
		for _, r := range bound {
			words = r.ReplaceAllString(words, "$1"+unbroken+"$2")
		}
		return words
	})
}

// onScreen is a text for a screen, with U+00A0 where no line may break.
func onScreen(text string) string { return inline.Plain(typeset(text)) }
