package main

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/spf13/pflag"

	"minim/report/answer"
	"minim/report/page"
	"minim/report/words/clause"
	"minim/report/words/glance"
)

// alignUpTo is the length of a command up to which the words beside the commands
// stand below each other.
const alignUpTo = 60

// next says what to type next, for a window of so many columns.
func (c call) next(a *answer.Answer, width int) string {
	var lines []string
	add := func(key string) {
		if line := told(c.flags.Name(), key); line != "" {
			lines = append(lines, strings.Replace(line, "{this}", c.repeat(), 1))
		}
	}
	if len(c.files) == 0 {
		add("begin")
	}
	if !c.flags.Changed("out") {
		add("keep")
	}
	longest := 0
	for _, line := range lines {
		if n := strings.Index(line, " | "); n <= alignUpTo {
			longest = max(longest, n)
		}
	}
	text, label := c.addNext(a.Batch), "\nNext:        "
	for _, line := range lines {
		command, words, _ := strings.Cut(line, " | ")
		line := fmt.Sprintf("%s%-*s   %s", label, longest, command, words)
		if utf8.RuneCountInString(line) > width {
			line = label + command + "\n" + page.Wrapped(words, nextAt+2, width)
		}
		text += line + "\n"
		label = "             "
	}
	return text
}

// nextAt is the column at which commands to type next stand.
const nextAt = 13

// shortNext says that in a line, below a screen that is short.
func (c call) shortNext(a *answer.Answer) string {
	switch {
	case len(c.files) == 0:
		return strings.Replace(told(c.flags.Name(), "begin"), " | ", ": ", 1)
	case c.addNext(a.Batch) != "":
		return glance.RecordIt
	}
	return ""
}

// repeat is the command line of this run, with every option that was given but
// --out and --force.
func (c call) repeat() string {
	words := append([]string{"minim " + c.flags.Name()}, clause.Each(c.files, quotedFile)...)
	c.flags.Visit(func(f *pflag.Flag) {
		switch f.Name {
		case "out", "save", "force", "all", "add", "by", "at":
			return
		}
		if f.Value.Type() == "bool" {
			words = append(words, "--"+f.Name)
			return
		}
		for _, value := range values(f) {
			words = append(words, "--"+f.Name, quoted(value))
		}
	})
	return strings.Join(words, " ")
}

// values of an option, of which one that may be repeated has several.
func values(f *pflag.Flag) []string {
	switch v := f.Value.(type) {
	case *changes:
		return v.texts()
	case pflag.SliceValue:
		return v.GetSlice()
	}
	return []string{f.Value.String()}
}
