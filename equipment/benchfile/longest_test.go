package benchfile

import (
	"fmt"
	"maps"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestSizesAreDocumented holds the tables of FILES.md against the sizes of the program.
func TestSizesAreDocumented(t *testing.T) {
	file, err := os.ReadFile("../../cmd/minim/FILES.md")
	require.NoError(t, err)
	_, text, found := strings.Cut(string(file), "## What is read at all\n")
	require.True(t, found)
	rows := 0
	for _, sizes := range []map[string]int{longestLists, longestTexts} {
		for _, of := range slices.Sorted(maps.Keys(sizes)) {
			assert.Contains(t, text, fmt.Sprintf("| %s | %d |\n", of, sizes[of]))
			rows++
		}
	}
	assert.Equal(t, rows, len(regexp.MustCompile(`(?m)^\|[^|]+\|[^|]+\|$`).FindAllString(text, -1))-4, "rows below two headings")
}

func TestLongest(t *testing.T) {
	assert.Equal(t, 100, LongestList("steps"))
	assert.Equal(t, longestLists["any other list"], LongestList("some key"))
	assert.Equal(t, longestTexts["any other text"], longestText("some key"))
}
