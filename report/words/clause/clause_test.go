package clause

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What does not hold, or has no text, is left out.
func TestClauses(t *testing.T) {
	var list List
	list.Add(true, "%d steps", 2)
	list.Add(false, "never")
	list.Put("batch ", "A 100 %d")
	list.Put("batch ", "")
	assert.Equal(t, List{"2 steps", "batch A 100 %d"}, list)
	assert.Equal(t, "so", When(true, "so"))
	assert.Empty(t, When(false, "so"))
	assert.Equal(t, "else", Either(false, "so", "else"))
	assert.Equal(t, []string{"1", "20"}, Each([]int{1, 20}, strconv.Itoa))
	assert.Nil(t, Each(nil, strconv.Itoa))
}
