package main

import (
	"context"
	"fmt"
	"path/filepath"

	"github.com/spf13/pflag"

	"minim/cmd/minim/demo"
)

type folderOptions struct{ force bool }

func (o *folderOptions) declare(flags *pflag.FlagSet) {
	flags.BoolVar(&o.force, "force", false, "replace files that exist")
}

// startFolder is minim new: it writes the demo as a start.
func startFolder(ctx context.Context, args []string, c console) error {
	var o folderOptions
	flags := newFlags("new")
	o.declare(flags)
	dirs, err := parse(flags, args, 1, 1, c)
	if err != nil {
		return unlessHelp(err)
	}
	files := []file{{demo.KitName, demo.Kit}, {demo.PrepName, demo.Prep}}
	if err := writeAll(dirs[0], files, o.force); err != nil {
		return err
	}
	prep := filepath.Join(dirs[0], demo.PrepName)
	_, err = fmt.Fprintf(c.out, `wrote %s   the bench: put your own instruments in it
wrote %s     what is to be made, and by which routes
Next: minim compare %s
`, filepath.Join(dirs[0], demo.KitName), prep, prep)
	return err
}
