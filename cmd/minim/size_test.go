package main

import (
	"go/ast"
	"go/parser"
	"go/scanner"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is longer is hard to take in at once: see DEVELOPERS.md.
const (
	mostFunctionLines = 45
	mostPackageLines  = 4000
)

// codeFiles calls look for every Go file of the program without its tests.
func codeFiles(t *testing.T, look func(dir, path string)) {
	t.Helper()
	root := filepath.Join("..", "..")
	require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && path != root):
			return filepath.SkipDir
		case strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, "_test.go"):
			dir, err := filepath.Rel(root, filepath.Dir(path))
			look(filepath.ToSlash(dir), path)
			return err
		}
		return nil
	}))
}

// TestFunctionsAreShort counts the lines of a function from its name to its last brace.
func TestFunctionsAreShort(t *testing.T) {
	skipIfSlow(t)
	long := []string{}
	functions := 0
	codeFiles(t, func(dir, path string) {
		files := token.NewFileSet()
		parsed, err := parser.ParseFile(files, path, nil, parser.SkipObjectResolution)
		require.NoError(t, err)
		for _, d := range parsed.Decls {
			f, is := d.(*ast.FuncDecl)
			if !is {
				continue
			}
			functions++
			if lines := files.Position(f.End()).Line - files.Position(f.Pos()).Line + 1; lines > mostFunctionLines {
				long = append(long, dir+" "+f.Name.Name)
			}
		}
	})
	assert.Greater(t, functions, 2000, "where is the program?")
	assert.Empty(t, long, "split what is longer than %d lines", mostFunctionLines)
}

// TestPackagesAreSmall counts lines with code, without comments and blanks.
func TestPackagesAreSmall(t *testing.T) {
	skipIfSlow(t)
	lines := make(map[string]int)
	codeFiles(t, func(dir, path string) {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		lines[dir] += codeLines(text)
	})
	for dir, n := range lines {
		assert.LessOrEqual(t, n, mostPackageLines, "%s has too many lines of code", dir)
	}
}

// codeLines counts the lines of a text on which something of Go stands.
func codeLines(text []byte) int {
	file := token.NewFileSet().AddFile("", -1, len(text))
	var s scanner.Scanner
	s.Init(file, text, nil, 0)
	lines := make(map[int]bool)
	for {
		at, kind, literal := s.Scan()
		switch {
		case kind == token.EOF:
			return len(lines)
		case kind == token.SEMICOLON && literal == "\n":
			continue
		}
		for n := range strings.Count(literal, "\n") + 1 {
			lines[file.Line(at)+n] = true
		}
	}
}

// Constructed: the package line and two lines of a constant count, the comment and the blank not.
func TestCodeLines(t *testing.T) {
	skipIfSlow(t)
	assert.Equal(t, 3, codeLines([]byte("package a\n\n// not this\nconst b = `one\ntwo` // nor this\n")))
}
