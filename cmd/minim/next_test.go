package main

import (
	"os/exec"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asTyped are words as a user may have to type them.
var asTyped = map[string]string{
	"prep.toml": "prep.toml", "my prep.toml": `"my prep.toml"`, "it's": `"it's"`,
	`x: retained = { mean = "0.1 mL" }`: `'x: retained = { mean = "0.1 mL" }'`, `5" rack's: count = 2`: `'5" rack'\''s: count = 2'`,
	"a&b": `"a&b"`, "$HOME": `'$HOME'`, "`id`": "'`id`'", "µ°C": "µ°C", "two  spaces": `"two  spaces"`, "": `""`, "=ls": `"=ls"`, "a^b": `"a^b"`,
}

func TestQuoted(t *testing.T) {
	for word, want := range asTyped {
		assert.Equal(t, want, quoted(word))
	}
}

// A shell reads a quoted word as the word.
func TestShellReadsWhatIsQuoted(t *testing.T) {
	shell, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("there is no shell here")
	}
	for word := range asTyped {
		out, err := exec.Command(shell, "-c", "printf %s "+quoted(word)).Output()
		require.NoError(t, err, word)
		assert.Equal(t, word, string(out))
	}
}
