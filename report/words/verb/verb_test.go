package verb

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/uncertainty/route"
)

// step is one of a verb, on a scale or with a pipette, whose names hold what could pass for
// words to be replaced.
func step(v route.Verb) *route.Step {
	s := &route.Step{Verb: v, Amount: 2, Stock: &route.Stock{Name: "jug of solvent"}, Packet: &route.Packet{Name: "{stock} of solute"}}
	if needsBalance(v) {
		s.Balance = &equipment.Balance{Name: "{amount} of solute scale", Readability: 0.01}
	} else {
		s.Measure = &equipment.Measure{Name: "jug of solvent {solute}", Kind: "cylinder"}
	}
	return s
}

// Every verb has a row that says all, with every word in braces filled in.
func TestEveryVerbHasItsWords(t *testing.T) {
	besides := map[string]string{}
	for _, key := range []string{"before", "after", "tare", "back", "into", "portions", "added", "mix", "mix last", "empty", "ahead"} {
		besides[key] = ""
	}
	for _, v := range route.Verbs() {
		s := step(v)
		s.Stock.Name, s.Packet.Name = "acid", "sachet"
		if s.Balance != nil {
			s.Balance.Name = "scale"
		} else {
			s.Measure.Name = "cylinder"
		}
		for _, said := range []string{Do(s, besides, false), Do(s, besides, true), Short(s), Doing(s, "dye", "water"), Name([]route.Step{*s}), Done(s)} {
			assert.NotEmpty(t, said, v)
			assert.NotContains(t, said, "{", v)
		}
		assert.Regexp(t, `^[a-z]+ing `, Doing(s, "dye", "water"), v)
		if word, _, _ := strings.Cut(Done(s), " 2"); s.Verb.Traits().MeasuresOut && s.Verb != route.UsePacket {
			keys, all := Past(word)
			assert.Contains(t, keys, string(v))
			assert.Contains(t, all, word)
		}
	}
	assert.Len(t, rows, len(route.Verbs()))
}

// A name is never taken for a word to be replaced.
func TestNamesStayAsTheyAre(t *testing.T) {
	assert.Equal(t, "adding 2 mL of water with the jug of solvent {solute}", Doing(step(route.Add), "dye", "water"))
	assert.Equal(t, "weighing 2.00 g of dye on the {amount} of solute scale", Doing(step(route.Weigh), "dye", "water"))
	assert.Equal(t, "using the whole of the {stock} of solute", Doing(step(route.UsePacket), "dye", "water"))
}

// A way to correct a batch says its volumes one by one.
func TestName(t *testing.T) {
	all, strengthen, add := step(route.TakeAll), step(route.Strengthen), step(route.Add)
	assert.Equal(t, "all + 2 mL, then + 2 mL", Name([]route.Step{*all, *strengthen, *add}))
	assert.Equal(t, "2 in 2 mL", Name([]route.Step{*step(route.Take), *step(route.MakeUpTo)}))
	assert.Equal(t, "2.00 g, 2.00 g up to 2.00 g", Name([]route.Step{*step(route.Weigh), *step(route.WeighAliquot), *step(route.WeighUpTo)}))
}

// A reading that takes the place of another is said where the reading stands, whatever the
// names hold.
func TestShortInstead(t *testing.T) {
	planned := step(route.Take)
	assert.Equal(t, "take 2 mL of jug of solvent with the jug of solvent {solute}", Short(planned), "of a stock that it names")
	planned.Stock = nil
	amended := *planned
	amended.Amount = 3
	amended.Measure.Name = "3 mL pipette"
	assert.Equal(t, "take 3 mL instead of 2 mL with the 3 mL pipette", Short(&amended, planned))
}

func needsBalance(v route.Verb) bool {
	return v.Traits().WeighsSolute || v == route.WeighAliquot || v == route.WeighUpTo
}
