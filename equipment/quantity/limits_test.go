package quantity

import (
	"fmt"
	"math"
	"os"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each kind is read up to its limits and not beyond, with either sign; zero is read
// (constructed).
func TestEveryKindHasItsLimits(t *testing.T) {
	require.Len(t, kinds, int(Share)+1)
	for kind := Mass; kind <= Share; kind++ {
		l := kinds[kind].limit
		assert.Equal(t, kind.Phrase(), l.Of)
		scale := 1.0
		if kind == Share {
			scale = 100
		}
		parse := func(x float64) error {
			_, err := Parse(kind, fmt.Sprintf("%.17g %s", scale*x, kind.Unit()))
			return err
		}
		for _, sign := range []float64{1, -1} {
			assert.NoError(t, parse(sign*l.Least*1.001), l.Of)
			assert.NoError(t, parse(sign*l.Most*0.999), l.Of)
			assert.ErrorContains(t, parse(sign*l.Least*0.999), "is too small a number for "+l.Of)
			assert.ErrorContains(t, parse(sign*l.Most*1.001), "is too large a number for "+l.Of)
		}
		assert.NoError(t, parse(0), l.Of)
	}
	_, _, err := ParseShareOf("1e-300 % of target")
	assert.ErrorContains(t, err, "too small a number for a share")
}

// A limit of a key is never wider than that of its kind, so that its own message is seen.
func TestLimitsAreOrdered(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range allLimits() {
		assert.Less(t, l.Least, l.Most, l.Of)
		assert.False(t, math.IsInf(l.Most, 0) || seen[l.Of], l.Of)
		seen[l.Of] = true
		assert.True(t, l.Holds(l.Least) && l.Holds(l.Most) && !l.Holds(math.NaN()) && !l.Holds(math.Nextafter(l.Most, math.Inf(1))), l.Of)
	}
}

// allLimits are those of single numbers.
func allLimits() (list []Limit) {
	for all, i := reflect.ValueOf(Limits), 0; i < all.NumField(); i++ {
		list = append(list, all.Field(i).Interface().(Limit))
	}
	return list
}

// TestLimitsAreDocumented holds the table of FILES.md against the limits of the program.
func TestLimitsAreDocumented(t *testing.T) {
	file, err := os.ReadFile("../../cmd/minim/FILES.md")
	require.NoError(t, err)
	_, text, found := strings.Cut(string(file), "## What is read at all\n")
	require.True(t, found)
	all := allLimits()
	for _, k := range kinds {
		all = append(all, k.limit)
	}
	for _, l := range all {
		assert.Contains(t, text, fmt.Sprintf("| %s | %v | %v | %s |\n", l.Of, l.Least, l.Most, strings.TrimSuffix(l.Unit, "%")))
	}
	assert.Equal(t, len(all), len(regexp.MustCompile(`(?m)^\|( [^|]+ \|){3} [^|]*\|$`).FindAllString(text, -1))-2, "rows below the two headings")
}
