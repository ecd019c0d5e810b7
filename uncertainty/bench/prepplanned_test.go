package bench

import (
	"context"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/benchfile"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// planTable is the table of a plan as it is written.
func planTable(t *testing.T, text string) *benchfile.Table {
	t.Helper()
	root, err := benchfile.Parse("r.toml", []byte(text))
	require.NoError(t, err)
	return root.Table(plannedKey)
}

// A plan that is written is read as the prep was, but for what does not count; written
// again it is the same text.
func TestPlanIsReadAsItWasWritten(t *testing.T) {
	skipIfSlow(t)
	for _, path := range preps(t) {
		p := loadPrep(t, path)
		for _, r := range p.Routes {
			text := planText(p, r)
			own := readPlan(planTable(t, text))
			require.NotNil(t, own)
			assert.Equal(t, []string{r.Name}, []string{own.Routes[0].Name})
			require.Len(t, own.Routes[0].Steps, len(r.Steps))
			for i := range r.Steps {
				assert.Equal(t, Written(&r.Steps[i]), Written(&own.Routes[0].Steps[i]), path)
			}
			assert.Equal(t, p.Target, own.Target)
			assert.Equal(t, p.Tolerances, own.Tolerances)
			assert.Equal(t, p.Bench, own.Bench)
			assert.Equal(t, p.Kit.Names(), own.Kit.Names())
			prep, kit := planDifferences(planTable(t, text), p)
			assert.Empty(t, prep, path)
			assert.Empty(t, kit, path)
			since := record.Since(own, p)
			assert.Equal(t, own.Kit.Names(), since.Kit.Names())
			assert.Equal(t, []string{p.File, p.Kit.File}, []string{since.File, since.Kit.File})
			assert.Equal(t, p.Limits, since.Limits)
			assert.Equal(t, len(p.Hazards), len(since.Hazards))
			assert.Equal(t, p.Solute.Hazards, since.Solute.Hazards)
		}
	}
}

// Without a route, of a prep that has it no more, the rest is written; a plan without one,
// or without its kit, is a mistake.
func TestPlanWithoutARoute(t *testing.T) {
	p := demoPrep(t)
	text := planText(p, nil)
	assert.NotContains(t, text, "steps")
	table := planTable(t, text)
	assert.Nil(t, readPlan(table))
	require.Error(t, table.Err())
	assert.Contains(t, table.Err().Error(), "needs `route`")

	table = planTable(t, strings.Replace(planText(p, p.Routes[0]), "[planned.kit]", "[planned.others]", 1))
	assert.Nil(t, readPlan(table))
	require.Error(t, table.Err())
	assert.Contains(t, table.Err().Error(), "needs `kit`")
}

// A stock that came since is taken up where its strength means something in the plan.
func TestStocksSinceAPlan(t *testing.T) {
	kit, err := ParseKit("kit.toml", []byte("[[cylinder]]\nname = \"cylinder\"\ncapacity = \"50 mL\"\nclass = \"B\"\n"))
	require.NoError(t, err)
	const text = "target = \"2 % w/v\"\nvolume = \"40 mL\"\n[solute]\nname = \"gum\"\n[solvent]\nname = \"water\"\n"
	plan, err := ParsePrep("plan.toml", []byte(text), kit)
	require.NoError(t, err)
	now, err := ParsePrep("now.toml", []byte(strings.Replace(text, "\"gum\"", "\"gum\"\nmolar-mass = \"300 g/mol\"", 1)+
		"[[stock]]\nname = \"by mass\"\nstrength = \"10 % w/v\"\n[[stock]]\nname = \"by amount\"\nstrength = \"1 mol/L\"\n"), kit)
	require.NoError(t, err)
	stocks := record.Since(plan, now).Stocks
	require.Len(t, stocks, 1)
	assert.Equal(t, "by mass", stocks[0].Name)
}

// Hazard words of the plan and of now hold; that none was known then, or is known now, is
// said only where no word is.
func TestHazardsSinceAPlan(t *testing.T) {
	kit, err := ParseKit("kit.toml", []byte("[[cylinder]]\nname = \"cylinder\"\ncapacity = \"50 mL\"\nclass = \"B\"\n"))
	require.NoError(t, err)
	prep := func(words string) *route.Prep {
		const text = "target = \"2 % w/v\"\nvolume = \"40 mL\"\n[solute]\nname = \"gum\"\nhazards = [WORDS]\n[solvent]\nname = \"water\"\nhazards = [WORDS]\n"
		p, err := ParsePrep("p.toml", []byte(strings.ReplaceAll(text, "WORDS", words)), kit)
		require.NoError(t, err)
		return p
	}
	for _, c := range []struct {
		then, now string
		want      []string
	}{
		{`"irritant"`, `"toxic"`, []string{"irritant", "toxic"}}, {`"none known"`, `"toxic"`, []string{"toxic"}},
		{`"irritant"`, `"none known"`, []string{"irritant"}}, {`"none known"`, `"none known"`, []string{"none known"}},
	} {
		since := record.Since(prep(c.then), prep(c.now))
		assert.Equal(t, c.want, since.Solute.Hazards)
		assert.Equal(t, c.want, since.Solvent.Hazards)
	}
}

// preps are the preps of the examples.
func preps(t *testing.T) (paths []string) {
	t.Helper()
	for _, pattern := range []string{"../../testdata/preps/*.toml", "../../testdata/benches/*/*.toml", "../../testdata/published/*/*.toml", "../../cmd/minim/demo/*.toml"} {
		found, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, path := range found {
			if _, err := LoadPrep(context.Background(), path, ""); err == nil {
				paths = append(paths, path)
			}
		}
	}
	require.Greater(t, len(paths), 8)
	return paths
}
