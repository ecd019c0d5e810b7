package main

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"
)

// alignUpTo is the length of a command up to which the words beside the commands
// stand below each other.
const alignUpTo = 60

// next says what to type next.
func next(files []string, flags *pflag.FlagSet) string {
	var lines []string
	if len(files) == 0 {
		lines = append(lines, "minim new mybench\t"+told(flags.Name(), "begin"))
	}
	if !flags.Changed("out") {
		lines = append(lines, repeat(files, flags)+" --out results\t"+told(flags.Name(), "keep"))
	}
	longest := 0
	for _, line := range lines {
		if n := strings.Index(line, "\t"); n <= alignUpTo {
			longest = max(longest, n)
		}
	}
	text, label := "", "\nNext:        "
	for _, line := range lines {
		command, words, _ := strings.Cut(line, "\t")
		text += fmt.Sprintf("%s%-*s   %s\n", label, longest, command, words)
		label = "             "
	}
	return text
}

// repeat is the command line of this run, with every option that was given but
// --out and --force.
func repeat(files []string, flags *pflag.FlagSet) string {
	words := []string{"minim " + flags.Name()}
	for _, f := range files {
		words = append(words, quotedFile(f))
	}
	flags.Visit(func(f *pflag.Flag) {
		switch f.Name {
		case "out", "save", "force", "add", "by", "at":
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
