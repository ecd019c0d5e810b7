package route

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// preps are the prep files of the project.
func preps(t *testing.T) (paths []string) {
	t.Helper()
	for _, pattern := range []string{"../../testdata/preps/*.toml", "../../testdata/benches/*/*.toml", "../../testdata/published/*/*.toml", "../../cmd/minim/demo/*.toml"} {
		found, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, path := range found {
			if _, err := LoadPrep(path, ""); err == nil {
				paths = append(paths, path)
			}
		}
	}
	require.Greater(t, len(paths), 8)
	return paths
}

// saved saves routes and reads what was saved with the kit of the prep.
func saved(t *testing.T, p *Prep, text []byte, routes []*Route) (*Prep, []byte) {
	t.Helper()
	out, err := SaveRoutes(text, "new/bench.toml", routes)
	require.NoError(t, err)
	again, err := ParsePrep(p.File, out, p.Kit)
	require.NoError(t, err, string(out))
	twice, err := SaveRoutes(out, "new/bench.toml", again.Routes)
	require.NoError(t, err)
	require.Equal(t, string(out), string(twice))
	return again, out
}

// The routes of each prep come back as they were, and give the same figures, in a
// file with either line end.
func TestSavedRoutesAreRead(t *testing.T) {
	for _, path := range preps(t) {
		p := load(t, path)
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		for _, end := range []string{"\n", "\r\n"} {
			again, out := saved(t, p, []byte(strings.ReplaceAll(string(text), "\n", end)), p.Routes)
			assert.Equal(t, strings.Count(string(out), "\n"), strings.Count(string(out), end), path)
			again.Digest, again.Source = p.Digest, p.Source
			assert.Equal(t, p, again)
			for i, r := range p.Routes {
				want, err := p.Assess(r, 0.95)
				require.NoError(t, err)
				got, err := again.Assess(again.Routes[i], 0.95)
				require.NoError(t, err)
				assert.Equal(t, want.Reason, got.Reason)
				assert.Equal(t, want.Analytic, got.Analytic)
			}
		}
	}
}

// A file that is written as the house writes it does not change by a byte.
func TestSavingLeavesAllElse(t *testing.T) {
	for path, kit := range map[string]string{
		demoPrep: "bench.toml", "../../testdata/preps/dye-seven-routes.toml": "../../cmd/minim/demo/bench.toml",
		"../../testdata/benches/violin-workshop/preservative.toml": "bench.toml", "../../testdata/benches/field/biocide.toml": "bench.toml",
	} {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		out, err := SaveRoutes(text, kit, load(t, path).Routes)
		require.NoError(t, err)
		assert.Equal(t, string(text), string(out))
	}
}

// Every combination of steps and options that the grammar allows comes back.
func TestEveryStepIsSaved(t *testing.T) {
	skipIfSlow(t)
	kit := grammarKit(t)
	random := rand.New(rand.NewPCG(3, 4))
	readable := 0
	for range 800 {
		s := speaker{randomBytes(random)}
		text := s.prep()
		p, err := ParsePrep("prep.toml", []byte(text), kit)
		if err != nil {
			continue
		}
		readable++
		again, _ := saved(t, p, []byte(text), p.Routes)
		require.Equal(t, p.Routes, again.Routes, text)
	}
	t.Logf("%d preps", readable)
	require.Greater(t, readable, 80)
}

