package route

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/uncertainty/hazards"
)

// clashing are names for the two sides of each row of the table of what may not meet, in
// its order, but for the one where only the order is wrong.
var clashing = [][2]string{
	{"bleach", "vinegar"}, {"sodium hypochlorite", "ammonia"}, {"bleach", "ethanol"}, {"bleach", "hydrogen peroxide"}, {"bleach", "formalin"},
	{"nitric acid", "acetone"}, {"nitric acid", "copper"}, {"potassium nitrate", "sulphuric acid"}, {"sodium nitrite", "acetic acid"},
	{"hydrogen peroxide", "ethanol"}, {"hydrogen peroxide", "copper sulphate"}, {"hydrogen peroxide", "acetic acid"}, {"hydrogen peroxide", "sulphuric acid"},
	{"potassium cyanide", "citric acid"}, {"sodium sulphide", "citric acid"}, {"sodium dithionite", "citric acid"}, {"baking soda", "citric acid"},
	{"hydrochloric acid", "caustic soda"}, {"ammonia", "iodine"}, {"silver nitrate", "ammonia"}, {"potassium permanganate", "glycerol"},
	{"potassium permanganate", "muriatic acid"}, {"chromic acid", "ethanol"}, {"formaldehyde", "hydrochloric acid"}, {"formaldehyde", "H2O2"},
	{"acetone", "chloroform"}, {"zinc powder", "hydrochloric acid"},
}

// positions put two names into a prep in every way in which they can meet there, with a
// route that brings them together.
func positions(a, b string) map[string]func() (*Prep, *Route) {
	from := func(k *Stock) Step { return Step{Verb: Start, Stock: k} }
	weigh := []Step{{Verb: Weigh}, {Verb: MakeUpTo}}
	prep := func(solute, solvent string, stocks ...*Stock) *Prep {
		return &Prep{Solute: Solute{Name: solute}, Solvent: Solvent{Name: solvent}, Stocks: stocks}
	}
	return map[string]func() (*Prep, *Route){
		"solute and solvent": func() (*Prep, *Route) { return prep(a, b), &Route{Steps: weigh} },
		"stock and solvent": func() (*Prep, *Route) {
			k := &Stock{Name: a}
			return prep("thing", b, k), &Route{Steps: []Step{from(k)}}
		},
		"stock and stock": func() (*Prep, *Route) {
			k, l := &Stock{Name: a}, &Stock{Name: b}
			return prep("thing", "water", k, l), &Route{Steps: []Step{from(k), {Verb: TakeAll}, {Verb: Strengthen, Stock: l}}}
		},
		"solvent of a stock and solute": func() (*Prep, *Route) {
			k := &Stock{Name: "stock", Solvent: b}
			return prep(a, "water", k), &Route{Steps: []Step{from(k)}}
		},
		"solvent of a stock and stock": func() (*Prep, *Route) {
			k := &Stock{Name: a, Solvent: b}
			return prep("thing", "water", k), &Route{Steps: []Step{from(k)}}
		},
		"solvent of a stock and solvent": func() (*Prep, *Route) {
			k := &Stock{Name: "stock", Solvent: a}
			return prep("thing", b, k), &Route{Steps: []Step{from(k)}}
		},
		"what is weighed and solvent": func() (*Prep, *Route) {
			p := prep("thing", b)
			p.Solute.WeighedAs = a
			return p, &Route{Steps: weigh}
		},
		"packet and solvent": func() (*Prep, *Route) {
			k := &Packet{Name: a}
			p := prep("thing", b)
			p.Packets = []*Packet{k}
			return p, &Route{Steps: []Step{{Verb: UsePacket, Packet: k}, {Verb: MakeUpTo}}}
		},
	}
}

func TestEveryPairInEveryPosition(t *testing.T) {
	rows := slices.DeleteFunc(equipment.Incompatibles()[:28], func(i equipment.Incompatible) bool { return i.GroupsA == nil })
	require.Len(t, rows, len(clashing))
	for i, pair := range clashing {
		for _, names := range [][2]string{{pair[0], pair[1]}, {pair[1], pair[0]}} {
			for where, build := range positions(names[0], names[1]) {
				p, r := build()
				for _, list := range [][]hazards.Clash{p.Clashes(nil), p.Clashes(r)} {
					is := slices.IndexFunc(list, func(c hazards.Clash) bool { return c.A == rows[i].A && c.B == rows[i].B })
					require.GreaterOrEqual(t, is, 0, "%s: %v", where, names)
					said := recognised(&list[is])
					for _, word := range []string{names[0], names[1], "by its name", rows[i].Happens, rows[i].Product} {
						assert.Contains(t, said, word)
					}
					assert.NotContains(t, said, "http")
				}
				result, err := p.Assess(r, 0.95)
				require.NoError(t, err)
				assert.False(t, result.Possible)
				assert.NotEmpty(t, result.Clashes)
				assert.True(t, strings.HasPrefix(result.Reason.String(), "it brings together "), result.Reason)
			}
		}
	}
}

