package figure

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestTicks(t *testing.T) {
	for _, test := range []struct {
		low, high float64
		most      int
		want      string
	}{
		{99.95, 100.05, 5, "99.96 99.98 100.00 100.02 100.04"},
		{99.95, 100.05, 4, "99.950 99.975 100.000 100.025 100.050"},
		{0, 10, 5, "0 2 4 6 8 10"},
		{0, 10, 4, "0.0 2.5 5.0 7.5 10.0"},
		{-20, 20, 4, "−20 −10 0 10 20"},
		{-0.25, 0.25, 2, "−0.25 0.00 0.25"},
		{0.0304, 0.0496, 8, "0.0325 0.0350 0.0375 0.0400 0.0425 0.0450 0.0475"},
		{-3, 300, 3, "0 200"},
		{-3, 297, 3, "0 100 200"},
		{1e12, 1.5e12, 5, "1 000 000 000 000 1 100 000 000 000 1 200 000 000 000 1 300 000 000 000 1 400 000 000 000 1 500 000 000 000"},
		{2e-7, 4e-7, 2, "0.0000002 0.0000003 0.0000004"},
	} {
		var labels []string
		for _, tick := range (ticker{test.most}).ticks(test.low, test.high) {
			labels = append(labels, tick.label)
			assert.True(t, tick.value >= test.low-1e-9*(test.high-test.low) && tick.value <= test.high+1e-9*(test.high-test.low))
		}
		assert.Equal(t, test.want, strings.Join(labels, " "))
	}
}

func TestTicksNeverRepeat(t *testing.T) {
	for _, at := range []float64{0, 1e-6, 0.04, 1, 99.95, 1e5, -7} {
		for _, wide := range []float64{1e-9, 1e-4, 0.3, 1, 77, 1e8} {
			seen := map[string]bool{}
			ticks := (ticker{7}).ticks(at, at+wide)
			for _, tick := range ticks {
				assert.True(t, !seen[tick.label], "%v + %v: %s twice", at, wide, tick.label)
				seen[tick.label] = true
			}
			assert.True(t, len(ticks) >= 2 && len(ticks) <= 8, "%v + %v: %d ticks", at, wide, len(ticks))
		}
	}
}

func TestTicksRefuseNoRange(t *testing.T) {
	for _, high := range []float64{1, 0, math.NaN(), math.Inf(1)} {
		assert.Panics(t, func() { ticker{5}.ticks(1, high) })
	}
}

func TestScaleOf(t *testing.T) {
	for _, test := range []struct {
		size, power float64
		prefix      string
	}{
		{1, 1, ""}, {1e-3, 1, ""}, {99999, 1, ""}, {1e5, 1e3, "10³ "}, {9.99e-4, 1e-6, "10⁻⁶ "}, {1e-6, 1e-6, "10⁻⁶ "}, {4e-10, 1e-12, "10⁻¹² "}, {3e7, 1e6, "10⁶ "},
	} {
		power, prefix := scaleOf(test.size)
		assert.Equal(t, test.power, power)
		assert.Equal(t, test.prefix, prefix)
	}
}

func TestClean(t *testing.T) {
	for _, test := range []struct{ words, want string }{
		{"plain, 0.1 g", "plain, 0.1 g"},
		{" two\nlines\t\r here ", "two lines here"},
		{"\u202eturned\u202c \u200fround\u200b\u00ad", "turned round"},
		{"µL⁻¹, μg, 20 ℃", "µL⁻¹, µg, 20 °C"},
		{"☃ 雪", "☃ 雪"},
		{"not above 6.7e-07 mol/L, 1e+12 U/mL, 2e5", "not above 6.7 × 10⁻⁷ mol/L, 1 × 10¹² U/mL, 2e5"},
		{"bad \xff byte\x00\x1b", "bad ? byte"},
		{"<&\"'>", "<&\"'>"},
		{"", ""},
	} {
		got := clean(test.words)
		assert.Equal(t, test.want, got)
		assert.Equal(t, got, clean(got))
	}
}

func TestWrap(t *testing.T) {
	width := nameText.Width("twenty-three letters")
	for _, test := range []struct {
		words string
		most  int
		want  []string
	}{
		{"short", 2, []string{"short"}},
		{"", 2, []string{""}},
		{"one two three four five six", 2, []string{"one two three four", "five six"}},
		{"one two three four five six seven eight", 1, []string{"one two three…"}},
		{strings.Repeat("m", 60), 2, []string{strings.Repeat("m", 10), strings.Repeat("m", 9) + "…"}},
	} {
		got := hand{}.wrap(nameText, width, test.most, test.words)
		assert.Equal(t, test.want, got)
		for _, line := range got {
			assert.True(t, nameText.Width(line) <= width, line)
		}
	}
}