// How steps are written (constructed).
func TestWrittenSteps(t *testing.T) {
	kit, err := ParseKit("bench.toml", []byte(everyKind+"[[pipette]]\nname = 'the \"µ\"'\nkind = \"piston\"\ncapacity = \"100 µL\"\n"+
		"[[balance]]\nname = \"fine\"\ncapacity = \"20 g\"\nreadability = \"0.1 mg\"\n"))
	require.NoError(t, err)
	const head = "target = \"1 g/L\"\nvolume = \"1 mL\"\n[solute]\nname = \"urea\"\ndensity = \"1 g/mL\"\n[solvent]\nname = \"water\"\n" +
		"[[stock]]\nname = 'a \"stock\"'\nstrength = \"9 g/L\"\n[[packet]]\nname = \"packet\"\ncontent = \"1 g\"\n[[route]]\nname = \"r\"\nsteps = [\n"
	const start, toMark = `{ start = 'a "stock"' },`, `{ make-up-to = "25 mL", in = "flask" },`
	for _, c := range []struct{ steps, want string }{
		{`{ weigh = "10 mg", on = "fine" },` + toMark, `weigh = "0.0100 g", on = "fine"`},
		{`{ weigh = "1 g", on = "balance", weighed-back = true, piece = 1 },` + toMark, `weigh = "1.00 g", on = "balance", weighed-back = true, piece = 1`},
		{`{ weigh = "1.004 g", on = "balance", tare = "separate", left-behind = "0.002 g" },` + toMark, `weigh = "1.004 g", on = "balance", left-behind = "2 mg", tare = "separate"`},
		{`{ weigh = "4 mg", on = "balance", tare = "zeroed", left-behind = "0 g" },` + toMark, `weigh = "0.004 g", on = "balance", left-behind = "0 g"`},
		{`{ packet = "packet" },` + toMark, `packet = "packet"`},
		{start + `{ take = "1 mL", with = "one-mark" },` + toMark, `start = "a \"stock\""`},
		{`{ measure = "1 drop", with = "dropper" },` + toMark, `measure = "1 drop", with = "dropper"`},
		{`{ measure = "20 drops", with = "dropper" },` + toMark, `measure = "20 drops", with = "dropper"`},
		{`{ measure = "0.055 mL", with = 'the "µ"' }, { dissolve-in = "2.5 mL", with = "graduated", contraction = "7 % of volume" },`,
			`measure = "55 µL", with = "the \"µ\""`},
		{`{ measure = "1 mL", with = "one-mark" }, { dissolve-in = "2.5 mL", with = "graduated", contraction = "7 % of volume", state = "dry" },`,
			`dissolve-in = "2.5 mL", with = "graduated", state = "dry", contraction = "7 % of volume"`},
		{`{ packet = "packet" }, { dissolve-in = "30 g", on = "certified balance" },`, `dissolve-in = "30.00 g", on = "certified balance"`},
		{`{ packet = "packet" }, { make-up-to = "9.5 mL", in = "cylinder", reading = "first-time", state = "conditioned" },`,
			`make-up-to = "9.5 mL", in = "cylinder", state = "conditioned", reading = "first-time"`},
		{start + `{ take = "500 µL", with = "graduated", blown-out = true, piece = 2 },` + toMark, `take = "0.5 mL", with = "graduated", blown-out = true, piece = 2`},
		{start + `{ take = "1 mL", with = "piston" },` + toMark, `take = "1 mL", with = "piston"`},
		{start + `{ take = "2 µL", with = "syringe" },` + toMark, `take = "2 µL", with = "syringe"`},
		{start + `{ pour = "8 mL", from = "cylinder", rinsed = true },` + toMark, `pour = "8 mL", from = "cylinder", rinsed = true`},
		{start + `{ take = "1 mL", with = "one-mark" }, { add = "9 mL", with = "burette", reading = "none" },`, `add = "9 mL", with = "burette", reading = "none"`},
		{start + `{ weigh-aliquot = "1 g", on = "balance", piece = 2 }, { weigh-up-to = "9.5 g", on = "balance", piece = 2 },`,
			`weigh-up-to = "9.50 g", on = "balance", piece = 2`},
	} {
		p, err := ParsePrep("prep.toml", []byte(head+c.steps+"\n]\n"), kit)
		require.NoError(t, err, c.steps)
		again, out := saved(t, p, []byte(head+c.steps+"\n]\n"), p.Routes)
		assert.Contains(t, string(out), "\n  { "+c.want+" },\n", c.steps)
		assert.Equal(t, p.Routes, again.Routes)
	}
}

