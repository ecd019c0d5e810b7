//go:build race

package bench_test

func init() { fewTimes = 10 }
