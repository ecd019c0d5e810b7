package main

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"
)

// help prints what minim does, or what one command does.
func help(ctx context.Context, args []string, c console) error {
	if len(args) == 0 {
		printHelp(c.out)
		return nil
	}
	i := slices.IndexFunc(commands(), func(cmd command) bool { return cmd.name == args[0] })
	if i < 0 {
		return &usageError{fmt.Sprintf("there is no command %q", args[0]), "the commands are " + strings.Join(commandNames(), ", ")}
	}
	flags := newFlags(args[0])
	if args[0] == "compare" {
		new(compareOptions).declare(flags)
	}
	if args[0] == "new" {
		new(folderOptions).declare(flags)
	}
	printCommandHelp(c.out, args[0], flags)
	return nil
}

func printHelp(w io.Writer) {
	fmt.Fprint(w, `minim says how good the strength of a small, dilute solution will be: for
each way of making it on your bench, the strength, give or take how much, the
chance of being inside the tolerance, and what spoils it.

`)
	for _, cmd := range commands() {
		fmt.Fprintf(w, "  minim %-20s %s\n", cmd.name+" "+cmd.arguments, cmd.summary)
	}
	fmt.Fprint(w, `
Start with minim compare, which shows an invented example.
Exit code: 0 done, 1 the work failed, 2 the command line was wrong.
`)
}

func printCommandHelp(w io.Writer, name string, flags *pflag.FlagSet) {
	for _, cmd := range commands() {
		if cmd.name == name {
			fmt.Fprintf(w, "minim %s\n%s\n", strings.TrimSpace(cmd.name+" "+cmd.arguments), cmd.summary)
		}
	}
	if flags.HasFlags() {
		fmt.Fprintf(w, "\n%s", flags.FlagUsages())
	}
}

// printVersion prints the version.
func printVersion(ctx context.Context, args []string, c console) error {
	if _, err := parse(newFlags("version"), args, 0, 0, c); err != nil {
		return unlessHelp(err)
	}
	fmt.Fprintln(c.out, "minim", version)
	return nil
}

// unlessHelp is nil when the help was asked for.
func unlessHelp(err error) error {
	if err == errHelp {
		return nil
	}
	return err
}
