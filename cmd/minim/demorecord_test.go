package main

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/cmd/minim/demo"
	"minim/report/answer"
	"minim/uncertainty/bench"
)

// The record of the demo carries the plan of its route as minim new writes it. With -update
// it is written anew; since the demo is part of the program, what rests on it is right only
// after a second run.
func TestDemoRecordCarriesItsPlan(t *testing.T) {
	skipIfSlow(t)
	q, err := answer.Read(demo.Files)
	require.NoError(t, err)
	p := q.Prep
	text := string(demo.Files.Record.Data)
	_, rest, _ := strings.Cut(text, "route = \"")
	name, _, _ := strings.Cut(rest, "\"")
	r, err := p.Route(name)
	require.NoError(t, err)
	const from, to = "# What was planned", "[entries]\n"
	_, plan, ok := strings.Cut(bench.Template(p, r), from)
	require.True(t, ok)
	plan, _, _ = strings.Cut(plan, to)
	before, after, ok := strings.Cut(text, to)
	require.True(t, ok)
	before, _, _ = strings.Cut(before, from)
	want := before + from + plan + to + after
	if *update {
		require.NoError(t, os.WriteFile("demo/"+demo.Files.Record.Name, []byte(want), 0o644))
		return
	}
	assert.Equal(t, want, text)
	loaded := q.Record
	assert.False(t, loaded.PlanMissing || loaded.Undigested)
	assert.Empty(t, loaded.Differences)
}
