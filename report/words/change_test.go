package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestGain(t *testing.T) {
	for x, want := range map[float64]string{0: "0.0", 0.0004: "0.0", -0.0004: "0.0", 0.166: "+16.6", -0.001: "-0.1", 1: "+100.0"} {
		assert.Equal(t, want, gain(x))
	}
}
