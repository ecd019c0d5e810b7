package words

import (
	read "minim/uncertainty/bench"

	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/route"
)

const demoPrep = "../../cmd/minim/demo/dye.toml"

func compared(t *testing.T, path string) *route.Comparison {
	t.Helper()
	p, err := read.LoadPrep(context.Background(), path, "")
	require.NoError(t, err)
	c, err := route.Compare(context.Background(), p, "", uncertainty.Settings{Trials: 20_000, Seed: 7, Coverage: 0.95})
	require.NoError(t, err)
	return c
}
