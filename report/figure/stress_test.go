package figure

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment"
	"minim/report/webtest"
	"minim/report/words"
	"minim/uncertainty"
	read "minim/uncertainty/bench"
	"minim/uncertainty/contest"
	"minim/uncertainty/record"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// stressPreps is how many preps are drawn with MINIM_FIGURES set; without it every sixth is.
const stressPreps, stressStep = 30, 6

// letters of five scripts: Latin with marks, Greek, Hebrew, Han, Devanagari (invented words).
var alphabets = []string{"Lösung von Färbemitteln und Spülung ", "διάλυμα χρωστικής ", "תמיסה של צבע ", "染料溶液二次希釈", "रंग का घोल "}

// nameOf is a name of so many letters in a script, with a number, so that no two are the same.
func nameOf(script, letters, i int) string {
	text := []rune(strings.Repeat(alphabets[script%len(alphabets)], letters))
	number := fmt.Sprint(i)
	return strings.TrimSpace(string(text[:max(1, letters-len(number))])) + number
}

// stressed is the i-th prep that a figure must stand: of 1, 12 or 30 routes, names of 1 to 200
// letters in five scripts, strengths from 1e-9 to 1e3 g/L, on target and off it, and limits of all kinds.
func stressed(i int) string {
	routes := []int{1, 12, 30}[i/2%3]
	letters := 1 + 199*i/(stressPreps-1)
	molar := math.Pow(10, 6*float64(i)/(stressPreps-1))
	target, unit := 0.4/molar, "mol/L" // what the routes make of such a substance
	if i%2 == 1 {
		target, unit = math.Pow(10, -9+12*float64(i-1)/(stressPreps-2)), "g/L"
	}
	limits := []string{"tolerance = \"8 % of target\"", "tolerance = \"0.1 % of target\"", "tolerance = \"80 % of target\"", "",
		fmt.Sprintf("not-above = \"%.6g %s\"", 1.05*target, unit), fmt.Sprintf("not-below = \"%.6g %s\"", 0.95*target, unit)}[i%6]
	text := fmt.Sprintf("title = %q\nvolume = \"15 mL\"\ntarget = \"%.6g %s\"\n%s\n[solute]\nname = %q\nmolar-mass = \"%.6g g/mol\"\nassay = { from = \"97 %%\", to = \"100 %%\" }\n[solvent]\nname = \"water\"\n",
		nameOf(i+1, letters, i), target, unit, limits, nameOf(i, letters, i), molar)
	for k := range routes {
		text += fmt.Sprintf("\n[[route]]\nname = %q\nsteps = [%s]\n", nameOf(i+k, max(letters, 3), k), []string{fine, rough, straight, direct, cannot}[k%5])
	}
	return text
}

// figuresOf are all figures of a prep, by their names.
func figuresOf(t *testing.T, text string) map[string]*Figure {
	t.Helper()
	kit, err := read.ParseKit("bench.toml", []byte(bench))
	require.NoError(t, err)
	p, err := read.ParsePrep("stress.toml", []byte(text), kit)
	require.NoError(t, err, text)
	settings := uncertainty.Settings{Trials: 10_000, Seed: 1, Coverage: 0.95}
	c, err := contest.Compare(context.Background(), p, "", settings)
	require.NoError(t, err)
	require.GreaterOrEqual(t, c.Verdict.Use, 0)
	list := make(map[string]*Figure)
	add := func(name string, f *Figure, err error) {
		require.NoError(t, err, name)
		list[name] = f
	}
	for name, draw := range kinds {
		f, err := draw(c)
		add(name, f, err)
	}
	for name, draw := range ofUsed {
		f, err := draw(c, useOf(c))
		add(name, f, err)
	}
	f, err := SpreadChanged(c, c)
	add("changed", f, err)
	f, err = Changes(bought(c))
	add("money", f, err)
	if plan := planned(c); len(newTrade(hand{}, plan).front) > 0 {
		f, err = Trade(plan)
		add("routes", f, err)
	}
	for name, off := range map[string]float64{"ten": 10, "half": 0.5} {
		b := offBy(t, p, settings, off)
		f, err := Batch(b)
		add(name, f, err)
		if b.Rescue != nil && name == "ten" {
			f, err = Ways(b.Rescue)
			add("ways", f, err)
		}
	}
	parts, err := SpreadParts(c, 8)
	require.NoError(t, err)
	if len(parts) > 1 {
		add("part", parts[len(parts)-1], nil)
	}
	changed, other := *c, *p
	other.Changes = []equipment.Change{{Name: "rough scale", Key: "readability", Value: "0.001 g"}}
	changed.Prep = &other
	for name, draw := range ofUsed {
		f, err := draw(&changed, useOf(c))
		add(name+" of a changed kit", f, err)
	}
	return list
}

