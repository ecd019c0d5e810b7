package answer

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/page"
	"minim/report/words"
)

// strengths are those of the two bottles, in % w/v: constructed.
func (c *labelCase) strengths() []float64 {
	if c.done == "batch outside" {
		return []float64{10, 2}
	}
	return []float64{10, 1}
}

// wordsAt are the words that hold at a strength, sorted. A strength at which a statement
// begins is uncertain, so that the words hold on either side of it. A word is gone where a
// later statement that surely holds takes its place. What is weighed on the coarse scale
// could be nothing or up to three times as much (2.5 g within some 5 g), so that no statement
// surely holds.
func (c *labelCase) wordsAt(strength float64) (words []string) {
	unsure := c.done == "plan that says nothing"
	for _, h := range c.hazards {
		holds := strength >= h.from || unsure && h.from < 3*strength
		gone := slices.ContainsFunc(c.hazards, func(g statedFrom) bool {
			return g.replaces && g.from > h.from && strength > g.from && !unsure
		})
		if holds && !gone {
			words = append(words, h.words...)
		}
	}
	if slices.Contains(words, "none known") && len(words) > 1 {
		words = slices.DeleteFunc(words, func(w string) bool { return w == "none known" })
	}
	slices.Sort(words)
	return slices.Compact(words)
}

// quoted are words as the label has them, sorted.
func quotedSorted(words []string, none string) []string {
	switch {
	case len(words) == 0:
		return []string{none}
	case slices.Equal(words, []string{"none known"}):
		return []string{"stated by the user: none known"}
	}
	return slices.Sorted(slices.Values(words))
}

// hazardsOn are the hazard lines of a label, by what stands before the colon; the words of
// the line sorted, and what follows after a semicolon apart.
func hazardsOn(l page.Label) (lines map[string][]string, doubts map[string]string) {
	lines, doubts = make(map[string][]string), make(map[string]string)
	for _, line := range l.Lines {
		if line.Style == "hazard" {
			what, words, _ := strings.Cut(line.Text, ": ")
			words, doubts[what], _ = strings.Cut(words, "; ")
			if strings.HasPrefix(words, "not stated") || strings.HasPrefix(words, "stated by") {
				lines[what] = []string{words}
				continue
			}
			lines[what] = slices.Sorted(slices.Values(strings.Split(words, ", ")))
		}
	}
	return lines, doubts
}

func texts(l page.Label, size string) (list []string) {
	for _, line := range l.Lines {
		if line.Style == size {
			list = append(list, line.Text)
		}
	}
	return list
}

// thorough is false under the race detector.
var thorough = true

// skipIfSlow leaves out under the race detector what is worked out for many cases.
func skipIfSlow(t *testing.T) {
	t.Helper()
	if !thorough {
		t.Skip("run without the race detector")
	}
}

// A label says all that the file knows of the solution in its bottle and of what is in it,
// and never takes one for the other.
func TestLabelsSayWhatTheFileKnows(t *testing.T) {
	skipIfSlow(t)
	cases := labelCases()
	require.Greater(t, len(cases), 1200)
	done := make(map[string]words.Paper)
	for _, c := range cases {
		t.Run(fmt.Sprintf("%+v", c), func(t *testing.T) {
			p := c.paper(t, done)
			blocks := labelPage(p, words.Label{Count: 3}).Blocks // what may not meet stands above
			labels := blocks[len(blocks)-1].(page.Labels).List
			require.Len(t, labels, 2)
			for i, strength := range c.strengths() {
				c.checkHazards(t, labels[i], i == 1, strength)
				c.checkRest(t, labels[i], i, strength)
			}
			assert.Equal(t, []int{1, 3}, []int{labels[0].Count, labels[1].Count})
			c.checkCautions(t, strings.Join(below[page.Bullets](t, p, "Cautions").Items, " "))
			c.checkBars(t, p)
		})
	}
}

// checkHazards: the words for the strength, those of the solute, and those of each liquid
// that is not plain water; nothing else.
func (c *labelCase) checkHazards(t *testing.T, l page.Label, last bool, strength float64) {
	want := map[string][]string{
		"this solution":                      quotedSorted(c.wordsAt(strength), "not stated, treat as undiluted"),
		"contains stuff, which undiluted is": quotedSorted(c.solute, "not stated, treat as unknown"),
	}
	if c.inAcetone() {
		want["contains acetone, which undiluted is"] = []string{"not stated, treat as unknown"}
	}
	if len(c.solventWords) > 0 || !strings.Contains(strings.ToLower(c.solvent), "water") {
		want["contains "+c.solvent+", which undiluted is"] = quotedSorted(c.solventWords, "not stated, treat as unknown")
	}
	if slices.Contains(c.wordsAt(strength), "gives off gas") || slices.Contains(c.solute, "Gives off gas") {
		want["vented closure"] = []string{"gives off gas"}
	}
	lines, doubts := hazardsOn(l)
	assert.Equal(t, want, lines)
	assert.Len(t, texts(l, "hazard"), len(want))
	assert.Equal(t, []string{"stuff in " + map[bool]string{true: "acetone and "}[c.inAcetone()] + c.solvent}, texts(l, "name"))
	doubt := ""
	if len(c.wordsAt(strength)) > 0 && (c.done == "plan that says nothing" || last && c.done == "batch outside") {
		doubt = "treat as undiluted as well"
	}
	assert.Contains(t, doubts["this solution"], doubt)
	assert.Equal(t, doubt == "", doubts["this solution"] == "")
}

