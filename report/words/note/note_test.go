package note

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// makers make a note of a code, a subject and arguments.
var makers = map[string]bool{"Of": true, "Cannot": true, "Warn": true, "Assume": true, "Remember": true, "LeaveOut": true}

var verb = regexp.MustCompile(`%(?:\+?\.?\d*)(?:\[(\d+)\])?[sdvgf]`)

// wants is how many arguments words take, the subject among them.
func wants(text string) int {
	most, next := 0, 1
	for _, m := range verb.FindAllStringSubmatch(strings.ReplaceAll(text, "%%", ""), -1) {
		if m[1] != "" {
			next, _ = strconv.Atoi(m[1])
		}
		most, next = max(most, next), next+1
	}
	return most
}

// TestEveryCodeHasWords reads the program: each note that is made has words, which take as
// many arguments as it has, and no words are without a note.
func TestEveryCodeHasWords(t *testing.T) {
	used := map[string]bool{}
	fileset := token.NewFileSet()
	err := filepath.WalkDir("../../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.Contains(path, "words/note/") {
			return err
		}
		file, err := parser.ParseFile(fileset, path, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			if text, ok := literal(n); ok {
				used[text] = true
			}
			if call, ok := n.(*ast.CallExpr); ok && makers[called(call)] && len(call.Args) >= 2 {
				fits(t, fileset.Position(call.Pos()).String(), call)
			}
			return true
		})
		return nil
	})
	require.NoError(t, err)
	for code := range words {
		assert.True(t, used[code], "no note is made of %s", code)
	}
}

// fits checks one note that is made.
func fits(t *testing.T, at string, call *ast.CallExpr) {
	code, ok := literal(call.Args[0])
	if !ok || call.Ellipsis != token.NoPos {
		return // the code is chosen elsewhere
	}
	text, found := words[code]
	if !assert.True(t, found, "%s: %s has no words", at, code) {
		return
	}
	has := len(call.Args) - 1
	if subject, ok := literal(call.Args[1]); ok && subject == "" {
		has--
	}
	assert.Equal(t, has, wants(text), "%s: the arguments of %s", at, code)
}

func literal(n ast.Node) (string, bool) {
	if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
		text, err := strconv.Unquote(l.Value)
		return text, err == nil
	}
	return "", false
}

func called(call *ast.CallExpr) string {
	switch f := call.Fun.(type) {
	case *ast.SelectorExpr:
		return f.Sel.Name
	case *ast.Ident:
		return f.Name
	}
	return ""
}

func TestNothingToSay(t *testing.T) {
	assert.Equal(t, "", Note{}.String())
	assert.True(t, Note{}.None())
	assert.Empty(t, Texts(nil))
	assert.Panics(t, func() { _ = Of("no-such-code", "x").String() })
}

// A note is itself only with the same arguments.
func TestContains(t *testing.T) {
	list := []Note{Of("limit", "flask", 0.1, "A")}
	assert.True(t, Contains(list, Of("limit", "flask", 0.1, "A")))
	assert.False(t, Contains(list, Of("limit", "flask", 0.2, "A")))
	assert.False(t, Contains(list, Of("limit", "jug", 0.1, "A")))
}
