package bench

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// FuzzParse: any bytes are either refused with a mistake that has a message and stands
// inside the file, or are a record of which the batch can be assessed: with a reason
// where it cannot be made, and without a number that is not finite.
func FuzzParse(f *testing.F) {
	p := stocked(f)
	f.Add([]byte(demoText(f, "batch.toml")))
	f.Add([]byte(Template(p, p.Routes[5])))
	f.Add([]byte(withoutDigest(Template(p, p.Routes[5]))))
	inks := ink(f, inkPrep, inkKit)
	f.Add([]byte(withoutDigest(begun(f, inks, inks.Routes[0]))))
	for _, text := range []string{
		twoDilutions("1 = { step = 3, take = \"1.95 mL\", BY }\n2 = { step = 5, late = true }\n3 = { corrects = 1, spoilt = \"x\", BY }\n4 = { step = 3, BY }"),
		twoDilutions("1 = { step = 6, BY }\n2 = { step = 7, take = \"all\", BY }\n3 = { step = 8, add = \"2 mL\", with = \"5 mL pipette\", spoilt = \"x\", BY }\n4 = { step = 5, BY }"),
		twoDilutions("1 = { step = 7, take = \"all\" }\n2 = { step = 8, strengthen = \"1 mL\", of = \"step 2\", with = \"2 mL pipette\" }\n3 = { corrects = 1, withdrawn = true, BY }"),
		twoDilutions("1 = { temperature = \"22 °C\" }\n2 = { corrects = 1, within = \"1 °C\", BY }\n3 = { step = 1, weigh = \""),
		recordOf("strengthened", "1 = { step = 1, start = \"weak\", BY }\n2 = { step = 4, strengthen = \"0.5 mL\", BY, spoilt = \"x\" }\n3 = { step = 2, BY }"),
		recordOf("drops", "1 = { step = 2, dissolve-in = \"22 mL\", with = \"25 mL cylinder\" }\n2 = { step = 3, take = \"2 drops\", BY, spoilt = \"x\" }\n3 = { step = 3, BY }"),
		recordOf("diluted by weighing", "1 = { step = 4, weigh-up-to = \"15.40 g\", BY, spoilt = \"x\" }\n2 = { step = 3, BY }"),
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := ParseRecord("record.toml", data, p)
		if err != nil {
			checkPlace(t, data, err)
			return
		}
		made, err := r.Prep.Assess(r.Made, 0.95)
		switch {
		case err != nil || len(r.Steps) != len(r.Made.Steps):
			t.Fatalf("%d steps, %d origins: %v", len(r.Made.Steps), len(r.Steps), err)
		case made.Possible:
			checkNumbers(t, &made)
			checkEffects(t, r)
		case made.Reason.None():
			t.Fatal("no reason")
		}
	})
}

// checkPlace checks that a mistake says something, and where in the file.
func checkPlace(t *testing.T, data []byte, err error) {
	m, lines := asMistake(t, err), strings.Split(string(data), "\n")
	if m.Message == "" || m.Line < 1 || m.Line > len(lines) {
		t.Fatalf("%d lines: %v", len(lines), err)
	}
	if m.Column < 1 || m.Column > utf8.RuneCountInString(lines[m.Line-1])+1 {
		t.Fatalf("beyond %q: %v", lines[m.Line-1], err)
	}
}

func checkNumbers(t *testing.T, r *route.Result) {
	numbers := []float64{
		r.Intended, r.Analytic.Value, r.Analytic.StandardUncertainty, r.Analytic.ExpandedUncertainty,
		r.SoluteGrams, r.MadeML, r.LeftOverML,
	}
	for _, chance := range r.Inside {
		numbers = append(numbers, chance.Normal)
	}
	for _, x := range numbers {
		if math.IsNaN(x) || math.IsInf(x, 0) || x < -1e-9 {
			t.Fatalf("%v in %+v", x, r)
		}
	}
}

func checkEffects(t *testing.T, r *record.Record) {
	made, err := record.Evaluate(context.Background(), r, uncertainty.Settings{Trials: 10_000, Seed: 1, Coverage: 0.95})
	if errors.Is(err, record.ErrNoResult) {
		return
	}
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range made.Effects {
		if math.IsNaN(e.Relative) || math.IsInf(e.Relative, 0) {
			t.Fatalf("%+v", e)
		}
	}
}

// hands make a batch of two dilutions, write down what they do, and count the liquid that
// they measure out.
type hands struct {
	r     *rand.Rand
	lines []string
	// entry of each step that stands, and what was read.
	entry, read [7]int
	// left of the solutions of steps 2 and 4, and all that was measured out.
	left [7]int
	all  int
}

// Spans of the readings in tenths of a millilitre, or of a gram, from and to.
var spans = [7][2]int{1: {12, 18}, 2: {250, 250}, 3: {10, 20}, 4: {100, 250}, 5: {10, 50}, 6: {150, 250}}

var keys = [7]string{1: "weigh", 2: "make-up-to", 3: "take", 4: "make-up-to", 5: "take", 6: "make-up-to"}

func (h *hands) write(format string, values ...any) {
	h.lines = append(h.lines, fmt.Sprintf("%d = { %s, BY }", len(h.lines)+1, fmt.Sprintf(format, values...)))
}

// do does a step.
func (h *hands) do(step int, said string) {
	low, high := spans[step][0], spans[step][1]
	read := low + h.r.IntN(high-low+1)
	unit := "mL"
	switch step {
	case 1:
		unit = "g"
	case 2:
		h.left[2], h.all = read, h.all+read
	case 4:
		h.left[4], h.all = read, h.all+read-h.read[3]
	case 6:
		h.all += read - h.read[5]
	default:
		h.left[step-1] -= read
	}
	h.write("step = %d, %s = \"%d.%d %s\"%s", step, keys[step], read/10, read%10, unit, said)
	h.entry[step], h.read[step] = len(h.lines), read
}

// begin is a step from which the work can go on after one was spoilt, when there is
// enough left for it.
func (h *hands) begin(spoilt int) int {
	for _, step := range []int{5, 3} {
		if step <= spoilt && h.left[step-1] >= spans[step][1] && h.r.IntN(4) > 0 {
			return step
		}
	}
	return 1
}

// Random batches, in which steps are spoilt and done again from one before, at once or
// noticed later: what is left over is all that was measured out less what is wanted.
func TestLeftOverOfRandomBatches(t *testing.T) {
	p := demoPrep(t)
	r := rand.New(rand.NewPCG(5, 6))
	for range 100 {
		h := &hands{r: r}
		for step := 1; step <= 6; step++ {
			again := step
			switch early := len(h.lines) < 20; {
			case early && r.IntN(4) == 0:
				h.do(step, `, spoilt = "spill"`)
			case early && r.IntN(4) == 0:
				h.do(step, "")
				again = 1 + r.IntN(step)
				h.write("corrects = %d, spoilt = \"spill\"", h.entry[again])
			default:
				h.do(step, "")
				continue
			}
			step = h.begin(again) - 1
		}
		text := twoDilutions(strings.Join(h.lines, "\n"))
		record := parseRecord(t, p, text)
		result, err := record.Prep.Assess(record.Made, 0.95)
		require.NoError(t, err)
		require.True(t, result.Possible, "%s\n%s", result.Reason, text)
		near.Absolute(t, text, float64(h.all)/10-15, result.LeftOverML, 1e-9)
		assert.Equal(t, "RRRRRR", origins(record))
	}
}
