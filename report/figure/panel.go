package figure

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"

	"minim/report/words"
	"minim/report/words/influence"
	"minim/report/words/picture"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// What a panel shows of a budget: so many influences, none of them smaller than
// the least share; a single one that would be left over is shown as well.
const (
	mostBars   = 6
	leastShare = 0.01
)

// panel is a route with its bars and the words beside them.
type panel struct {
	result *route.Result
	bars   []bar
	words  []paragraph
	height vg.Length
}

// bar is one influence, or all that are not shown.
type bar struct {
	words           string
	share           float64
	shared, assumed bool
	// rest counts the influences of the last bar; 0 for an influence.
	rest int
}

func newPanel(c *route.Comparison, r *route.Result) *panel {
	p := &panel{result: r, bars: barsOf(r.Analytic.Budget)}
	name, strength := nameText, smallText
	if r == &c.Results[c.Verdict.Use] {
		name = boldText
	}
	if !r.Informative {
		strength = smallBold
	}
	add := func(style text.Style, words string) {
		p.words = append(p.words, paragraph{style, wrap(style, namesWide, 2, words)})
	}
	add(name, r.Route.Name)
	gives, chance, _ := picture.Beside(c.Prep, r)
	add(strength, gives)
	if len(r.Inside) > 0 {
		add(smallText, chance+" "+picture.Labels.InShort)
	}
	if math.Abs(r.AssumedShare) >= leastShare {
		add(smallText, picture.Labels.AssumedShare+shareOfVariance(r.AssumedShare))
	}
	p.height = panelGap + max(heightOf(p.words), lineHeight*vg.Length(max(1, len(p.bars))))
	return p
}

// barsOf chooses and words the bars of a budget, the largest first. Influences
// that take no part are left out.
func barsOf(all []uncertainty.Contribution) []bar {
	lines := slices.DeleteFunc(slices.Clone(all), func(l uncertainty.Contribution) bool { return l.Share == 0 })
	slices.SortStableFunc(lines, func(a, b uncertainty.Contribution) int {
		return cmp.Compare(math.Abs(b.Share), math.Abs(a.Share))
	})
	shown := 0
	for shown < min(mostBars, len(lines)) && math.Abs(lines[shown].Share) >= leastShare {
		shown++
	}
	if shown == len(lines)-1 {
		shown++
	}
	var bars []bar
	for i := range lines[:shown] {
		l := &lines[i]
		bars = append(bars, bar{words: called(lines, l), share: l.Share, shared: l.Uses > 1, assumed: l.Assumed})
	}
	if shown < len(lines) {
		rest := bar{rest: len(lines) - shown}
		for i := range lines[shown:] {
			rest.share += lines[shown+i].Share
		}
		rest.words = fmt.Sprintf(picture.Labels.RestOf, rest.rest)
		bars = append(bars, rest)
	}
	return bars
}

// called is the name of a line, cut to its column. When others of the budget
// have the same name, its owner is added, and never cut away by a long name.
func called(lines []uncertainty.Contribution, l *uncertainty.Contribution) string {
	const wide = influencesTo - influencesFrom
	name, same := influence.Name(&l.Influence), 0
	for i := range lines {
		if influence.Name(&lines[i].Influence) == name {
			same++
		}
	}
	if same < 2 {
		return cut(smallInk, wide, clean(name))
	}
	whose := influence.Owner(l.Owner)
	if l.Owner.Kind == uncertainty.OneUse {
		whose = fmt.Sprintf("step %d", l.Owner.Step)
	}
	owner := " (" + cut(smallInk, wide/2, clean(whose)) + ")"
	return cut(smallInk, wide-smallInk.Width(owner), clean(name)) + owner
}

// shareOfVariance prints a share with a true minus sign.
func shareOfVariance(x float64) string { return strings.Replace(words.Share(x), "-", "−", 1) }

// largest are the influences of the first two bars.
func largest(r *route.Result) (list []string) {
	bars := barsOf(r.Analytic.Budget)
	for _, b := range bars[:min(2, len(bars))] {
		list = append(list, b.words+" ("+shareOfVariance(b.share)+")")
	}
	return list
}
