package answer

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"minim/report/words"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

const labelKit = `
balance = [
  { name = "scale", capacity = "200 g", readability = "0.01 g", repeatability = "0.01 g", linearity = "0.02 g" },
  { name = "coarse scale", capacity = "200 g", readability = "0.5 g", repeatability = "2 g", linearity = "2 g" },
]
pipette = [{ name = "pipette", kind = "graduated", capacity = "25 mL", division = "0.1 mL", tolerance = "0.05 mL" }]
flask = [{ name = "flask", capacity = "25 mL", tolerance = "0.05 mL", count = 3 }]
`

// statedFrom is a [[hazard]] of the cases below, in % w/v.
type statedFrom struct {
	from     float64
	words    []string
	replaces bool
}

// labelCase is a file and what was done by it: bottle 1 of 10 % w/v, and from it bottle 2.
type labelCase struct {
	solute       []string // nil where nothing is stated
	solvent      string
	solventWords []string
	hazards      []statedFrom
	stock        bool // of 20 % w/v; or else the solute is weighed
	done         string
}

// What was done: a plan that is good enough, or is not, or says nothing; a batch inside and
// one outside.
var labelDone = []string{"good plan", "bad plan", "plan that says nothing", "batch inside", "batch outside"}

func labelCases() (list []labelCase) {
	solvents := []labelCase{
		{solvent: "water"}, {solvent: "Deionised water"}, {solvent: "water", solventWords: []string{"salty"}},
		{solvent: "ethanol", solventWords: []string{"flammable"}}, {solvent: "some oil"}, {solvent: "some oil", solventWords: []string{"none known"}},
	}
	irritant, corrosive := statedFrom{0.1, []string{"irritant"}, false}, statedFrom{5, []string{"corrosive"}, false}
	instead := statedFrom{5, []string{"corrosive"}, true}
	hazards := [][]statedFrom{
		nil, {irritant}, {corrosive}, {{15, []string{"oxidiser"}, false}}, {irritant, corrosive}, {irritant, {5, []string{"corrosive", "irritant"}, false}}, {instead, irritant},
		{irritant, {10, []string{"gives off gas"}, false}}, {irritant, {10, []string{"gives off gas"}, true}},
		{{0.1, []string{"none known"}, false}, {1, []string{"harmful"}, false}},
	}
	for _, solute := range [][]string{nil, {"none known"}, {"toxic", "sensitiser"}, {"Gives off gas"}} {
		for _, c := range solvents {
			for _, h := range hazards {
				for _, stock := range []bool{false, true} {
					for _, done := range labelDone {
						if stock && (len(solute) < 2 || done == "plan that says nothing") {
							continue // nothing is weighed; and the solute's words have been through the rest
						}
						list = append(list, labelCase{solute, c.solvent, c.solventWords, h, stock, done})
					}
				}
			}
		}
	}
	return list
}

func tomlList(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = fmt.Sprintf("%q", w)
	}
	return "[" + strings.Join(quoted, ", ") + "]"
}

// prep reads the file of a case.
func (c *labelCase) prep(t *testing.T) *route.Prep {
	kit, err := read.ParseKit("bench.toml", []byte(labelKit))
	require.NoError(t, err)
	tolerance, scale := "12 % of target", "scale"
	switch c.done {
	case "bad plan":
		tolerance = "0.1 % of target"
	case "plan that says nothing":
		scale = "coarse scale"
	}
	text := fmt.Sprintf("target = \"1 %% w/v\"\nvolume = \"20 mL\"\ntolerance = %q\nsolute = { name = \"stuff\", hazards = %s }\nsolvent = { name = %q, hazards = %s }\n",
		tolerance, tomlList(c.solute), c.solvent, tomlList(c.solventWords))
	for _, h := range c.hazards {
		text += fmt.Sprintf("[[hazard]]\nfrom = \"%v %% w/v\"\nwords = %s\nreplaces = %v\n", h.from, tomlList(h.words), h.replaces)
	}
	first := fmt.Sprintf(`{ weigh = "2.50 g", on = %q }, { make-up-to = "25 mL", in = "flask" }`, scale)
	text += fmt.Sprintf("[[stock]]\nname = \"bought\"\nsolvent = %q\nstrength = \"20 %% w/v\"\n", c.stockSolvent())
	if c.stock {
		first = `{ start = "bought" }, { take = "12.5 mL", with = "pipette" }, { make-up-to = "25 mL", in = "flask" }`
	}
	text += "[[route]]\nname = \"r\"\nsteps = [" + first + `, { take = "2.5 mL", with = "pipette" }, { make-up-to = "25 mL", in = "flask", piece = 2 }]` + "\n"
	p, err := read.ParsePrep("prep.toml", []byte(text), kit)
	require.NoError(t, err)
	return p
}

// evaluated is what was done in a case, worked out.
func (c *labelCase) evaluated(t *testing.T, p *route.Prep) words.Paper {
	settings := uncertainty.Settings{Trials: 10_000}
	if !c.batch() {
		comparison, err := contest.Compare(context.Background(), p, "", settings)
		require.NoError(t, err)
		return words.Paper{Comparison: comparison}
	}
	r, err := read.ParseRecord("record.toml", []byte(c.recordText()), p)
	require.NoError(t, err)
	made, err := record.Evaluate(context.Background(), r, settings)
	require.NoError(t, err)
	return words.Paper{Batch: &words.Batch{Made: made}}
}

// paper is about a case. What was done is worked out once for all cases in which only the
// words differ, on which no figure depends.
func (c *labelCase) paper(t *testing.T, done map[string]words.Paper) *words.Paper {
	p := c.prep(t)
	key := fmt.Sprint(c.solvent, c.stock, c.done)
	paper, known := done[key]
	if !known {
		harmless := *c // where nothing is stated nothing stops the work
		harmless.solute, harmless.hazards = nil, nil
		paper = harmless.evaluated(t, harmless.prep(t))
		done[key] = paper
	}
	if !c.batch() {
		comparison := *paper.Comparison
		comparison.Prep = p
		return &words.Paper{Comparison: &comparison}
	}
	made, r := *paper.Batch.Made, *paper.Batch.Record
	made.Record, r.Prep = &r, p
	batch := &words.Batch{Made: &made}
	return &words.Paper{Comparison: batch.Alone(), Batch: batch}
}

// stockSolvent is acetone, or the solvent of the prep by another of its names.
func (c *labelCase) stockSolvent() string {
	if c.solvent == "Deionised water" {
		return "Tap water"
	}
	return "acetone"
}

// inAcetone: what is made holds acetone as well.
func (c *labelCase) inAcetone() bool { return c.stock && c.stockSolvent() == "acetone" }

func (c *labelCase) batch() bool { return strings.HasPrefix(c.done, "batch") }

// recordText takes in the last dilution what was planned, or twice that.
func (c *labelCase) recordText() string {
	steps := []string{`weigh = "2.50 g"`, `make-up-to = "25 mL"`}
	if c.stock {
		steps = []string{`start = "bought"`, `take = "12.5 mL"`, `make-up-to = "25 mL"`}
	}
	steps = append(steps, map[bool]string{false: `take = "2.5 mL"`, true: `take = "5 mL"`}[c.done == "batch outside"], `make-up-to = "25 mL"`)
	text := "route = \"r\"\n[entries]\n"
	for i, s := range steps {
		text += fmt.Sprintf("%d = { step = %d, %s, by = \"AK\", at = \"2026-11-2%d 10:00\" }\n", i+1, i+1, s, i+1)
	}
	return text
}
