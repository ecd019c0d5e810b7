package uncertainty

import (
	"math"
	"strings"
	"testing"
)

// nistExamples are univariate sets of the NIST Statistical Reference Datasets with
// their certified values. Doubles do not hold the data of the last two NumAcc sets
// exactly: the recomputed values are those of the doubles, in exact arithmetic.
var nistExamples = map[string]example{
	"NumAcc1":  certified(func(testing.TB) []float64 { return []float64{10000001, 10000003, 10000002} }),
	"NumAcc2":  certified(alternating(1)),
	"NumAcc3":  certified(alternating(1_000_000)),
	"NumAcc4":  certified(alternating(10_000_000)),
	"Michelso": certified(dataset("Michelso")),
	"Mavro":    certified(dataset("Mavro")),
	"Lottery":  certified(dataset("Lottery")),
}

func certified(values func(t testing.TB) []float64) example {
	return func(t testing.TB) quantities {
		readings := values(t)
		mean, s, nu := Readings(readings)
		return exactly(map[string]float64{"mean": mean, "s": s, "ν": nu, "s of the mean": s / math.Sqrt(float64(len(readings)))})
	}
}

// alternating is base + 0.2, then 500 times base + 0.1 and base + 0.3.
func alternating(base float64) func(testing.TB) []float64 {
	return func(testing.TB) []float64 {
		values := []float64{base + 0.2}
		for range 500 {
			values = append(values, base+0.1, base+0.3)
		}
		return values
	}
}

// dataset reads the values of a set.
func dataset(name string) func(testing.TB) []float64 {
	return func(t testing.TB) []float64 {
		var values []float64
		for _, set := range readTable(t, "nist-data.csv", "set,values") {
			if set[0] != name {
				continue
			}
			for _, value := range strings.Fields(set[1]) {
				values = append(values, readNumber(t, value))
			}
		}
		return values
	}
}
