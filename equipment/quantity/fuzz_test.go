package quantity

import (
	"errors"
	"math"
	"strconv"
	"testing"
)

// FuzzParse checks that any text gives a finite value or an *Error with a
// message, and that the value written out again reads as the same value.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{"0.01 g", "100 µL", "2.1e-4 /°C", "98 %", "0,5 g", "1e400 g", "-0 g", "8 % of target", "1e-320 kg", "5\u202fmL"} {
		for kind := Mass; kind <= Share; kind++ {
			f.Add(int(kind), seed)
		}
	}
	f.Fuzz(func(t *testing.T, number int, text string) {
		kind := Kind(uint(number) % uint(len(kinds)))
		value, err := Parse(kind, text)
		if err != nil {
			var fault *Error
			if !errors.As(err, &fault) || fault.Message == "" || value != 0 {
				t.Fatalf("%q: %v with %v", text, err, value)
			}
			return
		}
		if math.IsNaN(value) || math.IsInf(value, 0) || value == 0 && math.Signbit(value) {
			t.Fatalf("%q gives %v", text, value)
		}
		if kind == Share {
			return // its base unit, the plain fraction, is never written
		}
		again, err := Parse(kind, strconv.FormatFloat(value, 'g', -1, 64)+" "+kind.Unit())
		if err != nil || again != value {
			t.Fatalf("%q gives %v, then %v, %v", text, value, again, err)
		}
	})
}