// offBy is a batch of the first route, of which so many times as much was weighed.
func offBy(t *testing.T, p *route.Prep, s uncertainty.Settings, times float64) *words.Batch {
	t.Helper()
	r, err := read.ParseRecord("r", []byte(fmt.Sprintf("route = %q\n[entries]\n1 = { step = 1, weigh = \"%.4f g\", by = \"AK\" }\n2 = { step = 4, by = \"AK\" }\n", p.Routes[0].Name, 0.25*times)), p)
	require.NoError(t, err)
	m, err := record.Evaluate(context.Background(), r, s)
	require.NoError(t, err)
	b := &words.Batch{Made: m}
	if found, err := rescue.Find(context.Background(), p, r.Made, s); err == nil {
		b.Rescue = found
	}
	return b
}

// overlaps are the texts of each figure on a page that overlap, or leave it: by the boxes that the
// browser has drawn, whose heights are those of the letters, whatever font stands in.
const overlaps = `
const list = [];
for (const svg of document.querySelectorAll("svg")) {
	const page = svg.getBoundingClientRect(), scale = page.width / svg.viewBox.baseVal.width, boxes = [];
	for (const text of svg.querySelectorAll("text")) {
		if (!text.textContent.trim()) continue;
		const r = text.getBoundingClientRect(), size = parseFloat(getComputedStyle(text).fontSize) * scale;
		const p = svg.createSVGPoint();
		p.x = text.x.baseVal[0].value; p.y = text.y.baseVal[0].value;
		const at = p.matrixTransform(text.getScreenCTM());
		boxes.push({words: text.textContent, left: r.left, right: r.right, top: at.y - 0.7 * size, bottom: at.y + 0.14 * size, size: size / scale});
	}
	boxes.forEach((a, i) => {
		if (a.left < page.left - 0.5 || a.right > page.right + 0.5 || a.top < page.top - 0.5 || a.bottom > page.bottom + 0.5)
			list.push(svg.parentNode.id + ": " + a.words + " leaves the picture");
		for (const b of boxes.slice(0, i))
			if (a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 0.5 && b.top < a.bottom - 0.5)
				list.push(svg.parentNode.id + ": " + a.words + " / " + b.words);
	});
}
return list;`

// No two texts of a figure overlap, and none leaves it, in a browser with any font.
func TestFiguresInABrowser(t *testing.T) {
	skipIfSlow(t)
	b := webtest.Start(t)
	step := stressStep
	if os.Getenv("MINIM_FIGURES") != "" {
		step = 1
	}
	texts := 0
	for i := 0; i < stressPreps; i += step {
		k := i + i/stressStep%2*(step/stressStep) // those on target and off it
		page := "<!DOCTYPE html><meta charset=utf-8><title>figures</title>"
		for name, f := range figuresOf(t, stressed(k)) {
			for kind, drawn := range map[string]*Figure{"svg": f, "pixels": f.InPixels()} {
				raw, err := drawn.SVG()
				require.NoError(t, err)
				_, svg, _ := strings.Cut(string(raw), "<svg ")
				page += fmt.Sprintf("\n<div id=\"%d-%s-%s\"><svg %s</div>", k, name, kind, svg)
				checkType(t, svg, fmt.Sprintf("%d %s", k, name))
			}
		}
		path := filepath.Join(t.TempDir(), "figures.html")
		for _, font := range []string{"sans-serif", "monospace"} {
			other := strings.ReplaceAll(page, "'Liberation Sans',Arial,Helvetica,sans-serif", font)
			require.NoError(t, os.WriteFile(path, []byte(other), 0o644))
			b.Open("file://" + path)
			texts += int(b.Run(`return document.querySelectorAll("text").length`).(float64))
			assert.Empty(t, b.Run(overlaps), font)
		}
	}
	assert.Greater(t, texts, 5000)
}

// checkType holds that no letter is smaller than 7.9 points, exponents left out; a report on A4
// prints a figure at nine tenths of its size.
func checkType(t *testing.T, svg, name string) {
	t.Helper()
	for _, text := range strings.Split(svg, "<text ")[1:] {
		size := fontSize.FindStringSubmatch(text)
		if size[1] == "8" || strings.HasPrefix(size[1], "1") || strings.HasPrefix(size[1], "9") {
			continue
		}
		_, words, _ := strings.Cut(text, ">")
		words, _, _ = strings.Cut(words, "<")
		assert.True(t, strings.Trim(words, "−0123456789") == "", "%s: %q in %s points", name, words, size[1])
	}
}
