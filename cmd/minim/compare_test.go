package main

import (
	"bytes"
	"context"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/cmd/minim/demo"
)

func output(t testing.TB, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	require.Equal(t, exitDone, run(context.Background(), args, &out, &errs), errs.String())
	return out.String()
}

// One seed gives one JSON, byte for byte, on one processor and on two.
func TestSameBytesOnOneProcessorAndTwo(t *testing.T) {
	args := []string{"compare", "--format", "json", "--trials", "200000"}
	before := runtime.GOMAXPROCS(1)
	one := output(t, args...)
	runtime.GOMAXPROCS(2)
	two := output(t, args...)
	runtime.GOMAXPROCS(before)
	assert.True(t, one == two, "the JSON differs")
	assert.NotEqual(t, one, output(t, append(args, "--seed", "2")...), "another seed gives other figures")
}

// The demo is said to be invented, on the screen and in its files.
func TestDemoIsSaidToBeInvented(t *testing.T) {
	skipIfSlow(t)
	assert.Contains(t, output(t, "compare", "--trials", "10000", "--all"), "invented")
	assert.Contains(t, output(t, "compare", "--trials", "10000"), "INVENTED EXAMPLE")
	assert.Contains(t, string(demo.Files.Kit.Data), "invented")
	assert.Contains(t, string(demo.Files.Prep.Data), "invented")
}

// Compare as a whole: reading, propagating, simulating, drawing. The two sizes
// in one run show what the trials cost.
func BenchmarkCompare(b *testing.B) {
	for _, trials := range []string{"10000", "1000000"} {
		b.Run(trials+"trials", func(b *testing.B) {
			for b.Loop() {
				output(b, "compare", "--trials", trials)
			}
		})
	}
}
