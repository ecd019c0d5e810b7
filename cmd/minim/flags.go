package main

import (
	"errors"
	"fmt"
	"io"
	"slices"

	"github.com/spf13/pflag"

	"minim/equipment/benchfile"
	"minim/report/words/clause"
)

// newFlags returns the flag set of a command, with the words of help.txt. Nothing is
// printed by it.
func newFlags(name string, j job) *pflag.FlagSet {
	flags := pflag.NewFlagSet(name, pflag.ContinueOnError)
	flags.SortFlags = false
	flags.SetOutput(io.Discard)
	flags.Usage = func() {}
	if j != nil {
		j.declare(flags)
	}
	flags.VisitAll(func(f *pflag.Flag) { f.Usage = told(name, "--"+f.Name) })
	return flags
}

// parse reads the flags and returns the arguments, of which there may be so many. The error
// is pflag.ErrHelp where help is asked for.
func parse(flags *pflag.FlagSet, args []string, most int) ([]string, error) {
	err := flags.Parse(args)
	switch {
	case errors.Is(err, pflag.ErrHelp):
		return nil, err
	case err != nil:
		return nil, flagError(flags, err)
	case flags.NArg() > most && most == 0:
		return nil, &usageError{fmt.Sprintf("minim %s takes nothing after it, found %q", flags.Name(), flags.Arg(0)), ""}
	case flags.NArg() > most && most == 2:
		return nil, &usageError{fmt.Sprintf("minim %s takes two files, found %q as well", flags.Name(), flags.Arg(most)), "put a name with spaces in quotes"}
	case flags.NArg() > most:
		return nil, &usageError{fmt.Sprintf("minim %s takes one name, found %q as well", flags.Name(), flags.Arg(most)), "put a name with spaces in quotes"}
	case slices.Contains(flags.Args(), ""):
		return nil, &usageError{"the name is empty", ""}
	}
	if err := refuseEmpty(flags); err != nil {
		return nil, err
	}
	return flags.Args(), composeNames(flags)
}

// filesOf are the options that name files, which are found by the very bytes of their names.
var filesOf = []string{"kit", "record", "out", "save"}

// composeNames writes what the other options say as the texts of files are read, so that a
// name typed on one system is that of a file written on another.
func composeNames(flags *pflag.FlagSet) (err error) {
	flags.Visit(func(f *pflag.Flag) {
		if err != nil || slices.Contains(filesOf, f.Name) {
			return
		}
		switch v := f.Value.(type) {
		case *changes: // read as in a file
		case pflag.SliceValue:
			err = v.Replace(clause.Each(v.GetSlice(), benchfile.Composed))
		default:
			if text := benchfile.Composed(v.String()); text != v.String() {
				err = v.Set(text)
			}
		}
	})
	return err
}

// flagError words what is wrong with the options.
func flagError(flags *pflag.FlagSet, err error) error {
	var (
		none     *pflag.NotExistError
		missing  *pflag.ValueRequiredError
		invalid  *pflag.InvalidValueError
		mistake  *benchfile.Mistake
		all      []string
		listHint = fmt.Sprintf("minim help %s lists the options", flags.Name())
	)
	switch {
	case errors.As(err, &none):
		flags.VisitAll(func(f *pflag.Flag) { all = append(all, f.Name) })
		name := none.GetSpecifiedName()
		return unknown(fmt.Sprintf("there is no option %q", name), name, all, "--%s", listHint)
	case errors.As(err, &missing):
		return &usageError{fmt.Sprintf("--%s needs a value", missing.GetSpecifiedName()), listHint}
	case errors.As(err, &mistake):
		return blame(mistake)
	case errors.As(err, &invalid):
		return &usageError{fmt.Sprintf("--%s: %q is not a number that it can take", invalid.GetFlag().Name, invalid.GetValue()), listHint}
	}
	return &usageError{err.Error(), listHint}
}

// refuseEmpty refuses an option that is given without a text.
func refuseEmpty(flags *pflag.FlagSet) (err error) {
	flags.Visit(func(f *pflag.Flag) {
		if err == nil && f.Value.Type() == "string" && f.Value.String() == "" {
			err = &usageError{fmt.Sprintf("--%s is empty", f.Name), ""}
		}
	})
	return err
}
