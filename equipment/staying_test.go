package equipment

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is stated of an instrument stays when that is changed from which it would follow
// otherwise (constructed).
func TestStaying(t *testing.T) {
	kit, err := ParseKit("kit.toml", []byte(`
[[balance]]
name = "stated"
capacity = "200 g"
readability = "0.01 g"
repeatability = "0.01 g"
linearity = "0.02 g"
[[balance]]
name = "read"
capacity = "200 g"
readability = "0.01 g"
readings = ["1.00 g", "1.01 g", "1.00 g"]
[[balance]]
name = "bare"
capacity = "200 g"
readability = "0.01 g"
[[candidate]]
kind = "balance"
name = "certified"
capacity = "200 g"
readability = "0.01 g"
weighing-uncertainty = "0.02 g"
[[flask]]
name = "own"
capacity = "25 mL"
class = "B"
tolerance = "0.1 mL"
[[flask]]
name = "by class"
capacity = "25 mL"
class = "B"
repeatability = "0.02 mL"
`))
	require.NoError(t, err)
	for line, want := range map[string][]string{
		"stated: readability = 0.001 g":    {"repeatability", "linearity"},
		"stated: capacity = 100 g":         nil,
		"read: readability = 0.001 g":      {"readings"},
		"bare: readability = 0.001 g":      nil,
		"certified: readability = 0.001 g": {"weighing-uncertainty"},
		"own: class = A":                   {"limit"},
		"by class: class = A":              nil,
		"by class: reading = careful":      {"repeatability"},
		"nobody: class = A":                nil,
	} {
		c := changeOf(line)
		assert.Equal(t, want, kit.Staying(c, []Change{c}), line)
	}
	first := changeOf("stated: readability = 0.001 g")
	second := changeOf("stated: linearity = 0.002 g")
	assert.Equal(t, []string{"repeatability"}, kit.Staying(first, []Change{first, second}))
}

// changeOf is a change as it is written.
func changeOf(line string) Change {
	name, rest, _ := strings.Cut(line, ": ")
	key, value, _ := strings.Cut(rest, " = ")
	return Change{Name: name, Key: key, Value: value}
}
