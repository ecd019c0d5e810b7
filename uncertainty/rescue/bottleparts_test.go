package rescue

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A space behind the comma is not needed, and a decimal comma parts nothing.
func TestBottleParts(t *testing.T) {
	for text, want := range map[string][]string{
		"8 % w/v, 20 mL":                     {"8 % w/v", "20 mL"},
		"8%w/v,20ml":                         {"8%w/v", "20ml"},
		"8 g/L , give or take 0.2 g/L,20 mL": {"8 g/L", "give or take 0.2 g/L", "20 mL"},
		"0,03 % w/v, 20 mL":                  {"0,03 % w/v", "20 mL"},
		"8 g/L":                              {"8 g/L"},
		"":                                   {""},
	} {
		assert.Equal(t, want, BottleParts(text), text)
	}
}
