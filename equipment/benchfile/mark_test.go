package benchfile

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A byte order mark is read over: places are those of the text behind it, the digest is that
// of all bytes, and edits keep it.
func TestByteOrderMarkIsReadOver(t *testing.T) {
	const text = "kit = \"a\"\nb = 7\n[[route]]\nc = 1\n"
	marked := []byte(byteOrderMark + text)
	root, err := Parse("f.toml", marked)
	require.NoError(t, err)
	assert.Equal(t, "a", root.Text("kit"))
	root.Text("b")
	root.Tables("route")[0].Number("c")
	assert.EqualError(t, root.Err(), "f.toml:2:5: b: found the number 7, expected a text in quotes\n  2 | b = 7\n    |     ^\n  put quotes round it: \"7\"")
	name, read := root.Source()
	assert.Equal(t, "f.toml", name)
	assert.Equal(t, marked, read)

	out, err := without("f.toml", marked, "route")
	require.NoError(t, err)
	assert.Equal(t, byteOrderMark+"kit = \"a\"\nb = 7\n", string(out))
	out, err = withText("f.toml", marked, "kit", "other")
	require.NoError(t, err)
	assert.Equal(t, byteOrderMark+"kit = \"other\"\nb = 7\n[[route]]\nc = 1\n", string(out))
	out, err = withText("f.toml", marked, "title", "new")
	require.NoError(t, err)
	assert.Equal(t, byteOrderMark+"title = \"new\"\n"+text, string(out))

	_, err = Parse("f.toml", []byte(byteOrderMark+"a = 1 2"))
	var m *Mistake
	require.ErrorAs(t, err, &m)
	assert.Equal(t, place{"f.toml", 1, 5}, m.place)
}
