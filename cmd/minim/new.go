package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"

	"github.com/spf13/pflag"

	"minim/cmd/minim/demo"
	"minim/equipment/quantity"
	"minim/uncertainty/bench"
	"minim/uncertainty/hazards"
	"minim/uncertainty/route"
)

// newOptions are the options of minim new.
type newOptions struct {
	record, route, kit string
	force              bool
}

func (o *newOptions) declare(flags *pflag.FlagSet) {
	flags.StringVar(&o.record, "record", "", "")
	flags.StringVar(&o.route, "route", "", "")
	flags.StringVar(&o.kit, "kit", "", "")
	flags.BoolVar(&o.force, "force", false, "")
}

func (o *newOptions) check(c call) error {
	switch {
	case o.record != "":
	case o.route != "" || o.kit != "":
		return &usageError{"--route and --kit are of use only with --record", `minim new --record PREP --route NAME writes a record to fill in`}
	case len(c.files) == 0:
		return &usageError{"minim new needs the name of a folder", "write minim new mybench"}
	}
	return nil
}

// run is minim new.
func (o *newOptions) run(ctx context.Context, c call) error {
	if o.record != "" {
		return o.startRecord(ctx, c)
	}
	return o.startFolder(c)
}

// startFolder writes the demo as a start.
func (o *newOptions) startFolder(c call) error {
	dir, files := c.files[0], []file{demo.Files.Kit, demo.Files.Prep}
	if err := c.mayWrite(dir, o.force, namesOf(files)...); err != nil {
		return err
	}
	if err := writeAll(dir, files, o.force); err != nil {
		return err
	}
	prep := filepath.Join(dir, demo.Files.Prep.Name)
	_, err := fmt.Fprintf(c.out, `wrote %s   the bench: put your own instruments in it
wrote %s     what is to be made, and by which routes
Next: minim compare %s
`, quantity.Printable(filepath.Join(dir, demo.Files.Kit.Name)), quantity.Printable(prep), quotedFile(prep))
	return err
}

// startRecord writes a record to fill in.
func (o *newOptions) startRecord(ctx context.Context, c call) error {
	p, err := bench.LoadPrep(ctx, o.record, o.kit)
	if err != nil {
		return err
	}
	if o.route == "" && len(p.Routes) == 1 {
		o.route = p.Routes[0].Name
	}
	r, err := p.Route(o.route)
	var usage *usageError
	var none *route.UnknownRouteError
	if errors.As(err, &none) && len(none.Names) == 0 {
		return &hinted{fmt.Errorf("%s: the prep has no route that a record could be of", none.File), "minim plan " + quotedFile(none.File) + " --save NEW writes a prep with routes that the kit allows"}
	}
	switch err = withRouteHint(p, err); {
	case o.route == "" && errors.As(err, &usage):
		return &usageError{"--record needs --route: which of the routes was made", usage.hint}
	case err != nil:
		return err
	}
	if reason := hazards.Forbidden(p.Clashes(r)); !reason.None() {
		return withStops(p, &route.CannotError{Name: r.Name, Reason: reason, Forbidden: true})
	}
	if err := p.CheckOrder(r); err != nil {
		var cannot *route.CannotError
		return refusedHint(err, route.Result{Refused: errors.As(err, &cannot)})
	}
	text := []byte(bench.Template(p, r))
	if len(c.files) == 0 {
		_, err := c.out.Write(text)
		return err
	}
	path := c.files[0]
	dir, name := filepath.Split(path)
	if err := c.mayReplace("the record", path, o.force, p.File, p.Kit.File); err != nil {
		return err
	}
	if err := writeAll(dir, []file{{Name: name, Data: text}}, o.force); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.out, "wrote %s   a record to fill in\nNext: minim made %s %s\n", quantity.Printable(path), quotedFile(o.record), quotedFile(path))
	return err
}
