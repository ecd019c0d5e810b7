package main

import (
	"fmt"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
)

// Every option has its words in help.txt, and every line there is of an option: those that
// several commands share of two commands at least.
func TestHelpHasWordsForEveryOption(t *testing.T) {
	used := map[string]int{}
	take := func(command, key string) {
		s := sectionWith(command, key)
		assert.NotEmpty(t, s.lines[key], "help.txt has no line %q for minim %s", key, command)
		used[fmt.Sprint(s.lines["usage"], s.commands, key)]++
	}
	for _, cmd := range commands() {
		take(cmd.name, "usage")
		take(cmd.name, "does")
		take(cmd.name, "example")
		flags := newFlags(cmd.name, cmd.job)
		if flags.Lookup("format") != nil && cmd.name != "kit" { // after which something is to be typed next
			take(cmd.name, "keep")
			take(cmd.name, "begin")
		}
		if told(cmd.name, "busy") != "" {
			take(cmd.name, "busy")
		}
		flags.VisitAll(func(f *pflag.Flag) {
			take(cmd.name, "--"+f.Name)
			assert.Equal(t, told(cmd.name, "--"+f.Name), f.Usage)
		})
	}
	for _, s := range helpSections {
		usage := s.lines["usage"]
		for key := range s.lines {
			n := used[fmt.Sprint(usage, s.commands, key)]
			assert.NotZero(t, n, "help.txt words %s of %s %v, which is no option", key, usage, s.commands)
			assert.True(t, usage != "" || n > 1, "%s %v is not shared", key, s.commands)
		}
	}
}

// A line of a command comes before one that several share.
func TestHelpOfOneCommandComesFirst(t *testing.T) {
	assert.Equal(t, "simulate `N` batches, not as many as it takes", told("made", "--trials"))
	assert.Equal(t, "simulate `N` batches of each route that is shown, not as many as it takes", told("buy", "--trials"))
	assert.Equal(t, "simulate `N` batches of each route, not as many as it takes", told("sheet", "--trials"))
	assert.Empty(t, told("compare", "--steps"))
}
