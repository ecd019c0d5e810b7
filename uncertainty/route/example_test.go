package route_test

import (
	"context"
	"fmt"

	"minim/equipment"
	"minim/uncertainty"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
	"minim/uncertainty/tolerances"
)

// A prep is made of values as a file would state it: 25 mL of 2 % w/v of an invented dye,
// weighed and made up to the mark, within 10 % of the target.
func Example() {
	scale := &equipment.Balance{Name: "scale", Capacity: 200, Readability: 0.01, Count: 1}
	flask := equipment.NewMeasure("25 mL flask", "flask")
	flask.Capacity = 25
	if err := flask.Complete("A", "ISO", ""); err != nil {
		fmt.Println(err)
	}
	kit := new(equipment.Kit)
	kit.Balances, kit.Measures = []*equipment.Balance{scale}, []*equipment.Measure{flask}

	p := route.NewPrep(kit)
	p.Target, _ = strengths.Parse("2 % w/v")
	p.Volume = 25
	p.Solute.Name, p.Solvent = "an invented dye", route.NewSolvent("water")
	tolerance, err := tolerances.Parse(p, "10 % of target")
	if err != nil {
		fmt.Println(err)
	}
	p.Tolerances = []route.Tolerance{tolerance}
	direct := &route.Route{Name: "direct", Steps: []route.Step{
		{Verb: route.Weigh, Amount: 0.5, Balance: scale},
		{Verb: route.MakeUpTo, Amount: 25, Measure: flask},
	}}
	if wrong := direct.Misplaced(); wrong != nil {
		fmt.Println(wrong)
	}
	c, err := route.Evaluate(context.Background(), p, []*route.Route{direct}, uncertainty.Settings{Trials: 10_000, Seed: 1})
	if err != nil {
		fmt.Println(err)
	}
	a := &c.Results[0].Analytic
	fmt.Printf("%.3f %s, U = %.3f\n", a.Value, p.Target.Unit.Name, a.ExpandedUncertainty)
	fmt.Println("within the tolerance as asked for:", c.Verdict.Meets)

	late := &route.Route{Name: "late", Steps: []route.Step{{Verb: route.MakeUpTo, Amount: 25, Measure: flask}}}
	if wrong := late.Misplaced(); wrong != nil {
		fmt.Printf("step %d: %s: %s; %s\n", wrong.Step+1, wrong.Key, wrong.Message, wrong.Hint)
	}
	// Output:
	// 2.000 % w/v, U = 0.121
	// within the tolerance as asked for: true
	// step 1: make-up-to: cannot come here, where there is nothing yet; it can follow measured solute or an aliquot
}
