package words

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/page"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/plan"
	"minim/uncertainty/purchase"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// The words of every rung are said, at its strength, and how it is made goes by the hazards.
// (An invented prep.)
func TestLadderHazards(t *testing.T) {
	for _, row := range []struct {
		hazards       string
		said          []string
		how, notThere string
	}{
		{"", []string{
			"Strong (30 % w/v) and the solution of step 3 (6.00 % w/v): corrosive (protect eyes and skin).",
			"The rungs 4 % w/v and 2 % w/v: irritant", "The rung 0.5 % w/v: not stated, treat as undiluted.",
		}, "some of the water goes first, and the aliquot into it, where it is more than a quarter of the whole in a beaker in a cold bath", "fume cupboard"},
		{`hazards = ["gives off gas"]`, []string{"The rung 0.5 % w/v: not stated, treat as undiluted."}, "mix it open, in a fume cupboard", ""},
		{`hazards = ["none known"]`, []string{"The rungs 4 % w/v and 2 % w/v: irritant"}, "some of the water goes first", "fume cupboard"},
	} {
		kit, err := read.ParseKit("bench.toml", []byte(benchOfOrders))
		require.NoError(t, err)
		p, err := read.ParsePrep("prep.toml", []byte(fmt.Sprintf(`target = "6 %% w/v"
volume = "20 mL"
ladder = ["4 %% w/v", "2 %% w/v", "0.5 %% w/v"]
ladder-with = "pipette"
ladder-in = "10 mL flask"
solvent = { name = "water" }
stock = [ { name = "strong", strength = "30 %% w/v" } ]
hazard = [ { from = "1 %% w/v", words = ["irritant"] }, { from = "5 %% w/v", words = ["corrosive"], replaces = true } ]
route = [ { name = "one", steps = [ { start = "strong" }, { take = "5 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" } ] } ]
[solute]
name = "stuff"
%s
`, row.hazards)), kit)
		require.NoError(t, err)
		c, err := contest.Compare(context.Background(), p, "", uncertainty.Settings{Trials: 10000, Seed: 1, Coverage: 0.95})
		require.NoError(t, err)
		said := strings.Join(Cautions(c.Prep, &c.Results[c.Verdict.Use]), " ")
		for _, want := range row.said {
			assert.Contains(t, said, want)
		}
		assert.Contains(t, ladderWords(c), row.how)
		if row.notThere != "" {
			assert.NotContains(t, ladderWords(c), row.notThere)
		}
		paper := &Paper{Comparison: c}
		batch := &Batch{Made: &record.Made{Record: &record.Record{Prep: p}, AsMade: c.Results[c.Verdict.Use]}}
		searched := Planned(&plan.Plan{Comparison: c, Options: plan.Options{Limits: route.Limits{Steps: 1}}}, nil)
		bought := &purchase.Purchase{Prep: p, Choices: []purchase.Choice{{Name: "x", Owned: true, Best: c.Results[c.Verdict.Use], Found: true}}}
		text := func(blocks []page.Block) []string { return []string{string((&page.Page{Blocks: blocks}).Markdown())} }
		for _, list := range [][]string{paper.cautions(), batch.Cautions(), text(searched.Footing), text(Bought(bought, nil).Footing)} {
			assert.NotContains(t, strings.Join(list, " "), "rung", "papers, batches, searches and purchases tell of none")
			assert.Contains(t, strings.Join(list, " "), "olution of step 3", "what is made is cautioned of")
		}
		assert.NotContains(t, string((&page.Page{Blocks: []page.Block{paper.labels(Label{Count: 1})}}).Markdown()), "0.5 % w/v", "no step fills a bottle with a rung")
	}
}

// The bath is for an aliquot of more than a quarter, as is said, whatever the size of the vessel.
func TestLadderBathByShare(t *testing.T) {
	for taken, bath := range map[string]bool{"2.4": false, "2.5": false, "2.52": true, "6": true} {
		for _, in := range []string{"10 mL flask", "25 mL flask"} {
			kit, err := read.ParseKit("bench.toml", []byte(benchOfOrders))
			require.NoError(t, err)
			p, err := read.ParsePrep("prep.toml", []byte(fmt.Sprintf(`target = "10 %% w/v"
volume = "20 mL"
ladder = ["%s %% w/v"]
ladder-with = "cylinder"
ladder-in = "%s"
solute = { name = "stuff", hazards = ["acid"] }
solvent = { name = "water" }
stock = [ { name = "strong", strength = "30 %% w/v" } ]
route = [ { name = "one", steps = [ { start = "strong" }, { take = "8.3 mL", with = "pipette" }, { make-up-to = "25 mL", in = "25 mL flask" } ] } ]
`, taken, in)), kit)
			require.NoError(t, err)
			c, err := contest.Compare(context.Background(), p, "", uncertainty.Settings{Trials: 10000, Seed: 1, Coverage: 0.95})
			require.NoError(t, err)
			rung := c.Results[0].Ladder[0]
			require.True(t, rung.Reason.None(), rung.Reason.String())
			assert.Equal(t, bath, rung.Bath, "%s of 10 in the %s", taken, in)
			assert.Equal(t, bath, strings.Contains(ladderWords(c), "more than a quarter of the whole in a beaker in a cold bath"))
		}
	}
}
