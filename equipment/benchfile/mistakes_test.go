package benchfile

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAllMistakesInTheOrderOfTheFile(t *testing.T) {
	root := parsed(t, "a = 1\nb = 2\nc = 3")
	root.FailKey("c", "third", "")
	root.Fail("b", "second", "cure")
	err := root.Err()
	assert.EqualError(t, err, "f.toml:1:1: unknown key `a` in the file\n  1 | a = 1\n    | ^\n  the keys of the file are c, b\n"+
		"f.toml:2:5: b: second\n  2 | b = 2\n    |     ^\n  cure\n"+
		"f.toml:3:1: c: third\n  3 | c = 3\n    | ^")
	var first *Mistake
	require.True(t, errors.As(err, &first))
	assert.Equal(t, "unknown key `a` in the file", first.Message)
}

func TestTwentyMistakesAreTold(t *testing.T) {
	for n, last := range map[int]string{20: "b20: odd", 21: "and 1 more mistake", 25: "and 5 more mistakes"} {
		var text strings.Builder
		for i := range n {
			fmt.Fprintf(&text, "b%d = 1\n", i+1)
		}
		root := parsed(t, text.String())
		for _, key := range root.Keys() {
			root.Fail(key, "odd", "")
		}
		all := root.Err().(mistakes)
		assert.Len(t, all, n)
		told, more := Told(all)
		assert.Len(t, told, 20)
		if n == 20 {
			more = told[19].Message
		}
		assert.Equal(t, last, more)
	}
}

func TestWhatFollowsFromAMistakeIsNoSecondOne(t *testing.T) {
	root := parsed(t, "a = \"\"\n[s]\nb = { c = 1 }")
	assert.True(t, root.Sound("a"))
	root.Text("a")
	assert.False(t, root.Sound("a"))
	root.Fail("a", "does not go with b", "")
	root.FailKey("a", "does not go with b", "")
	s := root.Table("s")
	s.Table("b").Text("c")
	assert.True(t, root.Sound("none"))
	assert.False(t, root.Sound("s"), "a mistake in what it holds")
	s.Fail("b", "is not to be judged", "")
	assert.Len(t, root.Err(), 2)
}

func TestAMistypedKeySaysItBetter(t *testing.T) {
	for text, want := range map[string]string{
		"a = 1\nwidht = 1": "f.toml:2:1: unknown key `widht` in the file", "a = 1": "f.toml:1:5: a: needs the width",
	} {
		root := parsed(t, text)
		root.Number("a")
		root.FailFor(root, []string{"width"}, "a", "needs the width", "")
		m, alone := root.Err().(*Mistake)
		require.True(t, alone, text)
		assert.Equal(t, want, m.place.String()+": "+m.Message)
	}
}

// A key that is only misspelt is told, and read as what was meant; the rest goes on.
func TestMisspeltKeysDoNotEndTheFile(t *testing.T) {
	root := parsed(t, "Name = \"x\"\nmolar_mass = 3\nZ = 1")
	root.Need("name", "other")
	assert.Equal(t, "x", root.Text("name"))
	root.Text("molar-mass")
	assert.EqualError(t, root.Err(), "f.toml:1:1: `Name`: keys are in lower case\n  1 | Name = \"x\"\n    | ^^^^\n  write `name`\n"+
		"f.toml:2:1: `molar_mass`: keys are in lower case, their words joined by hyphens\n  2 | molar_mass = 3\n    | ^^^^^^^^^^\n  write `molar-mass`\n"+
		"f.toml:2:14: molar-mass: found the number 3, expected a text in quotes\n  2 | molar_mass = 3\n    |              ^\n  put quotes round it: \"3\"\n"+
		"f.toml:3:1: `Z`: keys are in lower case\n  3 | Z = 1\n    | ^\n  write `z`")
	_, err := Parse("f.toml", []byte("Name = 1\nb = 2 3"))
	var all mistakes
	require.ErrorAs(t, err, &all)
	assert.Len(t, all, 2, "the misspelt key, and where the text ends to be TOML")
}
