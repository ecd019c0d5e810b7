package benchfile

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Constructed.
func TestSame(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"1.00 g", "1 g", true}, {"1 g", "1000 mg", true}, {"100 µL", "0.1 mL", true}, {"100 µL", "0.10mL", true}, {"98 %", "98.0 %", true},
		{"0.040 % w/v", "0.04 % w/v", true}, {"8 % of target", "8.0 % of target", true}, {"3 drops", "3 drops", true},
		{"1 g", "1 mL", false}, {"1 g", "1.01 g", false}, {"1 g/L", "1 mg/mL", false}, {"8 % of target", "8 % of reading", false}, {"0.04 % w/v", "0.04 % v/v", false},
		{"1 g", "", false}, {"", "", false}, {"water", "water", false}, {"1 g", "water", false},
	} {
		assert.Equal(t, c.same, sameQuantity(c.a, c.b), "%s, %s", c.a, c.b)
		assert.Equal(t, c.same, sameQuantity(c.b, c.a), "%s, %s", c.b, c.a)
	}
}
