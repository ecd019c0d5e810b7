package main

import (
	_ "embed"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"minim/equipment/quantity"
	"minim/report/answer"
	"minim/report/words/clause"
	"minim/uncertainty/bench"
)

// helpText is what minim help says, and then a section for each command and for what several
// of them share: what the command does, a line for each option and for what to type next.
//
//go:embed help.txt
var helpText string

// helpScreen is what minim help says, helpSections what it says of commands, those of one
// before those of several.
var helpScreen, helpSections = readHelp()

// helpSection has lines by their key: an option, "usage", "does", "busy", "keep" or "begin". They are
// of the commands that are named, of any where none is.
type helpSection struct {
	commands []string
	lines    map[string]string
}

func readHelp() (screen string, list []helpSection) {
	known := strings.NewReplacer("{formats}", quantity.Series(answer.Formats(), "or"), "{policies}", quantity.Series(bench.Preferences(), "or"))
	screen, rest, _ := strings.Cut(known.Replace(helpText), "\n# ")
	for text := range strings.SplitSeq(rest, "\n# ") {
		list = append(list, readHelpSection(strings.Split(strings.TrimSpace(text), "\n")))
	}
	return screen, list
}

// readHelpSection reads one that begins with "minim plan [PREP]", "shared by plan, buy" or "shared".
func readHelpSection(lines []string) helpSection {
	s := helpSection{lines: map[string]string{}}
	if words := strings.Fields(strings.ReplaceAll(lines[0], ",", "")); words[0] == "minim" {
		s.commands, s.lines["usage"] = words[1:2], lines[0]
	} else {
		s.commands = words[min(2, len(words)):]
	}
	for _, line := range lines[1:] {
		key, words, _ := strings.Cut(line, ": ")
		s.lines[key] = words
	}
	return s
}

// told is what help.txt says of a command by the key of a line; "" where it says nothing.
func told(command, key string) string { return sectionWith(command, key).lines[key] }

// sectionWith is the first section with such a line.
func sectionWith(command, key string) (with helpSection) {
	for _, s := range slices.Backward(helpSections) {
		if s.lines[key] != "" && (len(s.commands) == 0 || slices.Contains(s.commands, command)) {
			with = s
		}
	}
	return with
}

// help prints what minim does, or what one command does, itself as well.
func help(args []string, w io.Writer) error {
	if len(args) == 1 && (args[0] == "--help" || args[0] == "-h") {
		args = []string{"help"}
	}
	switch {
	case len(args) == 0:
		return printHelp(w)
	case args[0] == "words" && len(args) == 1:
		return printWords(w)
	case args[0] == "man" && len(args) == 1:
		return printWritten("man", w)
	case args[0] == "completion" && len(args) <= 2:
		return printCompletion(args[1:], w)
	case len(args) > 1:
		return &usageError{fmt.Sprintf("minim help takes one command, found %q as well", args[1]), ""}
	}
	cmd, err := commandCalled(args[0])
	if err != nil {
		return err
	}
	return printCommandHelp(w, newFlags(cmd.name, cmd.job))
}

func printHelp(w io.Writer) error {
	list := clause.Each(commandNames(), func(name string) string { return fmt.Sprintf("  %-26s %s", told(name, "usage"), told(name, "does")) })
	_, err := io.WriteString(w, strings.Replace(helpScreen, "{commands}", strings.Join(list, "\n"), 1))
	return err
}

func printCommandHelp(w io.Writer, flags *pflag.FlagSet) error {
	text := told(flags.Name(), "usage") + "\n" + told(flags.Name(), "does") + "\n" + clause.When(flags.HasFlags(), "\n"+flags.FlagUsages()) +
		"\nExample: " + told(flags.Name(), "example") + "\n"
	_, err := io.WriteString(w, text)
	return err
}

func printVersion(w io.Writer) error {
	_, err := fmt.Fprintln(w, "minim", version)
	return err
}
