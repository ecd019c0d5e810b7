package main

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Whatever is said of a very long argument, it is cut; the rest of the message stays.
func TestLongArgumentsAreCut(t *testing.T) {
	long := strings.Repeat("véry/", 2000)
	for _, args := range [][]string{
		{long}, {"help", long}, {"version", long}, {"compare", long}, {"kit", long}, {"compare", "a", long}, {"--" + long},
		{"plan", "--" + long}, {"plan", "--steps", long}, {"plan", "--steps=" + long}, {"plan", "--work", long}, {"plan", "--prefer", long},
		{"plan", "--format", long}, {"plan", "--without", long}, {"plan", "--left-over", long}, {"plan", "--change", long}, {"plan", "--change", "x: y = " + long},
		{"compare", "--route", long}, {"report", "--out", long}, {"report", "--date", long}, {"new", "--record", long, "--route", "x"},
		{"rescue", "--kit", long, "--has", "5 % w/v, 20 mL", "--volume", "20 mL", "--to", "1 % w/v"}, {"made", long, long},
	} {
		var out, err bytes.Buffer
		assert.NotEqual(t, exitDone, run(context.Background(), args, &out, &err), "%.60q", args)
		assert.Less(t, err.Len(), 1200, "%.60q", args)
		assert.Contains(t, err.String(), "minim: error: ", "%.60q", args)
		assert.Contains(t, err.String(), "…", "%.60q", args)
		assert.Empty(t, out.String())
	}
}

// What is not too long is repeated whole.
func TestShortArgumentsStay(t *testing.T) {
	var out, err bytes.Buffer
	name := strings.Repeat("x", longest)
	run(context.Background(), []string{"compare", name}, &out, &err)
	assert.Contains(t, err.String(), name)
}
