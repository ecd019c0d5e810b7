package main

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The same seed gives the same bytes on every machine. What follows holds it by the
// source and by what the compiler makes of it; .ci/long compares the bytes.

// reckoning are the packages whose figures are printed, and from which everything else
// takes them. Pictures are left out: gonum/plot places what they show.
func reckoning(t *testing.T) []string {
	out, err := exec.Command("go", "list", "minim/...").Output()
	require.NoError(t, err)
	return slices.DeleteFunc(strings.Fields(string(out)), func(path string) bool {
		return path == "minim/report/figure" || slices.Contains(besideTheHouse, path)
	})
}

// fused is the place of an instruction that rounds a product and a sum in one step:
// FMADDD and its kin on arm64, VFMADD231SD and its kin on amd64.
var fused = regexp.MustCompile(`\(([^()\s]+\.go:\d+)\)\s+(?:FN?M(?:ADD|SUB)[DS]|VFN?M(?:ADD|SUB)\w*)\b`)

// TestNothingIsFused reads the assembly for arm64; amd64 with GOAMD64=v3 fuses by the same rule of
// the compiler, and .ci/long compares what both print. A cure is float64(x*y), at the product
// itself; where the line has none, the product is in a function that the compiler has put there. It
// is also what holds that all of the program can be built for arm64.
func TestNothingIsFused(t *testing.T) {
	skipIfSlow(t)
	build := exec.Command("go", append([]string{"build", "-gcflags=-S"}, reckoning(t)...)...)
	build.Env = append(os.Environ(), "CGO_ENABLED=0", "GOARCH=arm64")
	assembly, err := build.CombinedOutput()
	if err != nil {
		t.Fatalf("%v:\n%s", err, lastOf(assembly))
	}
	assert.Contains(t, string(assembly), "evaluate.go:", "there is no assembly to read")
	assert.Empty(t, placesIn(assembly), "these products are fused with a sum")
}

// lastOf is the end of what a build prints, where its errors stand.
func lastOf(output []byte) []byte { return output[max(0, len(output)-2000):] }

// placesIn are the places in our own files, each once, relative to the top.
func placesIn(assembly []byte) []string {
	top, err := filepath.Abs("../..")
	if err != nil {
		panic(err)
	}
	var places []string
	for line := range bytes.Lines(assembly) { // of which few are worth a closer look
		if !bytes.Contains(line, []byte("MADD")) && !bytes.Contains(line, []byte("MSUB")) {
			continue
		}
		if found := fused.FindSubmatch(line); found != nil {
			if place, err := filepath.Rel(top, string(found[1])); err == nil && !slices.Contains(places, place) {
				places = append(places, place)
			}
		}
	}
	slices.Sort(places)
	return places
}

// TestFusedIsSeen: the assembly of a sum of products has the place of what is fused.
func TestFusedIsSeen(t *testing.T) {
	place, err := filepath.Abs("../../uncertainty/sharp/sums.go")
	require.NoError(t, err)
	for _, instruction := range []string{"FMADDD\tF0, F1, F2, F3", "FNMSUBD\tF0, F1, F2, F3", "VFMADD231SD\tX0, X1, X2", "VFNMSUB213PD\tY0, Y1, Y2"} {
		line := fmt.Sprintf("\t0x0010 00016 (%s:12)\t%s\n", place, instruction)
		assert.Equal(t, []string{"uncertainty/sharp/sums.go:12"}, placesIn([]byte(line+line)), instruction)
	}
	assert.Empty(t, placesIn([]byte("\t0x0010 00016 ("+place+":12)\tFMULD\tF0, F1, F2\n")))
}

// differing are the functions of the standard library that differ in the last digit from
// machine to machine. Square roots, rounding, and powers of ten from a table do not.
var differing = strings.Fields(`Acos Acosh Asin Asinh Atan Atan2 Atanh Cbrt Cos Cosh Erf Erfc Erfcinv Erfinv Exp Exp2 Expm1 Gamma
	Hypot J0 J1 Jn Lgamma Log Log10 Log1p Log2 Pow Sin Sincos Sinh Tan Tanh Y0 Y1 Yn`)

// TestPortableFunctions: none of them is used where figures come from.
func TestPortableFunctions(t *testing.T) {
	seen := 0
	for _, path := range reckoning(t) {
		files, err := filepath.Glob(filepath.Join("../..", strings.TrimPrefix(path, "minim"), "*.go"))
		require.NoError(t, err)
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			seen++
			for _, place := range differingIn(t, file) {
				t.Errorf("%s differs from machine to machine: take that of uncertainty/portable", place)
			}
		}
	}
	assert.Greater(t, seen, 200, "files were missed")
}

func differingIn(t *testing.T, file string) (places []string) {
	files := token.NewFileSet()
	parsed, err := parser.ParseFile(files, file, nil, 0)
	require.NoError(t, err)
	ast.Inspect(parsed, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			if of, ok := s.X.(*ast.Ident); ok && of.Name == "math" && slices.Contains(differing, s.Sel.Name) {
				places = append(places, fmt.Sprintf("%s: math.%s", files.Position(s.Pos()), s.Sel.Name))
			}
		}
		return true
	})
	return places
}
