package page

import (
	"regexp"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words/clause"
	"minim/report/words/inline"
)

// markup is what means something inside a line of Markdown; itemNumber, at the
// start of a line, makes an item of a list.
var (
	markup     = regexp.MustCompile("[\\\\`*_{}\\[\\]<>#|~&$]")
	itemNumber = regexp.MustCompile(`^(\d+)([.)])(\s|$)`)
)

// escape makes any text one line of Markdown that shows as it is: a backslash
// stands before each character that would be markup (CommonMark 0.31, 2.4), a
// break of the line becomes a space, and control characters and marks that turn
// the direction of writing are left out. What is to be set apart has the marks of Markdown,
// but for an index, which has none.
func escape(text string) string {
	text = inline.Outside(text, inline.Minus)
	text = strings.Join(strings.Fields(oneLine(text)), " ")
	var out strings.Builder
	for i, p := range inline.Parts(text) {
		escaped := markup.ReplaceAllString(p.Text, `\$0`)
		switch {
		case p.Style == inline.Italic:
			escaped = "*" + escaped + "*"
		case p.Style == inline.Index:
			escaped = "<sub>" + escaped + "</sub>"
		case i == 0:
			escaped = atStart(escaped)
		}
		out.WriteString(escaped)
	}
	return out.String()
}

// atStart escapes what means something at the start of a line.
func atStart(text string) string {
	text = itemNumber.ReplaceAllString(text, `$1\$2$3`)
	if strings.IndexAny(text, "+-=") == 0 {
		text = `\` + text
	}
	return text
}

// oneLine is quantity.OneLine, which leaves in what sets parts of a text apart.
func oneLine(text string) string {
	parts := inline.Parts(text)
	return strings.Join(clause.Each(parts, func(p inline.Part) string { return p.Of(quantity.OneLine(p.Text)) }), "")
}
