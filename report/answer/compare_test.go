package answer

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

// The parts of the first screen come in the order of DEVELOPERS.md ("Habits"), and no line is
// wider than a screen.
func TestOrderOfTheFirstScreen(t *testing.T) {
	text := comparePage(compared(t, demoPrep), nil).Text(80)
	at := 0
	for _, part := range []string{"Wanted:", "USE  two dilutions", "1   weigh 1.50 g of dye", "Strength", "Inside", "Spoilt by",
		"strength  give or take", "Why not the others", "Assumed:", "From memory:", "Not counted:", "Cautions:"} {
		next := strings.Index(text[at:], part)
		if assert.GreaterOrEqual(t, next, 0, "%q is missing or out of order", part) {
			at += next
		}
	}
	for line := range strings.Lines(text) {
		assert.LessOrEqual(t, utf8.RuneCountInString(strings.TrimRight(line, "\n")), 80, line)
		assert.Equal(t, strings.TrimRight(line, " \n"), strings.TrimRight(line, "\n"), "spaces at the end of a line")
	}
}
