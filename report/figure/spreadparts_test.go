package figure

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The parts of the figure have each route once, so many in one at most, and one axis.
func TestSpreadParts(t *testing.T) {
	c := compare(t, recipe(within8, many(12)...))
	whole, err := Spread(c)
	require.NoError(t, err)
	parts, err := SpreadParts(c, 5)
	require.NoError(t, err)
	all := ""
	for _, part := range parts {
		assert.Less(t, part.height, whole.height)
		svg, err := part.SVG()
		require.NoError(t, err)
		all += strings.Join(texts(t, svg), "\n") + "\n"
	}
	possible := 0
	for i := range c.Results {
		if c.Results[i].Possible {
			possible++
			name := strings.Join(strings.Fields(c.Results[i].Route.Name)[:2], " ") // the rest may stand on other lines
			assert.Len(t, regexp.MustCompile(`(?m)^`+name+`\b[^:\n]*$`).FindAllString(all, -1), 1, name)
		}
	}
	assert.Len(t, parts, (possible+4)/5)
	parts, err = SpreadParts(c, 100)
	require.NoError(t, err)
	assert.Len(t, parts, 1)
}
