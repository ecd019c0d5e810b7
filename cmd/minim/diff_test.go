package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// sameText fails with the lines that differ, those that are only expected marked by -, those
// that are only found by +.
func sameText(t *testing.T, want, got, what string) {
	t.Helper()
	if want != got {
		t.Errorf("%s differs:\n%s", what, lineDiff(want, got))
	}
}

const (
	diffContext = 2   // lines before and after
	diffLines   = 40  // shown at most
	diffWidth   = 200 // of a line, in bytes
)

// lineDiff is a table of longest common subsequences read out, between the first and the last
// line that differ, which are few; where they are many, both are shown one below the other.
func lineDiff(want, got string) string {
	a, b := strings.SplitAfter(want, "\n"), strings.SplitAfter(got, "\n")
	first := 0
	for first < min(len(a), len(b)) && a[first] == b[first] {
		first++
	}
	same := 0
	for same < min(len(a), len(b))-first && a[len(a)-1-same] == b[len(b)-1-same] {
		same++
	}
	start := max(0, first-diffContext)
	lines := marked(" ", a[start:first])
	lines = append(lines, middle(a[first:len(a)-same], b[first:len(b)-same])...)
	lines = append(lines, marked(" ", a[len(a)-same:min(len(a), len(a)-same+diffContext)])...)
	if len(lines) > diffLines {
		lines = append(lines[:diffLines], fmt.Sprintf("… and %d lines more", len(lines)-diffLines))
	}
	return fmt.Sprintf("from line %d\n%s", start+1, strings.Join(lines, "\n"))
}

func middle(a, b []string) (lines []string) {
	if len(a)*len(b) > 4_000_000 {
		return append(marked("-", a[:min(len(a), diffLines/2)]), marked("+", b)...)
	}
	common := make([][]int, len(a)+1)
	for i := range common {
		common[i] = make([]int, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			common[i][j] = max(common[i+1][j], common[i][j+1])
			if a[i] == b[j] {
				common[i][j] = common[i+1][j+1] + 1
			}
		}
	}
	i, j := 0, 0
	for i < len(a) || j < len(b) {
		switch {
		case i < len(a) && j < len(b) && a[i] == b[j]:
			lines = append(lines, marked(" ", a[i:i+1])...)
			i, j = i+1, j+1
		case i < len(a) && (j == len(b) || common[i+1][j] >= common[i][j+1]):
			lines = append(lines, marked("-", a[i:i+1])...)
			i++
		default:
			lines = append(lines, marked("+", b[j:j+1])...)
			j++
		}
	}
	return lines
}

func marked(sign string, lines []string) (list []string) {
	for _, line := range lines {
		if text, ended := strings.CutSuffix(line, "\n"); ended {
			line = text
		} else {
			line += " (no line end)"
		}
		list = append(list, sign+" "+line[:min(len(line), diffWidth)])
	}
	return list
}

func TestLineDiff(t *testing.T) {
	assert.Equal(t, "from line 2\n  b\n  c\n- d\n+ x\n  e\n+ y\n  f\n  g", lineDiff("a\nb\nc\nd\ne\nf\ng\nh\n", "a\nb\nc\nx\ne\ny\nf\ng\nh\n"))
	assert.Equal(t, "from line 1\n  a\n-  (no line end)\n+ b (no line end)", lineDiff("a\n", "a\nb"))
	long := lineDiff(strings.Repeat("a\n", 3000), strings.Repeat("b\n", 3000))
	assert.LessOrEqual(t, strings.Count(long, "\n"), diffLines+1)
	assert.Contains(t, long, "+ b")
	assert.LessOrEqual(t, len(lineDiff(strings.Repeat("a", 9999), "")), 3*diffWidth)
}
