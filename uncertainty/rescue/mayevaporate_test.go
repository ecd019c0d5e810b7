package rescue

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/hazards"
	"minim/uncertainty/route"
)

func TestMayEvaporate(t *testing.T) {
	for _, test := range []struct {
		solute, solvent string
		stated          bool
		words           []string
		may             bool
	}{
		{"sodium chloride", "water", false, nil, true},
		{"Sodium chloride", "Distilled water", false, nil, true},
		{"sucrose", "deionised water", false, []string{"none known"}, true},
		{"sodium chloride", "ethanol", false, nil, false},
		{"sodium chloride", "ethanol 96 %", false, nil, false},
		{"sodium chloride", "some liquid", true, []string{"none known"}, false},
		{"exemplate", "water", false, []string{"none known"}, false}, // not known to be a solid
		{"exemplate", "water", true, nil, false},                     // hazards not known
		{"exemplate", "water", true, []string{"none known"}, true},
		{"exemplate", "water", true, []string{"irritant"}, true},
		{"exemplate", "water", true, []string{"oxidiser"}, false},
		{"exemplate", "water", true, []string{"irritant", "Gives off gas"}, false},
		{"exemplate", "water", true, []string{"acid"}, false},
		{"exemplate", "water", true, []string{"alkali"}, false},
		{"exemplate", "water", true, []string{"toxic"}, false},
		{"exemplate", "water", true, []string{"flammable"}, false},
		{"sodium chloride", "water", true, []string{"toxic"}, false},
		{"hydrogen peroxide", "water", true, []string{"none known"}, false},
		{"ammonia", "water", true, []string{"none known"}, false},
		{"citric acid", "water", true, []string{"irritant"}, false},
		{"potassium cyanide", "water", true, []string{"irritant"}, false},
		{"ethanol", "water", true, []string{"none known"}, false},
	} {
		p := &route.Prep{Solute: route.Solute{Name: test.solute, NonVolatile: test.stated, Hazards: test.words}, Solvent: route.Solvent{Name: test.solvent}}
		assert.Equal(t, test.may, MayEvaporate(p), "%+v", test)
		p.Hazards = []hazards.Stated{{Words: []string{"toxic"}}}
		assert.False(t, MayEvaporate(p), "a word stated from a strength on, %+v", test)
	}
}