var harmlessWords = regexp.MustCompile(`(?i)no hazard|harmless|not hazardous|is safe|weaker than`)

// checkRest: the bar, the strength, which bottle, from when, and who decides.
func (c *labelCase) checkRest(t *testing.T, l page.Label, i int, strength float64) {
	all := strings.Join(slices.Concat(texts(l, "bar"), texts(l, "name"), texts(l, "hazard"), texts(l, "small")), "\n")
	assert.NotRegexp(t, harmlessWords, all)
	bars := map[string]string{
		"good plan": "", "batch inside": "", "bad plan": "NOT GOOD ENOUGH", "plan that says nothing": "SAYS ALMOST NOTHING", "batch outside": "OUTSIDE",
	}
	assert.Equal(t, bars[c.done] == "", len(texts(l, "bar")) == 0)
	if bars[c.done] != "" {
		assert.Regexp(t, "^"+bars[c.done]+`: .*chance that .* is (under )?[0-9.]+ in 100, 95 asked for$`, texts(l, "bar")[0])
	}
	if c.done != "plan that says nothing" {
		assert.Regexp(t, fmt.Sprintf(`^\(?(%v|%v)[.0-9]* .*%% w/v`, strength, strength-0.001), strings.Replace(texts(l, "strength")[0], "9.9", "10.", 1))
	} else {
		assert.Regexp(t, `^strength not known: step 1 weighs`, texts(l, "strength")[0])
	}
	small, step := texts(l, "small"), 2+2*i
	if c.stock {
		step++
	}
	for _, h := range c.hazards {
		if strength == h.from {
			assert.Regexp(t, fmt.Sprintf("either side of .*%v %% w/v", h.from), strings.Join(small, "\n"))
		}
	}
	purpose := []string{fmt.Sprintf("bottle 1, from step %d, stock for bottle 2 (step %d)", step, step+1), fmt.Sprintf("bottle 2, from step %d, the solution wanted", step)}
	assert.Contains(t, small, purpose[i])
	if c.batch() {
		assert.Contains(t, small, fmt.Sprintf("made 2026-11-2%d · by ______", step))
	} else {
		assert.Contains(t, small, "made ____________ · by ______")
	}
	assert.Equal(t, "The safety data sheet and the local rules for labels decide what must stand here.", small[len(small)-1])
}

// foundOn is what the label of the first bottle says above all else.
func foundOn(p *words.Paper) string {
	blocks := labelPage(p, words.Label{Count: 1}).Blocks
	return strings.Join(texts(blocks[len(blocks)-1].(page.Labels).List[0], "bar"), "; ")
}

// checkBars: what falls short stands above all else on every paper, and in what is quoted.
func (c *labelCase) checkBars(t *testing.T, p *words.Paper) {
	found := foundOn(p)
	for _, d := range []*page.Page{reportPage(p), sheetPage(p, nil)} {
		first, _ := d.Blocks[2*len(words.Stops(p.Prep))].(page.Paragraph) // what may not meet stands above
		assert.Equal(t, found != "", first.Style == "bar")
		assert.Equal(t, found, first.Text)
	}
	assert.Equal(t, found != "", strings.HasPrefix(below[page.Paragraph](t, p, "Method, to be quoted").Text, found+". "))
}

// A bar is the first that is seen of a page, and the first line of its Markdown.
func TestBarsInHTMLAndMarkdown(t *testing.T) {
	c := labelCase{solvent: "water", done: "bad plan"}
	p := c.paper(t, make(map[string]words.Paper))
	l := words.Label{Count: 2}
	for _, d := range []*page.Page{reportPage(p), sheetPage(p, nil), labelPage(p, l)} {
		html, err := d.HTML()
		require.NoError(t, err)
		_, body, _ := strings.Cut(string(html), "<main>")
		first := regexp.MustCompile(`<p class="[a-z]*">[^<]*`).FindString(body)
		assert.Equal(t, `<p class="bar">`+foundOn(p), strings.ReplaceAll(first, "\u00a0", " "))
		assert.True(t, strings.HasPrefix(string(d.Markdown()), "**"+foundOn(p)+"**\n"))
	}
	html, err := labelPage(p, l).HTML()
	require.NoError(t, err)
	assert.Equal(t, 3, strings.Count(string(html), `<p class="bar">`), "a bar on each label")
}

// checkCautions: the screen and the other papers say of every liquid what the labels say.
func (c *labelCase) checkCautions(t *testing.T, text string) {
	assert.NotRegexp(t, harmlessWords, strings.Replace(text, "nothing here says that the work is safe", "", 1))
	for _, words := range [][]string{c.solute, c.solventWords, c.wordsAt(10), c.wordsAt(c.strengths()[1])} {
		for _, w := range words {
			assert.Contains(t, text, w)
		}
	}
	assert.Equal(t, len(c.wordsAt(10)) == 0 || len(c.wordsAt(c.strengths()[1])) == 0, strings.Contains(text, "treat as undiluted."))
	if c.stock {
		assert.Contains(t, text, "ought (20 % w/v)")
		assert.Equal(t, c.inAcetone(), strings.Contains(text, "Acetone: not stated, treat as unknown."))
	}
}
