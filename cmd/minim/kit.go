package main

import (
	"context"

	"github.com/spf13/pflag"

	"minim/cmd/minim/demo"
	"minim/equipment"
	"minim/report"
	"minim/report/data"
	"minim/report/words/kits"
	"minim/uncertainty/bench"
)

// kitOptions are the options of minim kit.
type kitOptions struct {
	destination
	classes bool
}

var kitTables = renderer[*equipment.Kit]{
	name: "kit", page: alone(report.Kit), width: screenWidth, data: aloneData(data.Kit),
}

var classTables = renderer[*kits.Tables]{
	name: "classes", page: alone(report.Classes), width: kits.ClassesWidth, data: aloneData(data.Classes),
}

func (o *kitOptions) declare(flags *pflag.FlagSet) {
	flags.BoolVar(&o.classes, "classes", false, "")
	o.destination.declare(flags)
}

func (o *kitOptions) check(flags *pflag.FlagSet, files []string) error {
	if err := o.destination.check(flags); err != nil {
		return err
	}
	if o.classes && len(files) > 0 {
		return &usageError{"--classes lists what minim knows and takes no kit", ""}
	}
	return nil
}

// run is minim kit.
func (o *kitOptions) run(ctx context.Context, files []string, _ *pflag.FlagSet, c console) error {
	if o.classes {
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
		return bench.LoadKit(ctx, files[0])
	}
	return demo.LoadKit()
}
