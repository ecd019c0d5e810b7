package equipment

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	words "minim/report/words/influence"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

// oneUse is a use in a model of its own; the bench reads with care.
func oneUse() Use {
	u := alone()
	u.BenchReading = Careful
	return u
}

// next is another step in the same model.
func (u Use) next(step string) Use {
	u.Step = useNamed(step)
	return u
}

// useNamed is a use that is told from others by its name.
func useNamed(step string) uncertainty.Owner {
	return uncertainty.Owner{Kind: uncertainty.OneUse, Name: step}
}

func propagate(t testing.TB, u Use, out uncertainty.Node) uncertainty.Analytic {
	t.Helper()
	a, err := u.Model.Propagate(out, 0.95)
	require.NoError(t, err)
	return a
}

// nameOf is how the influence of a contribution is called, "" where there is none.
func nameOf(c uncertainty.Contribution) string {
	if c.Code == "" {
		return ""
	}
	return words.Name(&c.Influence)
}

// term finds an influence in a budget by its name; one that is not there has a
// standard uncertainty of 0 and no name.
func term(a uncertainty.Analytic, name string) uncertainty.Contribution {
	for _, c := range a.Budget {
		if nameOf(c) == name {
			return c
		}
	}
	return uncertainty.Contribution{}
}

// names is the set of the influences of a budget.
func names(a uncertainty.Analytic) map[string]bool {
	list := map[string]bool{}
	for _, c := range a.Budget {
		list[nameOf(c)] = true
	}
	return list
}

func set(list ...string) map[string]bool {
	s := map[string]bool{}
	for _, name := range list {
		s[name] = true
	}
	return s
}

// same holds that the budget has the influence with that standard uncertainty.
func same(t testing.TB, a uncertainty.Analytic, name string, u float64) {
	t.Helper()
	assert.Equal(t, name, nameOf(term(a, name)))
	near.Relative(t, name, u, term(a, name).StandardUncertainty, 1e-12)
}

// correlation of two nodes, from the variance of their difference.
func correlation(t testing.TB, u Use, a, b uncertainty.Node) float64 {
	t.Helper()
	va := propagate(t, u, a).StandardUncertainty
	vb := propagate(t, u, b).StandardUncertainty
	d := propagate(t, u, u.Model.Subtract(a, b)).StandardUncertainty
	return (va*va + vb*vb - d*d) / (2 * va * vb)
}

// outcome of one use: what was intended, and what is expected of it.
type outcome struct {
	Intended float64
	uncertainty.Analytic
}

// outcomeOf propagates what a use gives.
func outcomeOf(t testing.TB, u Use, out uncertainty.Node, err error) outcome {
	t.Helper()
	require.NoError(t, err)
	return outcome{u.Model.Intended(out), propagate(t, u, out)}
}

// delivered is the outcome of measuring out, or pouring out, a volume.
func delivered(t testing.TB, k *Measure, u Use, mark float64) outcome {
	t.Helper()
	v, err := k.Deliver(u, mark)
	return outcomeOf(t, u, v, err)
}

// contained is the outcome of making up to a mark.
func contained(t testing.TB, k *Measure, u Use, mark float64) outcome {
	t.Helper()
	v, err := k.Contain(u, mark)
	return outcomeOf(t, u, v, err)
}

// node is a delivery in a step of its own.
func node(t testing.TB, k *Measure, u Use, step string, mark float64) uncertainty.Node {
	t.Helper()
	v, err := k.Deliver(u.next(step), mark)
	require.NoError(t, err)
	return v
}

// quiet is a use of glass that is read without an error.
func quiet() Use {
	u := alone()
	u.BenchReading = noReading
	return u
}

// of is a use of another liquid than water.
func of(u Use, liquid string) Use {
	l, _ := FindLiquid(liquid)
	u.Day.Solvent = Solvent{Name: liquid, Density: l.Density, Tension: l.SurfaceTension}
	return u
}
