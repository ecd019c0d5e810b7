package record

import (
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"minim/uncertainty/route"
)

// FuzzParse: any bytes are either refused with a mistake that has a message and stands
// inside the file, or are a record of which the batch can be assessed: with a reason
// where it cannot be made, and without a number that is not finite.
func FuzzParse(f *testing.F) {
	p := stocked(f)
	f.Add([]byte(demoText(f, "batch.toml")))
	f.Add([]byte(Template(p, p.Routes[5])))
	for _, text := range []string{
		twoDilutions("1 = { step = 3, take = \"0.95 mL\", BY }\n2 = { step = 5, late = true }\n3 = { corrects = 1, spoilt = \"x\", BY }\n4 = { step = 3, BY }"),
		twoDilutions("1 = { step = 6, BY }\n2 = { step = 7, take = \"all\", BY }\n3 = { step = 8, add = \"2 mL\", with = \"5 mL pipette\", spoilt = \"x\", BY }\n4 = { step = 5, BY }"),
		twoDilutions("1 = { step = 7, take = \"all\" }\n2 = { step = 8, strengthen = \"1 mL\", of = \"step 2\", with = \"1 mL pipette\" }\n3 = { corrects = 1, withdrawn = true, BY }"),
		twoDilutions("1 = { temperature = \"22 °C\" }\n2 = { corrects = 1, within = \"1 °C\", BY }\n3 = { step = 1, weigh = \""),
		recordOf("strengthened", "1 = { step = 1, start = \"weak\", BY }\n2 = { step = 4, strengthen = \"0.5 mL\", BY, spoilt = \"x\" }\n3 = { step = 2, BY }"),
		recordOf("drops", "1 = { step = 2, dissolve-in = \"22 mL\", with = \"25 mL cylinder\" }\n2 = { step = 3, take = \"2 drops\", BY, spoilt = \"x\" }\n3 = { step = 3, BY }"),
		recordOf("diluted by weighing", "1 = { step = 4, weigh-up-to = \"19.40 g\", BY, spoilt = \"x\" }\n2 = { step = 3, BY }"),
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := Parse("record.toml", data, p)
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
		case made.Reason == "":
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
	for _, x := range []float64{
		r.Intended, r.Analytic.Value, r.Analytic.StandardUncertainty, r.Analytic.ExpandedUncertainty,
		r.Inside[0].Normal, r.SoluteGrams, r.MadeML, r.LeftOverML,
	} {
		if math.IsNaN(x) || math.IsInf(x, 0) || x < -1e-9 {
			t.Fatalf("%v in %+v", x, r)
		}
	}
}

func checkEffects(t *testing.T, r *Record) {
	effects, err := r.effects(0.95)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range effects {
		if math.IsNaN(e.Relative) || math.IsInf(e.Relative, 0) {
			t.Fatalf("%+v", e)
		}
	}
}
