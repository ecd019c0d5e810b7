package page

import (
	"regexp"
	"strings"

	"minim/equipment/quantity"
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
// the direction of writing are left out.
func escape(text string) string {
	text = strings.Join(strings.Fields(quantity.OneLine(text)), " ")
	text = markup.ReplaceAllString(text, `\$0`)
	text = itemNumber.ReplaceAllString(text, `$1\$2$3`)
	if strings.IndexAny(text, "+-=") == 0 {
		text = `\` + text
	}
	return text
}
