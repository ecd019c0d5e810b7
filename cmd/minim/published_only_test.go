package main

import (
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestPublishedOnlyIsUnused holds what the engine's package comment says that no command asks
// for: nothing outside the engine names it.
func TestPublishedOnlyIsUnused(t *testing.T) {
	names := regexp.MustCompile(`\.(Correlate|PropagateJointly|Sine|Cosine|GlobalRisks|Given|Guarded|MeasurementCapability)\(|` +
		`uncertainty\.(Joint|Arcsine|InexactRectangular|Trapezoidal|Triangular|Inspection|RoundTo)\b`)
	codeFiles(t, func(dir, path string) {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		if dir != "uncertainty" {
			assert.Empty(t, names.FindAllString(string(text), -1), path)
		}
	})
}
