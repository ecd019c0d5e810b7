package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/route"
)

// Two that may not meet, and one of which the name alone holds both (constructed).
func TestStops(t *testing.T) {
	p := &route.Prep{Solute: route.Solute{Name: "a solute", Hazards: []string{"oxidiser"}}, Solvent: route.Solvent{Name: "a liquid", Hazards: []string{"flammable"}}}
	assert.Equal(t, []string{`STOP: these two may not meet: a solute (the solute; recognised by the hazard word "oxidiser") and a liquid (the solvent; recognised by the hazard word "flammable"): fire or explosion. Keep them apart, what is left over of them as well; no route that brings them together is proposed. The list of such pairs is short: the safety data sheets decide.`}, Stops(p))
	p = &route.Prep{Solute: route.Solute{Name: "salt"}, Solvent: route.Solvent{Name: "water"}, Stocks: []*route.Stock{{Name: "bleach and vinegar"}}}
	list := Stops(p)
	assert.NotEmpty(t, list)
	assert.Contains(t, list[0], `what is in bleach and vinegar (a stock; recognised by its name, "bleach", and by its name, "vinegar"): `)
	assert.Empty(t, Stops(&route.Prep{Solute: route.Solute{Name: "salt"}, Solvent: route.Solvent{Name: "water"}}))
}
