package mixed

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestVolatileSolutes(t *testing.T) {
	for name, want := range map[string]bool{"ammonia": true, "NH3": true, "formalin": true, "propan-2-ol": true, "sodium chloride": false, "hydrogen peroxide": false, "sucrose": false} {
		assert.Equal(t, want, Volatile(name, ""), name)
	}
	assert.True(t, Volatile("chlorine", ""))
	assert.True(t, Volatile("whatever", "gas"))
	assert.False(t, Volatile("chlorine", "solid"), "tablets that give it off")
}
