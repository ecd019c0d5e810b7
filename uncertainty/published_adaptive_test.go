package uncertainty

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/near"
)

// adaptiveModels are those whose trials are counted. Two digits are asked for, and
// five times as strictly in 9.2 where a result is to be validated.
var adaptiveModels = map[string]struct {
	model      func() (*Model, Node)
	validating bool
}{
	"9.2.2": {sumOfFour(Normal{Mu: 0, Sigma: 1}, Normal{Mu: 0, Sigma: 1}), true},
	"9.2.3": {sumOfFour(PlusMinus(math.Sqrt(3)), PlusMinus(math.Sqrt(3))), true},
	"9.2.4": {sumOfFour(PlusMinus(math.Sqrt(3)), PlusMinus(10*math.Sqrt(3))), true},
	"9.3": {func() (*Model, Node) {
		m := new(Model)
		return m, weightOf(m).approximate(m)
	}, false},
}

func sumOfFour(x, fourth Distribution) func() (*Model, Node) {
	return func() (*Model, Node) { return sumOf(x, x, x, fourth) }
}

// TestAdaptiveTrials: over 40 seeds the trials of the adaptive procedure have the
// median and the 5 and 95 % points of another implementation, within five standard
// errors of the difference, and the printed numbers lie between those points, as
// far as 40 seeds tell (within three standard errors). The standard error is that
// of a normal sample: √(p (1-p)/n)/φ(z), in standard deviations.
func TestAdaptiveTrials(t *testing.T) {
	if raceDetector {
		t.Skip("40 million trials")
	}
	const seeds = 40
	atMedian, atEnds := 1.2533/math.Sqrt(seeds), 2.1132/math.Sqrt(seeds)
	rows := readTable(t, "adaptive.csv", "example,least,median,greatest,published,source")
	assert.Equal(t, len(adaptiveModels), len(rows))
	for _, c := range rows {
		counts := countTrials(t, c[0], seeds)
		_, s, _ := Readings(counts)
		slices.Sort(counts)
		least, median, greatest := counts[seeds/20-1], (counts[seeds/2-1]+counts[seeds/2])/2, counts[seeds-seeds/20]
		near.Absolute(t, c[0]+": 5 %", readNumber(t, c[1]), least, 5*math.Sqrt2*s*atEnds)
		near.Absolute(t, c[0]+": median", readNumber(t, c[2]), median, 5*math.Sqrt2*s*atMedian)
		near.Absolute(t, c[0]+": 95 %", readNumber(t, c[3]), greatest, 5*math.Sqrt2*s*atEnds)
		for _, printed := range strings.Fields(c[4]) {
			count := readNumber(t, printed)
			inside := least-3*s*atEnds <= count && count <= greatest+3*s*atEnds
			assert.Equal(t, true, inside, "%s: the printed %s is within %v to %v ± %.3f", c[0], printed, least, greatest, 3*s*atEnds)
		}
	}
}

// countTrials returns the trials of so many seeds, in millions.
func countTrials(t *testing.T, example string, seeds int) []float64 {
	m, y := adaptiveModels[example].model()
	counts := make([]float64, seeds)
	for seed := range counts {
		mc := simulate(t, m, y, Settings{Digits: 2, Validating: adaptiveModels[example].validating, Seed: uint64(seed), Plain: true})
		assert.Equal(t, false, mc.AtCeiling)
		counts[seed] = float64(mc.Trials) / 1e6
	}
	return counts
}
