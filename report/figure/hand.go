package figure

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"minim/report/words/clause"
	"minim/report/words/picture"
	"minim/uncertainty/route"
)

// hand is how words are written: the zero value as they are, for an SVG, whose reader has letters
// for them. For pixels names with letters that the font does not have become numbers.
type hand struct {
	names *strings.Replacer
	// Note says so; "" where there is no such name.
	note string
}

// clean makes words fit for drawing.
func (h hand) clean(words string) string {
	words = clean(words)
	if h.names == nil {
		return words
	}
	return withoutForeign(h.names.Replace(words))
}

// withoutForeign puts an ellipsis in place of each part that the font cannot show.
func withoutForeign(words string) string {
	var b strings.Builder
	for _, r := range runs(words) {
		if r.unshown() {
			b.WriteString("…")
		} else {
			b.WriteString(r.words)
		}
	}
	return b.String()
}

// unshown reports whether a run has letters, or marks on them, that the font cannot show.
func (r run) unshown() bool {
	return r.foreign || strings.ContainsFunc(r.words, func(c rune) bool { return unicode.Is(unicode.M, c) && !inFont(c) })
}

func hasForeign(words string) bool {
	return slices.ContainsFunc(runs(clean(words)), run.unshown)
}

// forPixels is the hand that writes about a prep and its routes in pixels.
func forPixels(p *route.Prep, routes []string) (h hand) {
	type pair struct{ name, number string }
	var pairs []pair
	number := func(kind string, names []string) {
		for i, name := range names {
			if name = clean(name); hasForeign(name) {
				pairs = append(pairs, pair{name, picture.Numbered(kind, i, len(names))})
			}
		}
	}
	own := clause.Each(p.Routes, func(r *route.Route) string { return r.Name })
	number(picture.Route, append(own, slices.DeleteFunc(routes, func(name string) bool { return slices.Contains(own, name) })...))
	number(picture.Solute, []string{p.Solute.Name})
	number(picture.Solvent, []string{p.Solvent.Name})
	number(picture.Instrument, instruments(p))
	number(picture.Stock, materials(p))
	// A name that holds another comes first.
	slices.SortStableFunc(pairs, func(a, b pair) int { return cmp.Compare(len(b.name), len(a.name)) })
	var list, numbers []string
	for _, x := range pairs {
		list = append(list, x.name, x.number)
		if !slices.Contains(numbers, x.number) {
			numbers = append(numbers, x.number)
		}
	}
	h.names = strings.NewReplacer(list...)
	if len(pairs) > 0 || hasForeign(p.Title) || hasForeign(p.Note) {
		h.note = picture.NotShown
	}
	return h
}

func instruments(p *route.Prep) (names []string) {
	if p.Kit == nil {
		return nil
	}
	for _, b := range slices.Concat(p.Kit.Balances, p.Kit.Candidates.Balances) {
		names = append(names, b.Name)
	}
	for _, m := range slices.Concat(p.Kit.Measures, p.Kit.Candidates.Measures) {
		names = append(names, m.Name)
	}
	return names
}

func materials(p *route.Prep) (names []string) {
	for _, s := range p.Stocks {
		names = append(names, s.Name)
	}
	for _, k := range p.Packets {
		names = append(names, k.Name)
	}
	return names
}

// lettered lays a figure out as an SVG, and again for pixels where that has names that become
// numbers.
func lettered(p *route.Prep, routes []string, lay func(h hand) (*Figure, error)) (*Figure, error) {
	f, err := lay(hand{})
	if err != nil {
		return nil, err
	}
	if h := forPixels(p, routes); h.note != "" {
		f.pixels = func() *Figure {
			other, err := lay(h)
			if err != nil {
				panic("figure: what can be laid out as an SVG can be as pixels: " + err.Error())
			}
			return other
		}
	}
	return f, nil
}

// namesOf are the names of the routes of a comparison.
func namesOf(results []*route.Result) (names []string) {
	for _, r := range results {
		names = append(names, r.Route.Name)
	}
	return names
}
