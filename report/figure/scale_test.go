package figure

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/plot/vg"

	"minim/uncertainty/near"
)

func TestLogarithmicTicks(t *testing.T) {
	for _, test := range []struct {
		low, high float64
		room      vg.Length
		want      string
	}{
		{0.15, 3, 20, "0.1 0.2 0.5 1 2 5"},
		{0.00012, 0.09, 60, "0.0001 0.001 0.01 0.1"},
		{3, 3, 20, "2 5"},
		{1e-6, 1e6, 20, "0.000001 0.00001 0.0001 0.001 0.01 0.1 1 10 100 1000 10 000 100 000 1 000 000"},
		{1e-6, 1e6, 60, "0.000001 0.0001 0.01 1 100 10 000 1 000 000"},
	} {
		s := logarithmic(0, 400, test.low, test.high)
		var labels []string
		for _, tick := range onlyLabelled(s.ticks(func(string) vg.Length { return test.room })) {
			labels = append(labels, tick.label)
			assert.True(t, s.at(tick.value) >= -1e-9 && s.at(tick.value) <= 400+1e-9)
		}
		assert.Equal(t, test.want, strings.Join(labels, " "))
		assert.True(t, s.low < test.low && s.high > test.high)
	}
}

func TestPlaceOfZero(t *testing.T) {
	s := logarithmic(100, 400, 1, 1000)
	near.Absolute(t, "start", 100, float64(s.start()), 0)
	s.zero = true
	near.Absolute(t, "start with a place of 0", 100-float64(zeroWide), float64(s.start()), 0)
	assert.True(t, s.at(0) > s.start() && s.at(0) < s.from)
}
