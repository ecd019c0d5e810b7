package benchfile

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// phrases are all that is relied on of what the parser says, each with a text of which it
// says so. A release of go-toml that words one otherwise fails here, and not in a cure that
// is no longer found.
var phrases = map[string]string{
	"escape":                        `a = "C:\users"`,
	"new lines":                     "a = \"x\n\"",
	"unterminated":                  `a = "x`,
	"not terminated":                "a = \"\"\"x",
	"is incomplete":                 `a = [`,
	"expected ',' or":               `a = [1 2]`,
	"'}'":                           `a = { b = 1 c = 2 }`,
	"comment":                       "a = 1 # \x01",
	"levels deep":                   "a = " + strings.Repeat("[", 20_000),
	"out of range":                  `a = 1e999`,
	"too large to fit":              `a = 99999999999999999999`,
	"expected '=' after key":        `a "x"`,
	"expected newline":              `a = 1 b`,
	"to close table name":           `[a b]`,
	"to close array table name":     `[[a b]]`,
	"at start of key":               `= 1`,
	"reached end of input":          `[`,
	"unexpected comma":              `a = { , }`,
	"expected value but got U+002C": `a = [1,,2]`,
	"nested":                        "a = " + strings.Repeat("[", 20_000),
	"value":                         `a = `,
	"toml: ":                        `a = `,
	"multiline basic strings":       "a = \"\"\"\x01\"\"\"",
	"multiline literal strings":     "a = '''\x01'''",
	"basic strings":                 "a = \"x\n\"",
	"literal strings":               "a = 'x\n'",
}

// parserSays is what the parser says of a text, by the tree and by values.
func parserSays(text string) string {
	var all map[string]any
	said := ""
	if err := toml.Unmarshal([]byte(text), &all); err != nil {
		said = err.Error()
	}
	p := unstable.Parser{}
	p.Reset([]byte(text))
	for p.NextExpression() {
	}
	if err := p.Error(); err != nil {
		said += "\n" + err.Error()
	}
	return said
}

func TestPhrasesOfTheParser(t *testing.T) {
	for phrase, text := range phrases {
		assert.Contains(t, parserSays(text), phrase, "%.60q", text)
	}
}

// Every phrase that a cure looks for stands in that list.
func TestPhrasesAreListed(t *testing.T) {
	files, err := os.ReadDir(".")
	require.NoError(t, err)
	var found []string
	for _, file := range files {
		if !strings.HasSuffix(file.Name(), ".go") || strings.HasSuffix(file.Name(), "_test.go") {
			continue
		}
		tree, err := parser.ParseFile(token.NewFileSet(), file.Name(), nil, 0)
		require.NoError(t, err)
		ast.Inspect(tree, func(n ast.Node) bool {
			if call, ok := n.(*ast.CallExpr); ok {
				found = append(found, phrasesIn(call)...)
			}
			return true
		})
	}
	for _, phrase := range found {
		assert.Contains(t, phrases, phrase)
	}
	for phrase := range phrases {
		assert.True(t, slices.Contains(found, phrase), "nothing looks for %q", phrase)
	}
}

// phrasesIn are the phrases of one call: of says, and every other text of the words that are
// replaced.
func phrasesIn(call *ast.CallExpr) (found []string) {
	name, args, step := "", call.Args, 1
	switch fun := call.Fun.(type) {
	case *ast.SelectorExpr:
		name = fun.Sel.Name
	case *ast.Ident:
		name = fun.Name
	}
	switch list, _ := argument(call.Args, 0).(*ast.CompositeLit); {
	case name == "says":
	case name == "NewReplacer" && list != nil && text(argument(list.Elts, 0)) == "toml: ":
		args, step = list.Elts, 2
	default:
		return nil
	}
	for i := 0; i < len(args); i += step {
		if phrase := text(args[i]); phrase != "" {
			found = append(found, phrase)
		}
	}
	return found
}

func argument(args []ast.Expr, i int) ast.Expr {
	if i < len(args) {
		return args[i]
	}
	return nil
}

func text(e ast.Expr) string {
	if literal, ok := e.(*ast.BasicLit); ok && literal.Kind == token.STRING {
		s, _ := strconv.Unquote(literal.Value)
		return s
	}
	return ""
}
