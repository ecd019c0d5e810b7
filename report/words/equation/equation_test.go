package equation_test

import (
	"context"
	"fmt"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/equipment/quantity"
	"minim/report/words/equation"
	"minim/report/words/influence"
	"minim/uncertainty/bench"
)

func TestDump(t *testing.T) {
	paths, _ := filepath.Glob("../../../testdata/benches/*/*.toml")
	more, _ := filepath.Glob("../../../testdata/published/*/*.toml")
	pre, _ := filepath.Glob("../../../testdata/preps/*.toml")
	demo, _ := filepath.Glob("../../../cmd/minim/demo/*.toml")
	for _, path := range append(append(append(paths, more...), pre...), demo...) {
		p, err := bench.LoadPrep(context.Background(), path, "")
		if err != nil {
			fmt.Println(path, err)
			continue
		}
		for _, r := range p.Routes {
			m, out, err := p.Model(r)
			if err != nil {
				continue
			}
			e := equation.Of(m, out, "γ", quantity.Number)
			fmt.Println("=====", path, r.Name)
			for _, l := range e.Lines {
				fmt.Println("  ", l.Symbol, "=", l.Expression, "   #", influence.Name(l.Of), quantity.Number(l.Value), l.Of.Unit)
			}
			for _, l := range e.Constants {
				fmt.Println("     c", l.Symbol, quantity.Number(l.Value), l.Of.Unit, "|", influence.Name(l.Of), "|", influence.Ground(l.Of))
			}
			a, err := m.Propagate(out, .95)
			require.NoError(t, err)
			for i := range a.Budget {
				b := &a.Budget[i]
				fmt.Println("     i", e.Symbol(&b.Influence), "|", influence.Name(&b.Influence), "|", influence.Shape(&b.Influence), "|", influence.Type(&b.Influence), "|", influence.Ground(&b.Influence))
			}
		}
	}
}
