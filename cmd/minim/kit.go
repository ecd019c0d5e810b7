package main

import (
	"context"
	"io"

	"github.com/spf13/pflag"

	"minim/cmd/minim/demo"
	"minim/equipment"
	"minim/report"
	"minim/uncertainty/bench"
)

// kitOptions are the options of minim kit.
type kitOptions struct{ classes bool }

func (o *kitOptions) declare(flags *pflag.FlagSet) {
	flags.BoolVar(&o.classes, "classes", false, "list the class tables instead, with source and trust of every row")
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
	if o.classes && len(files) > 0 {
		return &usageError{"--classes lists what minim knows and takes no kit", ""}
	}
	if o.classes {
		_, err = io.WriteString(c.out, report.Classes(equipment.Classes())+report.MayNotMeet(equipment.Incompatibles()))
		return err
	}
	kit, err := loadKit(ctx, files)
	if err != nil {
		return err
	}
	_, err = io.WriteString(c.out, report.Kit(kit))
	return err
}

func loadKit(ctx context.Context, files []string) (*equipment.Kit, error) {
	if len(files) > 0 {
		return bench.LoadKit(ctx, files[0])
	}
	return demo.LoadKit()
}
