package main

import (
	"fmt"
	"slices"

	"github.com/spf13/pflag"

	"minim/equipment/quantity"
)

// destination is where the result of a command goes, and the kit that it is worked out on.
type destination struct {
	kit, format, dir string
	force            bool
}

func (o *destination) declareKit(flags *pflag.FlagSet) {
	flags.StringVar(&o.kit, "kit", "", "")
}

func (o *destination) declare(flags *pflag.FlagSet) {
	flags.StringVar(&o.format, "format", "text", "")
	flags.StringVar(&o.dir, "out", "", "")
	flags.BoolVar(&o.force, "force", false, "")
}

// check refuses a format that is not known, and --force without a file to write; others are
// the options that write one besides.
func (o *destination) check(flags *pflag.FlagSet, others ...string) error {
	if !slices.Contains(formats, o.format) {
		return &usageError{fmt.Sprintf("--format %s is not known", o.format), "the formats are " + quantity.Series(formats, "and")}
	}
	writing := slices.ContainsFunc(append(others, "out"), flags.Changed)
	if o.force && !writing {
		return &usageError{"--force is of use only with " + quantity.Series(append([]string{"--out"}, dashed(others)...), "or"), ""}
	}
	return nil
}

func dashed(names []string) (list []string) {
	for _, name := range names {
		list = append(list, "--"+name)
	}
	return list
}
