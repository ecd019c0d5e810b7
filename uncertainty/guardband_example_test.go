package uncertainty

import (
	"fmt"
	"math"
)

// A dye solution may hold 0.0368 to 0.0432 g in 100 mL. Its strength was measured
// as 0.0415, with a standard uncertainty of 0.0008. Does it conform?
func ExampleLimits_AcceptanceLimits() {
	tolerance := Limits{Lower: 0.0368, Upper: 0.0432}
	measured := Normal{Mu: 0.0415, Sigma: 0.0008}
	fmt.Printf("conforms with a probability of %.3f\n", chanceOf(measured, tolerance))

	// Accept what conforms with a probability of 95 % at least.
	acceptance, err := tolerance.AcceptanceLimits(0.95, measured.Sigma, math.Inf(1))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("accept from %.4f to %.4f: %t\n", acceptance.Lower, acceptance.Upper, acceptance.Permits(measured.Mu))

	// With a poorer measurement no value will do.
	_, err = tolerance.AcceptanceLimits(0.95, 0.0020, math.Inf(1))
	fmt.Println(err)
	// Output:
	// conforms with a probability of 0.983
	// accept from 0.0381 to 0.0419: true
	// no measured value can be accepted: the uncertainty is too large for the tolerance
}

// Guarded acceptance with the expanded uncertainty U = 2 u as the guard band.
func ExampleLimits_guarded() {
	tolerance := Limits{Lower: math.Inf(-1), Upper: 10}
	acceptance, err := tolerance.guarded(2 * 0.3)
	if err != nil {
		fmt.Println(err)
		return
	}
	atTheLimit := Normal{Mu: acceptance.Upper, Sigma: 0.3}
	fmt.Printf("accept up to %.1f, with a risk of %.1f %% at most\n",
		acceptance.Upper, 100*(1-chanceOf(atTheLimit, tolerance)))
	// Output:
	// accept up to 9.4, with a risk of 2.3 % at most
}

// A bench fills bottles with 10.0 mL, give or take a standard deviation of 0.2 mL;
// 9.6 to 10.4 mL will do. Each bottle is checked with u = 0.1 mL. Whom does a
// guard band of 0.1 mL protect, and who pays for it?
func ExampleInspection_GlobalRisks() {
	inspection := Inspection{
		Prior:               Normal{Mu: 10, Sigma: 0.2},
		StandardUncertainty: 0.1,
		Tolerance:           Limits{Lower: 9.6, Upper: 10.4},
	}
	for _, w := range []float64{0, 0.1} {
		var err error
		if inspection.Acceptance, err = inspection.Tolerance.guarded(w); err != nil {
			fmt.Println(err)
			return
		}
		consumer, producer := inspection.GlobalRisks()
		fmt.Printf("w = %.1f mL: %4.1f %% bad and accepted, %4.1f %% good and rejected\n", w, 100*consumer, 100*producer)
	}
	// Output:
	// w = 0.0 mL:  1.2 % bad and accepted,  4.1 % good and rejected
	// w = 0.1 mL:  0.3 % bad and accepted, 13.7 % good and rejected
}
