package main

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestDrawingGoesWithoutPixels holds that what draws SVG needs nothing that draws pixels,
// also in a browser, and that nothing needs the package plot itself, which brings the writers
// of other formats.
func TestDrawingGoesWithoutPixels(t *testing.T) {
	skipIfSlow(t)
	for _, c := range []struct {
		program string
		without []string
	}{
		{"minim/report/figure", []string{"gonum.org/v1/plot", "gonum.org/v1/plot/vg/vgimg", "git.sr.ht/~sbinet/gg"}},
		{"minim/report/answer", []string{"gonum.org/v1/plot", "gonum.org/v1/plot/vg/vgimg", "git.sr.ht/~sbinet/gg", "github.com/spf13/pflag"}},
		{"minim/cmd/minim", []string{"gonum.org/v1/plot", "gonum.org/v1/plot/vg/vgpdf", "gonum.org/v1/plot/vg/vgeps"}},
	} {
		list := exec.Command("go", "list", "-deps", c.program)
		list.Env = append(list.Environ(), "GOOS=js", "GOARCH=wasm")
		out, err := list.Output()
		require.NoError(t, err)
		needed := strings.Fields(string(out))
		require.Contains(t, needed, "gonum.org/v1/plot/vg")
		for _, path := range c.without {
			assert.NotContains(t, needed, path, c.program)
		}
	}
}
