package uncertainty

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestStreamKey(t *testing.T) {
	m, seen := new(Model), map[uint64]Influence{}
	for _, in := range []Influence{
		{Code: "bias"}, {Owner: Owner{Name: "bias"}}, {Owner: Owner{Name: "a"}, Code: "bc"}, {Owner: Owner{Name: "ab"}, Code: "c"},
		{Owner: Owner{Name: "pipette 1"}, Code: "bias"}, {Owner: Owner{Name: "pipette 2"}, Code: "bias"}, {Owner: Owner{Name: "pipette 1"}, Code: "reading"},
	} {
		key := m.streamKey(&in)
		_, taken := seen[key]
		assert.Equal(t, false, taken, "%v has the key of %v", in, seen[key])
		seen[key] = in
	}
	a, b := Influence{Owner: Owner{Name: "o"}, Code: "n", Unit: "g"}, Influence{Owner: Owner{Name: "o"}, Code: "n", Nominal: 1}
	assert.Equal(t, m.streamKey(&a), m.streamKey(&b), "owner and code alone make the key")
}
