package main

import (
	"context"

	"github.com/spf13/pflag"

	"minim/cmd/minim/demo"
	"minim/equipment"
	"minim/report/words/kits"
)

// kitOptions are the options of minim kit.
type kitOptions struct {
	destination
	classes bool
}

func (o *kitOptions) declare(flags *pflag.FlagSet) {
	flags.BoolVar(&o.classes, "classes", false, "list the class tables instead, with source and trust of every row")
	o.destination.declare(flags)
}

// listKit is minim kit.
func listKit(ctx context.Context, args []string, c console) error {
	var o kitOptions
	flags := newFlags("kit")
	o.declare(flags)
	files, err := parse(flags, args, 1, c)
	if err != nil {
		return unlessHelp(err)
	}
	if err := o.check(flags); err != nil {
		return err
	}
	switch {
	case o.classes && len(files) > 0:
		return &usageError{"--classes lists what minim knows and takes no kit", ""}
	case o.classes:
		return showed(&classTables, c, &o.destination, func() (*kits.Tables, error) { return kits.AllTables(), nil })
	}
	return showed(&kitTables, c, &o.destination, func() (*equipment.Kit, error) { return loadKit(ctx, files) }, files...)
}

// showed shows a list that is made of the files that are read.
func showed[R any](r *renderer[R], c console, o *destination, load func() (R, error), read ...string) error {
	if err := r.mayKeep(c, o, read...); err != nil {
		return err
	}
	list, err := load()
	if err != nil {
		return err
	}
	var before R
	return r.show(c, o, "", list, before)
}

func loadKit(ctx context.Context, files []string) (*equipment.Kit, error) {
	if len(files) > 0 {
		return equipment.LoadKitContext(ctx, files[0])
	}
	return demo.LoadKit()
}
