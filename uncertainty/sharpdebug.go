package uncertainty

import "fmt"

// Debugged prints what a sharpened run is made of.
func Debugged(mc *MonteCarlo, a Analytic) {
	if t, y := mc.tally.(*sharpTally); y {
		fmt.Printf("  w=%v x1=%d straight %v kernel reach %v own %d; u %v scale %v\n", t.weight, t.influence, t.straight, t.kernel.Reach, t.own(), a.StandardUncertainty, t.linear.scale)
	} else {
		fmt.Println("  plain")
	}
	for i := range a.Budget[:min(5, len(a.Budget))] {
		l := &a.Budget[i]
		fmt.Printf("    %5.3f %v %v %.200v uses %d\n", l.Share, l.Code, l.Set, l.Distribution, l.Uses)
	}
}

var Debugging bool
