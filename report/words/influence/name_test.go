package influence

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
)

// codesOf are the constants of a type of package uncertainty that a package states.
func codesOf(t *testing.T, folder, kind string) (list []string) {
	t.Helper()
	files, err := filepath.Glob(folder + "/*.go")
	require.NoError(t, err)
	for _, path := range files {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			spec, ok := n.(*ast.ValueSpec)
			if !ok {
				return true
			}
			if of, ok := spec.Type.(*ast.SelectorExpr); ok && of.Sel.Name == kind {
				text, err := strconv.Unquote(spec.Values[0].(*ast.BasicLit).Value)
				require.NoError(t, err)
				list = append(list, text)
			}
			return true
		})
	}
	return list
}

// Every code of instruments and routes has words, and no words are without a code.
func TestEveryCodeHasWords(t *testing.T) {
	used := map[string]bool{"": true, secondReading: true, repeatedWeighing: true, emptyBoat: true, emptyVessel: true, "bias by readings with": true, "delivered by readings with": true}
	for _, folder := range []string{"../../../equipment", "../../../uncertainty/route"} {
		list := codesOf(t, folder, "Code")
		assert.NotEmpty(t, list)
		for _, code := range list {
			assert.Contains(t, names, code, folder)
			assert.Contains(t, symbols, code, folder)
			used[code] = true
		}
		for _, by := range codesOf(t, folder, "By") {
			assert.Contains(t, grounds, by, folder)
		}
		for _, kind := range codesOf(t, folder, "Kind") {
			assert.Contains(t, groups, uncertainty.Kind(kind), folder)
		}
	}
	for code := range names {
		assert.True(t, used[code], "nothing is called %s", code)
	}
	for code := range symbols {
		assert.True(t, used[code], "nothing has the symbol of %s", code)
	}
}

// Names by what an influence is of, its piece, its mark and its number.
func TestNames(t *testing.T) {
	piece := uncertainty.Owner{Kind: uncertainty.Instrument, Name: "flask", Piece: 2}
	use := uncertainty.Owner{Kind: uncertainty.OneUse, Name: "two dilutions", Step: 3, Piece: 1, With: "flask"}
	of := uncertainty.Group{Kind: uncertainty.Instrument, Name: "flask"}
	for want, in := range map[string]uncertainty.Influence{
		"bias of the flask, piece 2 at 0.025 mL":         {Code: "bias", At: 0.025, Owner: piece, Group: of},
		"bias of the flask at 25 mL, own":                {Code: "bias own to a mark", At: 25, Owner: use, Group: of},
		"retained in the flask by design":                {Code: "retained by design", Owner: piece, Group: of},
		"reading of the flask":                           {Code: "reading", Owner: use, Group: of},
		"second reading of the flask":                    {Code: "reading", At: 1, Owner: use, Group: of},
		"repeatability of the flask":                     {Code: "repeatability", Owner: use, Group: of, Unit: "mL"},
		"repeatability, flask":                           {Code: "repeatability", Owner: use, Group: of, Unit: "g"},
		"linearity near 1.5 g in a boat, flask, piece 2": {Code: "linearity at a load in a boat", At: 1.5, Owner: piece, Group: of},
		"linearity at the empty vessel, flask, piece 2":  {Code: "linearity at a load in a vessel", Owner: piece, Group: of},
		"curve of linearity, part 3, flask, piece 2":     {Code: "curve of linearity", At: 2, Owner: piece, Group: of},
		"size of a drop of urea beside one of water":     {Code: "size of drops beside water", Group: uncertainty.Group{Kind: uncertainty.Dropped, Name: "urea"}},
		"evaporation of {mark}":                          {Code: "evaporation", Group: uncertainty.Group{Kind: "evaporation", Name: "{mark}"}},
		"the volume in the flask":                        {Code: "volume in a vessel", Group: uncertainty.Group{Name: "flask"}},
		"an unnamed quantity":                            {},
		"what only a user of the engine calls by name":   {Code: "what only a user of the engine calls by name"},
	} {
		assert.Equal(t, want, Name(&in))
	}
	assert.Empty(t, Name(nil))
}

// What influences count towards.
func TestGroups(t *testing.T) {
	for want, g := range map[string]uncertainty.Group{
		"flask":                     {Kind: uncertainty.Instrument, Name: "flask"},
		"flask, not rinsed":         {Kind: "film", Name: "flask"},
		"evaporation of water":      {Kind: "evaporation", Name: "water"},
		"temperature":               {Kind: uncertainty.Day},
		"meniscus of ethanol":       {Kind: uncertainty.Bench, Name: "ethanol"},
		"size of the drops of urea": {Kind: uncertainty.Dropped, Name: "urea"},
	} {
		assert.Equal(t, want, Group(g))
	}
}
