package equipment

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is twice the limit of class A says so, and is: no row of its own was seen. What is
// twice a figure from memory is from memory itself (the rule: GB/T 12809, which adopts ISO
// 384:1978, https://wnwk.com/doc/2699579.html).
func TestDerivedLimits(t *testing.T) {
	derived := 0
	for _, c := range Classes() {
		if !strings.HasPrefix(c.Note, "derived: ") {
			assert.NotEqual(t, "derived", c.Trust, "%v, %v mL", c, c.Capacity)
			continue
		}
		a, err := findClass(Class{Kind: c.Kind, Form: c.Form, Standard: c.Standard, Name: "A", Capacity: c.Capacity, Division: c.Division})
		require.NoError(t, err)
		assert.Equal(t, 2*a.Tolerance, c.Tolerance, "%v, %v mL", c, c.Capacity)
		want := "derived"
		if a.Trust == fromMemory {
			want = fromMemory
		}
		assert.Equal(t, want, c.Trust, "%v, %v mL", c, c.Capacity)
		derived++
	}
	assert.Greater(t, derived, 15)
}

// Figures of a row that were not seen where its limit was have a trust of their own, as
// their note has it.
func TestTrustOfSingleFigures(t *testing.T) {
	for _, c := range Classes() {
		switch c.Kind {
		case "graduated":
			assert.Equal(t, !slices.Contains([]float64{10, 25}, c.Capacity), c.DivisionTrust == fromMemory, "%v, %v mL", c, c.Capacity)
		case "balance":
			assert.NotEmpty(t, c.RandomTrust, c.Form)
			assert.Equal(t, c.Trust == fromMemory || strings.Contains(c.Note, "SD from memory"), c.RandomTrust == fromMemory, c.Form)
		}
	}
}

// No row rests on a page that has nothing to do with the matter, or that offers a priced
// standard for download.
func TestSourcesOfTables(t *testing.T) {
	for _, c := range Classes() {
		for _, page := range []string{"hotel", "awards", "download"} {
			assert.NotContains(t, c.Source, page, "%v, %v mL", c, c.Capacity)
		}
	}
}

// A bore that is taken over from ASTM for want of one of the other standard is said to be
// from memory; so it is.
func TestBoresOfASTMCylinders(t *testing.T) {
	for _, c := range Classes() {
		if c.Kind == "cylinder" && c.Standard == "ASTM" && c.Bore > 0 {
			assert.Equal(t, fromMemory, c.BoreTrust, "%v, %v mL", c, c.Capacity)
		}
	}
}
