package bench

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A record that an editor saved with a byte order mark is read, cut-off lines and all, and
// added to.
func TestRecordWithAByteOrderMark(t *testing.T) {
	kit, err := ParseKit("kit.toml", []byte(kitToBreak))
	require.NoError(t, err)
	p, err := ParsePrep("prep.toml", []byte(prepOfRecord), kit)
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "record.toml")
	const text = "\uFEFF# invented\nroute = \"one dilution\"\n[entries]\n1 = { step = 1, weigh = \"0.36 g\" }\n2 = { step = 2, make-up"
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	r, err := LoadRecord(t.Context(), path, p)
	require.NoError(t, err)
	assert.Equal(t, []int{5}, []int{r.Cut[0].Line})
	require.NoError(t, Add(t.Context(), path, p, Addition{By: "AK", At: "2026-11-28 10:10", Lines: []string{"step 2: made up to 49 ml"}}))
	r, err = LoadRecord(t.Context(), path, p)
	require.NoError(t, err)
	assert.Equal(t, 49.0, r.Made.Steps[1].Amount)
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, text, string(data)[:len(text)], "no byte of it has changed")
}