// recognised is what a clash is of.
func recognised(c *hazards.Clash) string {
	return fmt.Sprintf("%s, %s, %s; %s, %s, %s: %s", c.First, c.FirstRole, c.FirstBy, c.Second, c.SecondRole, c.SecondBy, c.What)
}

// What stands on the bench and is not used leaves a route usable.
func TestUnusedStockLeavesRoutesUsable(t *testing.T) {
	vinegar := &Stock{Name: "bottle", Solvent: "vinegar"}
	p := &Prep{Solute: Solute{Name: "bleach"}, Solvent: Solvent{Name: "water"}, Stocks: []*Stock{vinegar}}
	assert.NotEmpty(t, p.Clashes(nil))
	assert.Empty(t, p.Clashes(&Route{Steps: []Step{{Verb: Weigh}, {Verb: MakeUpTo}}}))
	assert.NoError(t, p.MayBeMade())
	assert.NotEmpty(t, p.Clashes(&Route{Steps: []Step{{Verb: Start, Stock: vinegar}}}))
}

func TestClashesByHazardWords(t *testing.T) {
	for _, test := range []struct {
		solute, solvent []string
		said            string // "" for no clash
	}{
		{[]string{"oxidiser"}, []string{"flammable"}, `a solute, the solute, by the hazard word "oxidiser"; a liquid, the solvent, by the hazard word "flammable": fire or explosion`},
		{[]string{"acid", "gives off gas"}, []string{"alkali"}, `by the hazard word "acid"`},
		{[]string{"alkali"}, []string{"acid"}, `by the hazard word "acid"`},
		{[]string{"oxidiser", "flammable"}, nil, ""}, // one substance
		{[]string{"acid", "alkali"}, nil, ""},
		{[]string{"oxidiser"}, []string{"none known"}, ""},
		{nil, nil, ""},
	} {
		p := &Prep{Solute: Solute{Name: "a solute", Hazards: test.solute}, Solvent: Solvent{Name: "a liquid", Hazards: test.solvent}}
		list := p.Clashes(nil)
		require.Equal(t, test.said != "", len(list) > 0, "%v", test)
		if test.said != "" {
			assert.Contains(t, recognised(&list[0]), test.said)
			assert.EqualError(t, p.MayBeMade(), "every route brings together a solute and a liquid, which may not meet")
		}
	}
	stated := &Prep{Solute: Solute{Name: "a solute"}, Solvent: Solvent{Name: "ethanol"}, Hazards: []hazards.Stated{{Words: []string{"oxidiser"}}}}
	assert.NotEmpty(t, stated.Clashes(nil), "words stated from a strength on")
}

// Concentrated sulphuric acid and water are a matter of order, else none could be diluted.
func TestAcidMayBeDilutedInWater(t *testing.T) {
	acid := &Stock{Name: "sulphuric acid, concentrated"}
	p := &Prep{Solute: Solute{Name: "sulphuric acid", Hazards: []string{"acid", "corrosive"}}, Solvent: Solvent{Name: "water"}, Stocks: []*Stock{acid}}
	assert.Empty(t, p.Clashes(nil))
	assert.Empty(t, p.Clashes(&Route{Steps: []Step{{Verb: Start, Stock: acid}}}))
}

// A stock is a solution of the solute: the two are no pair.
func TestStockOfTheSoluteIsNoPair(t *testing.T) {
	for solute, stock := range map[string]string{
		"hydrogen peroxide": "peroxide 30 %", "sodium hypochlorite": "household bleach", "ammonia": "ammonia water 25 %", "nitric acid": "nitric acid 65 %", "acetic acid": "vinegar",
	} {
		p := &Prep{Solute: Solute{Name: solute, Hazards: []string{"oxidiser", "corrosive"}}, Solvent: Solvent{Name: "deionised water"}, Stocks: []*Stock{{Name: stock}}}
		assert.Empty(t, p.Clashes(nil), solute)
	}
}
