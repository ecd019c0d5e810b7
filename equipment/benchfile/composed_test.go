package benchfile

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Texts in NFD, in NFC and between become those in NFC. The code points are those of Unicode
// Standard Annex 15 (its figures 3 to 5, with Å, ḍ̇, ṩ, ǫ̈, ế), others by hand.
func TestComposed(t *testing.T) {
	for from, want := range map[string]string{
		"plain":                      "plain",
		"A\u030a":                    "\u00c5",
		"\u00c5":                     "\u00c5",
		"o\u0302":                    "\u00f4",
		"d\u0307\u0323":              "\u1e0d\u0307",
		"\u1e0b\u0323":               "\u1e0d\u0307",
		"s\u0323\u0307":              "\u1e69",
		"\u1e9b\u0323":               "\u1e9b\u0323",
		"e\u0302\u0301":              "\u1ebf",
		"\u00ea\u0301":               "\u1ebf",
		"\u00e9\u0302":               "\u00e9\u0302",
		"a\u0323\u0302":              "\u1ead",
		"a\u0302\u0323":              "\u1ead",
		"Bu\u0308rette":              "B\u00fcrette",
		"pe\u0301troleum, gre\u0300": "p\u00e9troleum, gr\u00e8",
		"\u0438\u0306":               "\u0439",
		"\u0301a":                    "\u0301a",
		"x\u0301":                    "x\u0301",
	} {
		assert.Equal(t, want, Composed(from), "%+q", from)
		assert.Equal(t, want, Composed(want), "%+q again", from)
	}
}

// Every letter that can be taken apart is put together again.
func TestComposedIsTheInverse(t *testing.T) {
	known := knownMarks()
	assert.Greater(t, len(known.apart), 700)
	for whole := range known.apart {
		assert.Equal(t, string(whole), Composed(string(known.takeApart(nil, whole))), "%U", whole)
	}
}

// A text of a file and of a change is composed; the name of a file is as it was written.
func TestTextsAreComposed(t *testing.T) {
	root, err := Parse("file", []byte("name = \"Bu\u0308rette\"\nkit = \"Bu\u0308rette.toml\"\nlist = [\"e\u0301\"]\n"))
	require.NoError(t, err)
	assert.Equal(t, "B\u00fcrette", root.Text("name"))
	assert.Equal(t, "Bu\u0308rette.toml", root.FileName("kit"))
	assert.Equal(t, []string{"\u00e9"}, root.Texts("list"))
	c, err := ParseChange("--change", "Bu\u0308rette: capacity = 5 mL")
	require.NoError(t, err)
	assert.Equal(t, "B\u00fcrette", c.Name)
}
