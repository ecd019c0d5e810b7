package inline

import (
	"regexp"
	"strings"
)

// symbolIn is a symbol in an equation: a letter, and what tells it from others.
var symbolIn = regexp.MustCompile(`(^|[^\pL\d_,.])(\pL+)(_[\pL\d]+(?:,\d+)?)?`)

// Shown is a symbol of a model in italics, with its index.
func Shown(symbol string) string {
	letter, index, found := strings.Cut(symbol, "_")
	if !found {
		return Symbol(letter)
	}
	return Symbol(letter, strings.Split(index, ",")...)
}

// Equation is an expression with its symbols set apart; units stay as they are.
func Equation(text string) string {
	var out strings.Builder
	for text != "" {
		at := symbolIn.FindStringSubmatchIndex(text)
		if at == nil {
			break
		}
		out.WriteString(text[:at[4]])
		symbol := text[at[4]:at[1]]
		if at[4] > 1 && text[at[4]-1] == ' ' && strings.ContainsRune("0123456789", rune(text[at[4]-2])) {
			out.WriteString(symbol) // the unit of a number
		} else {
			out.WriteString(Shown(symbol))
		}
		text = text[at[1]:]
	}
	return out.String() + text
}
