package uncertainty

import (
	"fmt"
	"testing"
)

func TestSharpZ(t *testing.T) {
	for k, d := range []string{"N2a dd*", "Nea Nea *", "T01 s N12 c *", "N1a cz * o", "G1a d * d * d * d *", "Na1 d * d * d *", "R01 d * d * d * d * d * /", "Nzy N1a *", "N0a N0a *", "R01 N0a *", "Rfe s"} {
		m, out, ok := (&script{data: []byte(d)}).model()
		if !ok {
			continue
		}
		mc, err := m.Simulate(t.Context(), out, Settings{Trials: fewestTrials, Seed: 1})
		if err != nil {
			continue
		}
		if st, y := mc.tally.(*sharpTally); y {
			p := mc.ConformanceProbability(Limits{mc.Lower, mc.Upper})
			if p < .9499999 {
				fmt.Printf("%d %q %+v\n w=%v x1=%d %v straight %v\n q=%v\n d=%v\n", k, d, mc, st.weight, st.influence, m.influences, st.straight, st.q, st.curve)
			}
		}
	}
}