// What a search reckons out is written as it is meant: 0.3 mL for three times 0.1.
func TestComputedAmountsAreWrittenPlain(t *testing.T) {
	kit := grammarKit(t)
	tenth := 0.1
	r := &Route{Name: "r", Steps: []Step{
		{Verb: Weigh, Amount: 3 * tenth, Balance: kit.Balance("balance")},
		{Verb: DissolveIn, Amount: 3 * tenth, Measure: kit.Measure("graduated")},
		{Verb: Take, Amount: 7 * tenth / 100, Measure: kit.Measure("piston")},
	}}
	text, err := SaveRoutes([]byte("target = 1\n"), "", []*Route{r})
	require.NoError(t, err)
	assert.Equal(t, "target = 1\n\n[[route]]\nname = \"r\"\nsteps = [\n  { weigh = \"0.30 g\", on = \"balance\" },\n  { dissolve-in = \"0.3 mL\", with = \"graduated\" },\n"+
		"  { take = \"7 µL\", with = \"piston\" },\n]\n", string(text))
}

// Where the tables of a prep stand, and what is said round them.
func TestSaveRoutesPlaces(t *testing.T) {
	const route = "\n[[route]]\nname = \"new\"\nsteps = [\n]\n"
	for _, c := range []struct{ name, text, want string }{
		{"no routes, no kit", "# mine\ntarget = 1\n[plan] # keep\nsteps = 2", "# mine\nkit = \"a/b.toml\"\ntarget = 1\n[plan] # keep\nsteps = 2\n" + route},
		{"a list of routes", "kit = 'x' # here\nroute = [\n  # old\n  { name = \"old\" },\n] # end\ntarget = 1\n", "kit = \"a/b.toml\" # here\ntarget = 1\n" + route},
		{"tables of steps", "kit = 'x'\n[[route]]\n[[route.steps]]\nweigh = 1\n# between\n[[route]]\nname = 1 # old\n\n# last\n", "kit = \"a/b.toml\"\n\n# last\n" + route},
		{"before other tables", "kit = 'x'\n\n[[route]]\nname = 1\n\n# of the plan\n[plan]\nsteps = 1\n\n\n", "kit = \"a/b.toml\"\n\n# of the plan\n[plan]\nsteps = 1\n" + route},
		{"windows", "kit = 'x'\r\n[[route]]\r\n\r\n# end", "kit = \"a/b.toml\"\r\n\r\n# end\r\n" + strings.ReplaceAll(route, "\n", "\r\n")},
	} {
		out, err := SaveRoutes([]byte(c.text), filepath.Join("a", "b.toml"), []*Route{{Name: "new"}})
		require.NoError(t, err, c.name)
		assert.Equal(t, c.want, string(out), c.name)
		again, err := SaveRoutes(out, "a/b.toml", []*Route{{Name: "new"}})
		require.NoError(t, err)
		assert.Equal(t, c.want, string(again), c.name)
	}

	out, err := SaveRoutes([]byte("# x\nkit = 'x'\n\n[[route]]\nname = 1\n"), "", nil)
	require.NoError(t, err)
	assert.Equal(t, "# x\nkit = 'x'\n\n", string(out), "nothing new")
}

func TestSaveRoutesRefuses(t *testing.T) {
	_, err := SaveRoutes([]byte("target = 1,5\n"), "bench.toml", nil)
	assert.ErrorContains(t, err, "the prep:1:10: ")
	_, err = SaveRoutes([]byte("kit = 5\n"), "bench.toml", nil)
	assert.ErrorContains(t, err, "the prep:1:7: kit: found the number 5, expected a text in quotes")
	for _, path := range []string{" b.toml", "b\n.toml", "b\xff.toml"} {
		_, err = SaveRoutes([]byte("target = 1\n"), path, nil)
		assert.ErrorContains(t, err, "a prep cannot name a kit with the path ")
	}
}
