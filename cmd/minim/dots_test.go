package main

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// follows reports whether a text is what is wanted, where a line of three dots stands for any
// number of lines that it is not about. Where it is not, missing are the lines between two of
// these that do not come, or not there.
func follows(want, got string) (missing string, ok bool) {
	lines, parts := slices.Collect(strings.Lines(got)), partsOf(want)
	for i, part := range parts {
		from, to := 0, len(lines)-len(part)
		if i == len(parts)-1 {
			from = max(0, to)
		}
		if i == 0 {
			to = min(to, 0)
		}
		for from <= to && !slices.Equal(lines[from:from+len(part)], part) {
			from++
		}
		if from > to {
			return strings.Join(part, ""), false
		}
		lines = lines[from+len(part):]
	}
	return "", true
}

// partsOf are the lines of a text, parted at lines of three dots.
func partsOf(text string) [][]string {
	parts := [][]string{nil}
	for line := range strings.Lines(text) {
		if line == "...\n" {
			parts = append(parts, nil)
		} else {
			parts[len(parts)-1] = append(parts[len(parts)-1], line)
		}
	}
	return parts
}

// thinned is a text of which is left out what a text wanted, which it no longer follows, left
// out of another one: of the ways to find the lines wanted in it, each as it was or begun
// alike, that which finds most.
func thinned(want, got string) string {
	if !strings.Contains("\n"+want, "\n...\n") {
		return got
	}
	var lines []string
	for _, part := range partsOf(want) {
		lines = append(lines, part...)
	}
	all := slices.Collect(strings.Lines(got))
	found := make([][]int, len(lines)+1) // of the lines from one on, in those from one on
	for i := range found {
		found[i] = make([]int, len(all)+1)
	}
	for i := len(lines) - 1; i >= 0; i-- {
		for j := len(all) - 1; j >= 0; j-- {
			found[i][j] = max(found[i+1][j], found[i][j+1], found[i+1][j+1]+alike(lines[i], all[j]))
		}
	}
	var b strings.Builder
	i, gap := 0, false
	for j, line := range all {
		for i < len(lines) && found[i][j] == found[i+1][j] {
			i++
		}
		if i < len(lines) && found[i][j] > found[i][j+1] {
			b.WriteString(line)
			i, gap = i+1, false
		} else if !gap {
			b.WriteString("...\n")
			gap = true
		}
	}
	return b.String()
}

// alike is how much alike two lines are.
func alike(a, b string) int {
	const begin = 8
	switch {
	case a == b:
		return min(len(a), 4)
	case len(a) > begin && len(b) > begin && a[:begin] == b[:begin]:
		return 2
	}
	return 0
}

func TestFollows(t *testing.T) {
	const got = "a\nb\nc\nb\nd\n"
	for _, want := range []string{got, "...\n", "a\n...\n", "...\nd\n", "a\n...\nd\n", "...\nc\n...\n", "a\nb\n...\nb\nd\n", "a\nb\nc\nb\nd\n...\n", "...\nb\n...\nb\n...\nd\n"} {
		missing, ok := follows(want, got)
		assert.True(t, ok, "%q: %q", want, missing)
	}
	for want, missing := range map[string]string{
		"": "", "a\n": "a\n", "b\n...\n": "b\n", "...\nc\n": "c\n", "a\n...\na\n...\n": "a\n", "...\nd\n...\nb\n...\n": "b\n", "...\nb\nd\n...\nd\n": "d\n", "...\nb\n...\nb\n...\nb\n...\n": "b\n", "a\nb\nc\nb\nd": "a\nb\nc\nb\nd",
	} {
		found, ok := follows(want, got)
		assert.False(t, ok, "%q", want)
		assert.Equal(t, missing, found, "%q", want)
	}
	_, ok := follows("", "")
	assert.True(t, ok)
}

func TestThinned(t *testing.T) {
	const before = "Wanted:   this\n\nUSE  one\n  1 weigh\n\n  Strength  1.0\n  Inside    99\n\nMind:  that\n"
	for want, after := range map[string][2]string{
		"...\n  Strength  1.0\n...\n":                            {strings.Replace(before, "1.0", "2.0", 1), "...\n  Strength  2.0\n...\n"},
		"Wanted:   this\n\nUSE  one\n...\n  Inside    99\n...\n": {"new\n" + before, "...\nWanted:   this\n\nUSE  one\n...\n  Inside    99\n...\n"},
		"...\nUSE  one\n...\nMind:  that\n":                      {"USE  one\nMind:  those\nMind:  that\n", "USE  one\n...\nMind:  that\n"},
		before:                                                   {"other\n", "other\n"},
	} {
		_, ok := follows(want, before)
		assert.True(t, ok, "%q", want)
		assert.Equal(t, after[1], thinned(want, after[0]), "%q", want)
		_, ok = follows(after[1], after[0])
		assert.True(t, ok, "%q", after[1])
	}
}
