package note

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Whose a note is, is said where it is not that of the first, unless it says so itself (constructed).
func TestJoinedOf(t *testing.T) {
	all, less, own := Of("only-dissolved", "ammonia"), Of("too-little", "", "1 g/L", "5 mL"), Of("makes-only", "b", 3.0)
	first, b, c := Owner{"a", []Note{all}}, Owner{"b", []Note{all, less, own}}, Owner{"c", []Note{less}}
	assert.Equal(t, []string{all.String(), own.String(), "routes b, c: " + less.String()}, JoinedOf([]Note{all, less, own}, first, b, c))
	assert.Equal(t, []string{"route b: " + less.String()}, JoinedOf([]Note{less}, first, b))
	assert.Equal(t, []string{less.String()}, JoinedOf([]Note{less}))
	assert.Equal(t, []string{"routes b, c, d, others: " + less.String()}, JoinedOf([]Note{less}, first, b, c, Owner{"d", c.Notes}, Owner{"e", c.Notes}))
}
