package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/pflag"
)

// newFlags returns the flag set of a command. Nothing is printed by it.
func newFlags(name string) *pflag.FlagSet {
	flags := pflag.NewFlagSet(name, pflag.ContinueOnError)
	flags.SortFlags = false
	flags.SetOutput(io.Discard)
	flags.Usage = func() {}
	return flags
}

// errHelp: the help of the command was asked for and given.
var errHelp = errors.New("help was asked for")

// parse reads the flags and returns the arguments, of which there may be from
// least to most.
func parse(flags *pflag.FlagSet, args []string, least, most int, c console) ([]string, error) {
	err := flags.Parse(args)
	switch {
	case errors.Is(err, pflag.ErrHelp):
		printCommandHelp(c.out, flags.Name(), flags)
		return nil, errHelp
	case err != nil:
		return nil, &usageError{err.Error(), fmt.Sprintf("minim help %s lists the options", flags.Name())}
	case flags.NArg() < least:
		return nil, &usageError{fmt.Sprintf("minim %s needs an argument", flags.Name()), fmt.Sprintf("see minim help %s", flags.Name())}
	case flags.NArg() > most:
		return nil, &usageError{fmt.Sprintf("minim %s takes at most %d argument; found %q as well", flags.Name(), most, flags.Arg(most)),
			"put a name with spaces in quotes"}
	}
	return flags.Args(), nil
}
