package main

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// specialWords of the screens, each of which the glossary has.
var specialWords = []string{
	"asked for", "assumed", "batch", "bench", "candidate", "chance", "dilution", "direct", "from memory", "give or take", "inside", "kit", "ladder", "left over", "meniscus",
	"misread", "not counted", "not shown", "owner", "prep", "readability", "record", "repeatability", "rescue", "route", "rung", "set aside", "shifted", "solute", "solvent",
	"span", "spoilt by", "stock", "strength", "target", "tolerance", "variance", "linearity", "half the risk", "holds within", "closer to the target", "probabilistically symmetric",
	"USE", "NEAREST", "OUTSIDE", "INSIDE", "IN DOUBT", "STOP", "VERDICT", "LEAVE IT",
}

func TestGlossary(t *testing.T) {
	words := map[string]bool{}
	last := ""
	for _, f := range glossary() {
		assert.NotEmpty(t, f.Label)
		assert.True(t, strings.HasSuffix(f.Text, "."), "%s: a sentence ends with a full stop", f.Label)
		assert.LessOrEqual(t, last, strings.ToLower(f.Label), "in the order of the alphabet")
		last = strings.ToLower(f.Label)
		words[f.Label] = true
	}
	for _, word := range specialWords {
		assert.True(t, words[word], "help words lacks %q", word)
	}
	for _, columns := range widths {
		text := inWindow(t, columns, "help", "words")
		within(t, text, columns, "help", "words")
		assert.Contains(t, strings.Join(strings.Fields(text), " "), "solute What is dissolved.")
	}
}

// Every label of the first screens that are kept is a word of the glossary.
func TestLabelsAreInTheGlossary(t *testing.T) {
	words := map[string]bool{}
	for _, f := range glossary() {
		words[strings.ToLower(f.Label)] = true
	}
	label := regexp.MustCompile(`(?m)^([A-Z][a-z]+(?: [a-z]+)*):  ?`)
	screens, err := filepath.Glob("../../testdata/screens/*-80.txt")
	require.NoError(t, err)
	require.NotEmpty(t, screens)
	for _, screen := range screens {
		if strings.Contains(screen, "kit") {
			continue
		}
		for _, found := range label.FindAllStringSubmatch(read(t, screen), -1) {
			word, _, _ := strings.Cut(strings.ToLower(found[1]), " a")
			if len(word) > 2 && strings.HasPrefix(word, "steps") {
				word = "steps"
			}
			assert.True(t, words[word], "%s: help words lacks %q", screen, found[1])
		}
	}
}

// Every command's help has an example, which works.
func TestExamplesOfTheHelp(t *testing.T) {
	skipIfSlow(t)
	t.Chdir(t.TempDir())
	output(t, "new", "mybench")
	output(t, "new", "--record", "mybench/dye.toml", "--route", "two dilutions", "mybench/batch.toml")
	for _, cmd := range commands() {
		example := told(cmd.name, "example")
		args := split(t, example)
		require.Greater(t, len(args), 1, cmd.name)
		assert.Equal(t, "minim", args[0])
		assert.Contains(t, []string{cmd.name}, args[1])
		output(t, args[1:]...)
		assert.Contains(t, output(t, "help", cmd.name), "\nExample: "+example+"\n")
		assert.Equal(t, output(t, "help", cmd.name), output(t, cmd.name, "--help"))
	}
}
