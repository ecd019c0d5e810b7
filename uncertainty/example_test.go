package uncertainty_test

import (
	"context"
	"fmt"
	"math"

	"minim/uncertainty"
	"minim/uncertainty/rounding"
)

// solution is an invented preparation: 1 g in a 25 mL flask.
func solution(m *uncertainty.Model) uncertainty.Node {
	mass := m.Influence(uncertainty.Influence{Code: "mass", Owner: uncertainty.Owner{Name: "balance"}, Unit: "g",
		Distribution: uncertainty.Normal{Mu: 1, Sigma: 0.01}, Nominal: 1})
	volume := m.Influence(uncertainty.Influence{Code: "volume", Owner: uncertainty.Owner{Name: "flask"}, Unit: "mL",
		Distribution: uncertainty.Rectangular{Low: 24.9, High: 25.1}, Nominal: 25})
	return m.Divide(mass, volume)
}

// A budget shows which influence spoils the result most.
func ExampleModel_Propagate() {
	var m uncertainty.Model
	a, err := m.Propagate(solution(&m), 0.95)
	if err != nil {
		fmt.Println(err)
		return
	}
	v, u := rounding.Expanded(a.Value, a.ExpandedUncertainty)
	fmt.Printf("strength %s ± %s g/mL\n", v, u)
	for _, c := range a.Budget {
		fmt.Printf("%-6s %4.1f %%\n", c.Code, 100*c.Share)
	}
	// Output:
	// strength 0.04000 ± 0.00080 g/mL
	// mass   94.9 %
	// volume  5.1 %
}

// A simulation checks the analytic interval.
func ExampleModel_Simulate() {
	var m uncertainty.Model
	strength := solution(&m)
	ctx := context.Background()
	mc, err := m.Simulate(ctx, strength, uncertainty.Settings{Trials: 100_000, Seed: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("95 %%: %.4f to %.4f g/mL\n", mc.Lower, mc.Upper)
	a, err := m.Propagate(strength, 0.95)
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := m.CrossCheck(strength, a, &mc)
	fmt.Println("agrees:", c.Agrees, err)
	// Output:
	// 95 %: 0.0392 to 0.0408 g/mL
	// agrees: true <nil>
}

// The chance that the strength is at least 0.039 g/mL.
func ExampleAnalytic_ConformanceProbability() {
	var m uncertainty.Model
	a, err := m.Propagate(solution(&m), 0.95)
	if err != nil {
		fmt.Println(err)
		return
	}
	p := a.ConformanceProbability(uncertainty.Limits{Lower: 0.039, Upper: math.Inf(1)})
	fmt.Printf("%.3f\n", p)
	// Output:
	// 0.993
}
