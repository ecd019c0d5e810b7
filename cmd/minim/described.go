package main

import (
	"strings"

	"github.com/spf13/pflag"

	"minim/report/answer"
	"minim/report/page"
	"minim/report/words/clause"
	"minim/uncertainty/bench"
)

// described is the program as completions and the manual page have it, made of the tables of the options
// and the words of the help.
type described struct {
	Version, About, After string
	Commands              []describedCommand
	// Topics are what minim help says something of, Shells those whose command lines can be completed.
	Topics, Shells []string
	Words          []page.Fact
}

type describedCommand struct {
	Name, Usage, Does, Example string
	Options                    []describedOption
}

// describedOption has a word for its value, "" where it takes none; choices are the values that it can
// have, nil where these are not listed.
type describedOption struct {
	Name, Value, Does string
	Choices           []string
	File              bool
}

// shells whose command lines can be completed.
var shells = []string{"bash", "zsh", "fish"}

// describe describes the program; the commands are in the order of the help.
func describe() described {
	about, after, _ := strings.Cut(helpScreen, "{commands}")
	d := described{Version: version, About: strings.TrimSpace(about), After: strings.TrimSpace(after), Topics: append(commandNames(), "words", "completion", "man"), Shells: shells, Words: glossary()}
	for _, cmd := range commands() {
		c := describedCommand{Name: cmd.name, Usage: told(cmd.name, "usage"), Does: told(cmd.name, "does"), Example: told(cmd.name, "example")}
		newFlags(cmd.name, cmd.job).VisitAll(func(f *pflag.Flag) { c.Options = append(c.Options, describeOption(f)) })
		d.Commands = append(d.Commands, c)
	}
	return d
}

func describeOption(f *pflag.Flag) describedOption {
	value, does := pflag.UnquoteUsage(f)
	o := describedOption{Name: f.Name, Does: does}
	if f.Value.Type() == "bool" {
		return o
	}
	o.Value, o.File = value, value == "FILE" || value == "DIR"
	o.Choices = map[string][]string{"format": answer.Formats(), "prefer": bench.Preferences()}[f.Name]
	return o
}

// Short is the first part of what an option does, for a list.
func (o describedOption) Short() string {
	first, _, _ := strings.Cut(o.Does, ";")
	return first
}

// zsh is "--kit=[use the kit in FILE]:FILE:_files".
func (o describedOption) zsh() string {
	text := "--" + o.Name + clause.When(o.Value != "", "=") + "[" + strings.NewReplacer("[", `\[`, "]", `\]`, ":", `\:`).Replace(o.Short()) + "]"
	switch {
	case o.Value == "":
		return text
	case o.Choices != nil:
		return text + ":" + o.Value + ":(" + strings.Join(o.Choices, " ") + ")"
	case o.File:
		return text + ":" + o.Value + ":_files"
	}
	return text + ":" + o.Value + ": "
}
