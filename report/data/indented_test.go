package data

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What has no shape of its own is an escape in JSON, and read again the same text.
func TestIndentedShows(t *testing.T) {
	for text, want := range map[string]string{
		"µ°C": `"µ°C"`, "\u202egnp": `"\u202egnp"`, "\x7f": `"\u007f"`, "\x1b[2J": `"\u001b[2J"`, "a\nb": `"a\nb"`, "\U000e0041": `"\udb40\udc41"`,
	} {
		data := indented(appendJSON(nil, text))
		assert.Equal(t, want+"\n", string(data))
		var again string
		require.NoError(t, json.Unmarshal(data, &again))
		assert.Equal(t, text, again)
	}
}
