package equipment

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every table takes a price, which changes nothing else (constructed).
func TestPriceOfEachKind(t *testing.T) {
	jar := "[[jar]]\nname = \"j\"\nline = \"50 mL\"\ntolerance = \"1 mL\"\n"
	for _, text := range []string{oneSyringe, oneDropper, oneBurette, onePiston, oneFlask + "class = \"A\"\n", jar} {
		want, got := one(t, text), one(t, text+"price = \"0 kr\"\n")
		assert.Equal(t, false, want.Price.Stated(), text)
		assert.Equal(t, true, got.Price.Stated(), text)
		want.Price = Price{0, "kr"}
		assert.Equal(t, want, got)
	}
}
