package route

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/uncertainty"
)

var quick = uncertainty.Settings{Trials: 100_000, Seed: 1, Coverage: 0.95}

// thorough is false under the race detector.
var thorough = true

// skipIfSlow leaves out under the race detector what takes long, on one processor or in the
// way of other tests.
func skipIfSlow(t *testing.T) {
	t.Helper()
	if !thorough {
		t.Skip("run without the race detector")
	}
}

func load(t *testing.T, path string) *Prep {
	t.Helper()
	p, err := LoadPrep(path, "")
	require.NoError(t, err)
	return p
}

func parse(t *testing.T, kit, prep string) *Prep {
	t.Helper()
	k, err := ParseKit("bench.toml", []byte(kit))
	require.NoError(t, err)
	p, err := ParsePrep("prep.toml", []byte(prep), k)
	require.NoError(t, err)
	return p
}

func compareAll(t *testing.T, p *Prep) *Comparison {
	t.Helper()
	c, err := Compare(context.Background(), p, "", quick)
	require.NoError(t, err)
	return c
}

// only evaluates a prep with one route that can be done.
func only(t *testing.T, p *Prep) *Result {
	t.Helper()
	c := compareAll(t, p)
	require.Len(t, c.Results, 1)
	require.True(t, c.Results[0].Possible, c.Results[0].Reason)
	return &c.Results[0]
}
