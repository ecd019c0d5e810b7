package main

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/report"
	"minim/report/data"
	"minim/report/figure"
	"minim/uncertainty/bench"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// rescueOptions are the options of minim rescue.
type rescueOptions struct {
	simulation
	destination
	has, to, volume, tolerance, solvent string
}

var rescues = renderer[*rescue.Rescue]{
	name: "rescue", page: alone(report.Rescue), width: screenWidth, data: aloneData(data.Rescue),
	pictures: []picture[*rescue.Rescue]{{"rescue", figure.Ways, false}},
}

func (o *rescueOptions) declare(flags *pflag.FlagSet) {
	flags.StringVar(&o.has, "has", "", "")
	flags.StringVar(&o.to, "to", "", "")
	flags.StringVar(&o.volume, "volume", "", "")
	flags.StringVar(&o.tolerance, "tolerance", "", "")
	flags.StringVar(&o.solvent, "solvent", "water", "")
	o.declareKit(flags)
	o.destination.declare(flags)
	o.simulation.declare(flags)
}

func (o *rescueOptions) check(flags *pflag.FlagSet, files []string) error {
	if !flags.Changed("has") {
		return &usageError{"--has is needed: what there is, and how much of it", `write --has "8 % w/v, 20 mL"; for a batch with a record there is minim made`}
	}
	for _, name := range []string{"to", "volume", "kit"} {
		if len(files) == 0 && !flags.Changed(name) {
			return &usageError{fmt.Sprintf("--%s is needed where there is no prep", name), `as in --to "1.5 % w/v" --volume "60 mL" --kit bench.toml`}
		}
	}
	for _, name := range []string{"tolerance", "solvent"} {
		if len(files) > 0 && flags.Changed(name) {
			return &usageError{fmt.Sprintf("--%s and a prep do not go together: the prep states it", name), ""}
		}
	}
	if err := o.destination.check(flags); err != nil {
		return err
	}
	return o.simulation.check()
}

// run is minim rescue.
func (o *rescueOptions) run(ctx context.Context, files []string, flags *pflag.FlagSet, c console) error {
	if err := rescues.mayKeep(c, &o.destination, files...); err != nil {
		return err
	}
	prep, err := o.prep(ctx, files)
	if err != nil {
		return err
	}
	bottle, err := prep.Bottle(o.has)
	if err != nil {
		return badValue("has", err)
	}
	batch := &route.Route{Name: bottle.Name, Steps: []route.Step{{Verb: route.Start, Stock: bottle}}}
	m := newBusy(c.err, "looking for ways to correct it")
	found, err := rescue.Find(ctx, prep, batch, o.settings())
	m.done()
	var none *rescue.NoWayError
	if errors.As(err, &none) {
		return withStops(prep, &hinted{errors.New(strings.Replace(none.Error(), "the batch", "what is in the bottle", 1)), none.Cure.String()})
	}
	if err != nil {
		return withStops(prep, err)
	}
	return rescues.show(c, &o.destination, next(files, flags), found, nil)
}

// prep says what is wanted: the prep in a file, aimed at what the options say, or one of
// the options alone.
func (o *rescueOptions) prep(ctx context.Context, files []string) (*route.Prep, error) {
	if len(files) == 0 {
		return o.ownPrep(ctx)
	}
	p, err := bench.LoadPrep(ctx, files[0], o.kit)
	if err != nil {
		return nil, err
	}
	if o.to != "" {
		if p, err = p.Aimed(o.to); err != nil {
			return nil, badValue("to", err)
		}
	}
	if o.volume != "" {
		q := *p
		if q.Volume, err = parseVolume(o.volume); err != nil {
			return nil, err
		}
		p = &q
	}
	return p, nil
}

func parseVolume(text string) (float64, error) {
	v, err := quantity.Parse(quantity.Volume, text)
	if err == nil && v <= 0 {
		err = errors.New("must be greater than zero, found " + text)
	}
	if err != nil {
		return 0, badValue("volume", err)
	}
	return v, nil
}

// ownPrep is a prep for what the options say.
func (o *rescueOptions) ownPrep(ctx context.Context) (*route.Prep, error) {
	kit, err := bench.LoadKit(ctx, o.kit)
	if err != nil {
		return nil, err
	}
	volume, err := parseVolume(o.volume)
	if err != nil {
		return nil, err
	}
	to, err := route.ParseStrength(o.to)
	if err != nil {
		return nil, badValue("to", err)
	}
	has, err := route.ParseStrength(route.BottleParts(o.has)[0])
	if err != nil {
		return nil, badValue("has", err)
	}
	if !has.Unit.Comparable(to.Unit) {
		return nil, &usageError{fmt.Sprintf("--has and --to are in %s and %s, which minim cannot convert without a prep", has.Unit.Name, to.Unit.Name), "write both in one unit"}
	}
	p := route.NewPrep(kit)
	p.File, p.Target, p.Volume = "the command line", to, volume
	p.Solute.Name, p.Solvent = "solute", route.NewSolvent(benchfile.Composed(strings.TrimSpace(o.solvent)))
	if _, err := p.ParseStrength(o.to); err != nil {
		return nil, badValue("to", err)
	}
	if err := route.CheckVolume(volume); err != nil {
		return nil, badValue("volume", err)
	}
	if o.tolerance != "" {
		tolerance, err := p.ParseTolerance(o.tolerance)
		if err != nil {
			return nil, badValue("tolerance", err)
		}
		p.Tolerances = []route.Tolerance{tolerance}
	}
	return p, nil
}
