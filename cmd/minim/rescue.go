package main

import (
	"cmp"
	"context"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/report/answer"
	"minim/uncertainty/bench"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
	"minim/uncertainty/tolerances"
)

// rescueOptions are the options of minim rescue.
type rescueOptions struct {
	simulation
	destination
	has, to, volume, tolerance, solvent string
}

func (o *rescueOptions) declare(flags *pflag.FlagSet) {
	flags.StringVar(&o.has, "has", "", "")
	flags.StringVar(&o.to, "to", "", "")
	flags.StringVar(&o.volume, "volume", "", "")
	flags.StringVar(&o.tolerance, "tolerance", "", "")
	flags.StringVar(&o.solvent, "solvent", "water", "")
	o.declareKit(flags)
	o.declareAll(flags)
	o.destination.declare(flags)
	o.simulation.declare(flags)
}

func (o *rescueOptions) check(c call) error {
	if !c.flags.Changed("has") {
		return &usageError{"--has is needed: what there is, and how much of it", `write --has "8 % w/v, 20 mL"; for a batch with a record there is minim made`}
	}
	for _, name := range []string{"to", "volume", "kit"} {
		if len(c.files) == 0 && !c.flags.Changed(name) {
			return &usageError{fmt.Sprintf("--%s is needed where there is no prep", name), `as in --to "1.5 % w/v" --volume "60 mL" --kit bench.toml`}
		}
	}
	for _, name := range []string{"tolerance", "solvent"} {
		if len(c.files) > 0 && c.flags.Changed(name) {
			return &usageError{fmt.Sprintf("--%s and a prep do not go together: the prep states it", name), ""}
		}
	}
	return cmp.Or(o.destination.check(c), o.simulation.check())
}

// run is minim rescue.
func (o *rescueOptions) run(ctx context.Context, c call) error {
	return o.show(ctx, c, "rescue", func() (q answer.Question, err error) {
		q.Settings = o.settings()
		if q.Prep, err = o.prep(ctx, c); err != nil {
			return q, err
		}
		if q.Bottle, err = rescue.Bottle(q.Prep, o.has); err != nil {
			return q, badValue("has", err)
		}
		return q, nil
	})
}

// prep says what is wanted: the prep in a file, aimed at what the options say, or one of
// the options alone.
func (o *rescueOptions) prep(ctx context.Context, c call) (*route.Prep, error) {
	if len(c.files) == 0 {
		return o.ownPrep(ctx)
	}
	p, err := c.prep(ctx, o.kit)
	if err != nil {
		return nil, err
	}
	if o.to != "" {
		if p, err = rescue.Aimed(p, o.to); err != nil {
			return nil, badValue("to", err)
		}
	}
	if o.volume != "" {
		q := *p
		if q.Volume, err = greaterThanZero("volume", o.volume, parseAs(quantity.Volume)); err != nil {
			return nil, err
		}
		p = &q
	}
	return p, nil
}

// ownPrep is a prep for what the options say.
func (o *rescueOptions) ownPrep(ctx context.Context) (*route.Prep, error) {
	kit, err := bench.LoadKit(ctx, o.kit)
	if err != nil {
		return nil, err
	}
	volume, err := greaterThanZero("volume", o.volume, parseAs(quantity.Volume))
	if err != nil {
		return nil, err
	}
	to, err := strengths.Parse(o.to)
	if err != nil {
		return nil, badValue("to", err)
	}
	has, err := strengths.Parse(rescue.BottleParts(o.has)[0])
	if err != nil {
		return nil, badValue("has", err)
	}
	if !has.Unit.Comparable(to.Unit) {
		return nil, &usageError{fmt.Sprintf("--has and --to are in %s and %s, which minim cannot convert without a prep", has.Unit.Name, to.Unit.Name), "write both in one unit"}
	}
	p := route.NewPrep(kit)
	p.File, p.Target, p.Volume = "the command line", to, volume
	p.Solute.Name, p.Solute.Unnamed, p.Solvent = "solute", true, route.NewSolvent(benchfile.Composed(strings.TrimSpace(o.solvent)))
	if _, err := p.ParseStrength(o.to); err != nil {
		return nil, badValue("to", err)
	}
	if err := route.CheckVolume(volume); err != nil {
		return nil, badValue("volume", err)
	}
	if o.tolerance != "" {
		tolerance, err := tolerances.Parse(p, o.tolerance)
		if err != nil {
			return nil, badValue("tolerance", err)
		}
		p.Tolerances = []route.Tolerance{tolerance}
	}
	return p, nil
}
