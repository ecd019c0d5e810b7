package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// literal is a text in the program, with the functions called and the types made round it.
type literal struct {
	path, text string
	line       int
	calls      []string
}

// literalsOf are all texts of the program without its tests and its test data.
func literalsOf(t *testing.T) (list []literal) {
	t.Helper()
	fileset := token.NewFileSet()
	require.NoError(t, filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.Contains(path, "/testdata/") {
			return err
		}
		file, err := parser.ParseFile(fileset, path, nil, 0)
		require.NoError(t, err)
		var calls []string
		var round []ast.Node
		ast.Inspect(file, func(n ast.Node) bool {
			if n == nil {
				switch round[len(round)-1].(type) {
				case *ast.CallExpr, *ast.CompositeLit, *ast.ValueSpec, *ast.FuncDecl:
					calls = calls[:len(calls)-1]
				}
				round = round[:len(round)-1]
				return true
			}
			switch x := n.(type) {
			case *ast.CallExpr:
				calls = append(calls, nameOf(x.Fun))
			case *ast.CompositeLit:
				calls = append(calls, nameOf(x.Type))
			case *ast.ValueSpec:
				calls = append(calls, nameOf(x.Type))
			case *ast.FuncDecl:
				calls = append(calls, methodOf(x))
			case *ast.BasicLit:
				if x.Kind == token.STRING {
					at := fileset.Position(x.Pos())
					list = append(list, literal{strings.TrimPrefix(filepath.ToSlash(path), "../../"), x.Value, at.Line, slices.Clone(calls)})
				}
			}
			round = append(round, n)
			return true
		})
		return nil
	}))
	return list
}

// methodOf is the name of a method, "" of a function.
func methodOf(f *ast.FuncDecl) string {
	if f.Recv == nil || f.Name.Name != "Error" {
		return ""
	}
	return f.Name.Name
}

// nameOf is the name of a function that is called or of the type that is made, or of its elements.
func nameOf(e ast.Expr) string {
	switch f := e.(type) {
	case *ast.SelectorExpr:
		return f.Sel.Name
	case *ast.Ident:
		return f.Name
	case *ast.IndexExpr:
		return nameOf(f.X)
	case *ast.StarExpr:
		return nameOf(f.X)
	case *ast.ArrayType:
		return nameOf(f.Elt)
	case *ast.MapType:
		return nameOf(f.Value)
	}
	return ""
}

// TestBelowKnowsNoCommand: what stands below report and cmd speaks of no option and no command.
func TestBelowKnowsNoCommand(t *testing.T) {
	skipIfSlow(t)
	command := regexp.MustCompile(`--[a-z]|\bminim [a-z]+`)
	for _, l := range literalsOf(t) {
		if strings.HasPrefix(l.path, "uncertainty/") || strings.HasPrefix(l.path, "equipment/") {
			assert.False(t, command.MatchString(l.text), "%s:%d: %s", l.path, l.line, l.text)
		}
	}
}

// sentences is a text of two words or more.
var sentences = regexp.MustCompile(`[\pL]+ [\pL]+`)

// makeErrors are the functions and types that make an error, a mistake of a file or a panic of
// what they are given: those are worded where they are found. One group to a package.
var makeErrors = []string{
	"Errorf",
	"New",
	"panic",

	"failTable",

	"Fail", "FailFor", "FailKey", "FailWith", "FailHelp", "Refuse", "NoSuch",

	"mistake", "wrong", "refuse", "within",

	"Limit", "Error", // a method of this name words an error as well

	"StepError",

	"Mistake", "says", "phrase", "ofMistake",

	"fault", "fail", "failInstrument", "failFor", "likely", "plausible", "inLimit", "nameOf", "priceForm",

	"usageError", "hinted", "listed", "unknown", "refuseRead", "mayReplace",

	// A constant of this type is an identity, which nobody reads.
	"Code", "By",
}

// mostSentences is how many texts of two words or more may stand elsewhere than in report/words,
// in page templates and in errors. It only ever falls.
const mostSentences = 63

// TestSentencesStandInOneRoom counts them. With MINIM_LITERALS set to a part of a path it
// prints those in there.
func TestSentencesStandInOneRoom(t *testing.T) {
	skipIfSlow(t)
	number, all := map[string]int{}, 0
	for _, l := range literalsOf(t) {
		if !isSentence(l) {
			continue
		}
		number[filepath.ToSlash(filepath.Dir(l.path))]++
		all++
		if asked := os.Getenv("MINIM_LITERALS"); asked != "" && strings.Contains(l.path, asked) {
			fmt.Printf("%s:%d: %s\n", l.path, l.line, l.text)
		}
	}
	for _, path := range slices.Sorted(maps.Keys(number)) {
		t.Logf("%s: %d", path, number[path])
	}
	assert.LessOrEqual(t, all, mostSentences)
}

// forTests are packages that only tests import.
var forTests = []string{"report/webtest", "equipment/benchfile/broken", "uncertainty/independent", "uncertainty/near", "uncertainty/smallbench"}

func isSentence(l literal) bool {
	return sentences.MatchString(l.text) && !strings.HasPrefix(l.path, "report/words/") && !slices.Contains(forTests, filepath.ToSlash(filepath.Dir(l.path))) &&
		!slices.ContainsFunc(l.calls, func(name string) bool { return slices.Contains(makeErrors, name) })
}

// A text whose words and arguments do not fit shows by what package fmt writes then.
func TestNoFormatShows(t *testing.T) {
	bad := regexp.MustCompile(`%!\w?\(`)
	require.NoError(t, filepath.WalkDir("../../testdata", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		assert.Empty(t, bad.Find(data), path)
		return err
	}))
}
