package bench

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A tolerance that is no text is one mistake, and so is a list of none (constructed).
func TestToleranceThatIsNone(t *testing.T) {
	k, err := ParseKit("kit", []byte("[[balance]]\nname = \"b\"\ncapacity = \"100 g\"\nreadability = \"0.01 g\"\n"))
	require.NoError(t, err)
	for value, want := range map[string]string{`{ a = 1 }`: "found a table, expected a text in quotes", `[]`: "the list of tolerances is empty"} {
		_, err := ParsePrep("prep", []byte("target = \"1 % w/v\"\nvolume = \"20 mL\"\ntolerance = "+value+"\n[solute]\nname = \"a\"\n[solvent]\nname = \"b\"\n"), k)
		require.Error(t, err, value)
		assert.Equal(t, 1, strings.Count(err.Error(), want), "%s: %v", value, err)
	}
}
