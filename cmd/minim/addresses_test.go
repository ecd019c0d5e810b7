package main

import (
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// address is one of the web; the name space of a picture is none that anybody looks up.
var address = regexp.MustCompile(`https?://[^"\s]*`)

func addresses(text string) (found []string) {
	for _, a := range address.FindAllString(text, -1) {
		if a != "http://www.w3.org/2000/svg" && a != "http://www.w3.org/1999/xlink" {
			found = append(found, a)
		}
	}
	return found
}

// Where the figures of the class tables were seen is printed by kit --classes, and no
// other screen or paper has an address.
func TestAddressesOfSources(t *testing.T) {
	skipIfSlow(t)
	t.Chdir(t.TempDir())
	assert.NotEmpty(t, addresses(output(t, "kit", "--classes")))
	for _, args := range [][]string{
		{"kit"}, {"compare", "--trials", "10000"}, {"compare", "--trials", "10000", "--format", "json"}, {"compare", "--trials", "10000", "--format", "csv"},
		{"compare", "--trials", "10000", "--format", "markdown"}, {"plan", "--steps", "1", "--trials", "10000"}, {"buy", "--steps", "0", "--trials", "10000"}, {"made", "--trials", "10000"},
		{"sheet", "--trials", "10000"}, {"label", "--trials", "10000"}, {"report", "--trials", "10000"},
	} {
		assert.Empty(t, addresses(output(t, args...)), args)
	}
	for _, paper := range []string{"report", "sheet", "label"} {
		output(t, paper, "--trials", "10000", "--out", paper+".html")
		text, err := os.ReadFile(paper + ".html")
		require.NoError(t, err)
		assert.Empty(t, addresses(string(text)), paper)
	}
}
