package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/spf13/pflag"

	"minim/cmd/minim/demo"
	"minim/report"
	"minim/report/figure"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// compareOptions are the options of minim compare.
type compareOptions struct {
	kit, route, format, out string
	trials                  int
	seed                    uint64
	coverage                float64
	force                   bool
}

func (o *compareOptions) declare(flags *pflag.FlagSet) {
	flags.StringVar(&o.kit, "kit", "", "use the kit in `FILE` instead of the one that the prep names")
	flags.StringVar(&o.route, "route", "", "evaluate only the route called `NAME`")
	flags.StringVar(&o.format, "format", "text", "print `text` or json")
	flags.StringVar(&o.out, "out", "", "write text, JSON and figures into the folder `DIR` as well")
	flags.IntVar(&o.trials, "trials", uncertainty.DefaultTrials, "simulate `N` batches of each route")
	flags.Uint64Var(&o.seed, "seed", 1, "seed `N` of the simulation")
	flags.Float64Var(&o.coverage, "coverage", 0.95, "coverage probability `P` of what is given or taken")
	flags.BoolVar(&o.force, "force", false, "replace files that exist in the folder of --out")
}

func (o *compareOptions) check() error {
	if o.format != "text" && o.format != "json" {
		return &usageError{fmt.Sprintf("--format %s is not known", o.format), "write --format text or --format json"}
	}
	if math.IsNaN(o.coverage) || o.coverage < 0.5 || o.coverage > 0.9999 {
		return &usageError{fmt.Sprintf("--coverage must lie between 0.5 and 0.9999, found %v", o.coverage), "write --coverage 0.95 for 95 %"}
	}
	if err := o.settings().Check(); err != nil {
		return &usageError{"--trials: " + err.Error(), ""}
	}
	if o.force && o.out == "" {
		return &usageError{"--force is of use only with --out", ""}
	}
	return nil
}

func (o *compareOptions) settings() uncertainty.Settings {
	return uncertainty.Settings{Trials: o.trials, Seed: o.seed, Coverage: o.coverage}
}

// compare is minim compare.
func compare(ctx context.Context, args []string, c console) error {
	var o compareOptions
	flags := newFlags("compare")
	o.declare(flags)
	files, err := parse(flags, args, 0, 1, c)
	if err != nil {
		return unlessHelp(err)
	}
	if err := o.check(); err != nil {
		return err
	}
	prep, err := loadPrep(files, o.kit)
	if err != nil {
		return err
	}
	comparison, err := route.Compare(ctx, prep, o.route, o.settings())
	if err != nil {
		return withRouteHint(err)
	}
	if comparison.Verdict.Use < 0 {
		return noneLeft(comparison)
	}
	text := report.Text(comparison)
	data, err := report.JSON(comparison)
	if err != nil {
		return err
	}
	if o.out != "" {
		if err := keep(o, comparison, text, data); err != nil {
			return err
		}
		fmt.Fprintf(c.err, "minim: wrote compare.txt, compare.json, spread.svg and spread.png into %s\n", o.out)
	}
	if o.format == "json" {
		_, err = c.out.Write(data)
	} else {
		_, err = io.WriteString(c.out, text+next(files, o))
	}
	return err
}

// keep draws the figure and writes all outputs into the folder of --out.
func keep(o compareOptions, c *route.Comparison, text string, data []byte) error {
	spread, err := figure.Spread(c)
	if err != nil {
		return err
	}
	svg, err := spread.SVG()
	if err != nil {
		return err
	}
	png, err := spread.PNG()
	if err != nil {
		return err
	}
	return writeAll(o.out, []file{
		{"compare.txt", []byte(text)}, {"compare.json", data}, {"spread.svg", svg}, {"spread.png", png},
	}, o.force)
}

func loadPrep(files []string, kit string) (*route.Prep, error) {
	if len(files) > 0 {
		return route.LoadPrep(files[0], kit)
	}
	if kit != "" {
		return nil, &usageError{"--kit needs a prep as well", "the demo has a kit of its own; minim new DIR starts a prep to change"}
	}
	return demo.Load()
}

func withRouteHint(err error) error {
	var unknown *route.UnknownRouteError
	if errors.As(err, &unknown) {
		return &hinted{err, "its routes are " + strings.Join(unknown.Names, "; ")}
	}
	return err
}

// noneLeft is the error when the bench can do no route at all.
func noneLeft(c *route.Comparison) error {
	reasons := make([]string, len(c.Results))
	for i := range c.Results {
		reasons[i] = fmt.Sprintf("\n  %s: %s", c.Results[i].Route.Name, c.Results[i].Reason)
	}
	return &hinted{
		fmt.Errorf("this bench can do none of the routes%s", strings.Join(reasons, "")),
		"weigh more and dilute in steps, or add an instrument to " + c.Prep.Kit.File,
	}
}

// next says what to type next.
func next(files []string, o compareOptions) string {
	var lines []string
	if len(files) == 0 {
		lines = append(lines, "minim new mybench            start a kit and a prep of your own")
	}
	if o.out == "" {
		again := "minim compare"
		if len(files) > 0 {
			again += " " + files[0]
		}
		lines = append(lines, again+" --out results   keep this, with a picture of the spread")
	}
	if len(lines) == 0 {
		return ""
	}
	return "\nNext:        " + strings.Join(lines, "\n             ") + "\n"
}
