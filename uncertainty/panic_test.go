package uncertainty

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/parallel"
	"minim/uncertainty/random"
)

// spoilt is a distribution that panics when trials are drawn from it.
type spoilt struct{ Normal }

func (spoilt) Fill([]float64, *random.Source) { panic("spoilt") }

// What a worker of a simulation panics with reaches whoever asked for the simulation.
func TestPanicOfASimulation(t *testing.T) {
	m := new(Model)
	node := m.Influence(Influence{Code: "x", Owner: Owner{Name: "test"}, Nominal: 1, Distribution: spoilt{Normal{Mu: 1, Sigma: 0.1}}})
	defer func() {
		p := parallel.Caught(recover())
		assert.Equal(t, "spoilt", p.Error())
		assert.Regexp(t, `^uncertainty/panic_test\.go:\d+$`, p.Place)
	}()
	_, err := m.Simulate(context.Background(), node, Settings{})
	require.NoError(t, err)
	assert.Fail(t, "it must panic")
}
