package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"
)

// help prints what minim does, or what one command does.
func help(ctx context.Context, args []string, c console) error {
	switch {
	case len(args) == 0:
		return printHelp(c.out)
	case len(args) > 1:
		return &usageError{fmt.Sprintf("minim help takes one command, found %q as well", args[1]), ""}
	}
	i := slices.IndexFunc(commands(), func(cmd command) bool { return cmd.name == args[0] })
	if i < 0 {
		return unknownCommand(args[0])
	}
	flags := newFlags(args[0])
	if declare := commands()[i].declare; declare != nil {
		declare(flags)
	}
	return printCommandHelp(c.out, args[0], flags)
}

func printHelp(w io.Writer) error {
	var b strings.Builder
	b.WriteString(`minim says how good the strength of a small, dilute solution will be: for
each way of making it on your bench, the strength, give or take how much, the
chance of being inside the tolerance, and what spoils it.

`)
	for _, cmd := range commands() {
		fmt.Fprintf(&b, "  minim %-20s %s\n", cmd.name+" "+cmd.arguments, cmd.summary)
	}
	b.WriteString(`
Start with minim compare, which shows an invented example.
Exit code: 0 done, 1 the work failed, 2 the command line was wrong, 3 minim
itself is wrong.
`)
	_, err := io.WriteString(w, b.String())
	return err
}

func printCommandHelp(w io.Writer, name string, flags *pflag.FlagSet) error {
	var b strings.Builder
	for _, cmd := range commands() {
		if cmd.name == name {
			fmt.Fprintf(&b, "minim %s\n%s\n", strings.TrimSpace(cmd.name+" "+cmd.arguments), cmd.summary)
		}
	}
	if flags.HasFlags() {
		fmt.Fprintf(&b, "\n%s", flags.FlagUsages())
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// printVersion prints the version.
func printVersion(ctx context.Context, args []string, c console) error {
	if _, err := parse(newFlags("version"), args, 0, c); err != nil {
		return unlessHelp(err)
	}
	_, err := fmt.Fprintln(c.out, "minim", version)
	return err
}

// unlessHelp is nil when the help was asked for.
func unlessHelp(err error) error {
	if errors.Is(err, errHelp) {
		return nil
	}
	return err
}
