package uncertainty

import (
	"fmt"
	"testing"
)

func TestSharpY(t *testing.T) {
	m, y := sumOf(Normal{3, 2})
	for seed := range uint64(12) {
		mc := simulate(t, m, y, Settings{Trials: 10000, Seed: seed})
		st := mc.tally.(*sharpTally)
		fmt.Println((mc.Lower-(3-2*1.9599639845400545))/2, (mc.Upper-(3+2*1.9599639845400545))/2, st.weight, st.curve, st.quantile(.975)-mc.Upper, st.linearBelow(mc.Upper)-.975)
	}
}
