package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestScreensAsHTML: a screen is one page that holds its pictures and asks for nothing, the
// same on the screen as in the folder of --out.
func TestScreensAsHTML(t *testing.T) {
	skipIfSlow(t)
	t.Chdir(t.TempDir())
	for name, args := range map[string][]string{
		"compare": {"compare", "--trials", "10000"},
		"plan":    {"plan", "--steps", "0", "--trials", "10000"},
	} {
		html := output(t, append(args, "--format", "html", "--out", name)...)
		assert.True(t, html == read(t, name+"/"+name+".html"), "%s prints another page than it keeps", name)
		pictures := map[string]int{"compare": 4, "plan": 4}[name]
		assert.Equal(t, pictures, strings.Count(html, `<img src="data:image/png;base64,iVBOR`), name)
		assert.Equal(t, pictures, strings.Count(html, "<img "), name)
		assert.NotContains(t, html, "<script", name)
		assert.NotContains(t, html, "://", name)
		assert.Contains(t, html, "default-src &#39;none&#39;", name)
		assert.NotContains(t, html, "Next:", name)
	}
}
