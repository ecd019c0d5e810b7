package uncertainty

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ownedBy is a standard normal influence of an owner.
func ownedBy(o Owner, code Code) Influence {
	return Influence{Code: code, Owner: o, Distribution: Normal{Mu: 0, Sigma: 1}}
}

// No draw depends on the name of an owner with a kind, nor on what else an influence is
// shown by, but on all that tells it from others of its model (constructed).
func TestStreamsDoNotKnowNames(t *testing.T) {
	keys := func(flask, pipette, route string) []uint64 {
		m := new(Model)
		m.Number(Instrument, flask)
		for _, in := range []Influence{
			ownedBy(Owner{Kind: Instrument, Name: pipette}, "bias"), ownedBy(Owner{Kind: Instrument, Name: flask}, "bias"),
			ownedBy(Owner{Kind: Instrument, Name: flask, Piece: 2}, "bias"), ownedBy(Owner{Kind: Instrument, Name: flask}, "line"),
			ownedBy(Owner{Kind: Substance, Name: flask}, "bias"),
			ownedBy(Owner{Kind: OneUse, Name: route, Step: 1, With: flask}, "bias"), ownedBy(Owner{Kind: OneUse, Name: route, Step: 2, With: flask}, "bias"),
			ownedBy(Owner{Kind: OneUse, Name: route, Step: 1, With: pipette}, "bias"), ownedBy(Owner{Kind: Tare, Name: route, Step: 1, With: flask}, "bias"),
			{Code: "bias", At: 2, Owner: Owner{Kind: Instrument, Name: flask}, Distribution: Normal{Mu: 0, Sigma: 1}},
		} {
			m.Influence(in)
		}
		return m.keys
	}
	want := keys("flask", "pipette", "one")
	assert.Equal(t, want, keys("step 1 of two", "the day", "flask"))
	seen := make(map[uint64]bool)
	for i, key := range want {
		assert.False(t, seen[key], "%d has the key of another", i)
		seen[key] = true
	}
}

// Numbers that are asked for early do not depend on which influences there are
// (constructed).
func TestNumbersAskedForEarly(t *testing.T) {
	last := func(before ...string) uint64 {
		m := new(Model)
		m.Number(Instrument, "a", "b")
		for _, name := range append(before, "b") {
			m.Influence(ownedBy(Owner{Kind: Instrument, Name: name}, "bias"))
		}
		return m.keys[len(m.keys)-1]
	}
	assert.Equal(t, last(), last("a"))
}

// Two routes have instruments in common by their names, however each numbers them, and
// no use, though both use them in steps of one number. With one bias and two uses of
// standard uncertainty 1 and 3 the second comes closer with the chance (2/π) arctan(1/3),
// as by uses alone where the shared bias is nothing (closed form).
func TestCloserByOwners(t *testing.T) {
	route := func(name string, u float64, instruments ...string) Quantity {
		m := new(Model)
		sum := m.Constant(0)
		for _, instrument := range instruments {
			in := ownedBy(Owner{Kind: Instrument, Name: instrument}, "bias")
			in.Distribution = Normal{Mu: 0, Sigma: 0.5}
			sum = m.Add(sum, m.Influence(in))
		}
		in := ownedBy(Owner{Kind: OneUse, Name: name, Step: 1}, "reading")
		in.Distribution = Normal{Mu: 0, Sigma: u}
		return Quantity{Model: m, Node: m.Add(sum, m.Influence(in))}
	}
	apart := closer(t, 0, route("one", 1), route("other", 3))
	atChance(t, "no bias", 2/math.Pi*math.Atan(1.0/3), apart[1])
	same := closer(t, 0, route("one", 1), route("one", 3))
	assert.Equal(t, apart, same, "routes of one name, numbered alike, are two routes")
	ties := closer(t, 0, route("one", 0, "a", "b"), route("other", 0, "b", "a"))
	assert.Equal(t, []float64{0.5, 0.5}, ties, "the same instruments in another order")
	unlike := closer(t, 0, route("one", 0, "a"), route("other", 0, "c"))
	atChance(t, "other instruments", 0.5, unlike[1])
	counted, err := CloserTo(context.Background(), 0, []Quantity{route("one", 0, "a"), route("other", 0, "c")}, Settings{Trials: 20_000, Plain: true})
	require.NoError(t, err)
	assert.NotEqual(t, 0.5, counted[1], "drawn apart")
}
