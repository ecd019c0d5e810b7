package report

import (
	"slices"

	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/route"
)

// Compare is the page of a comparison: what is wanted, which route to use, all routes, why
// the others are not used, what the figures rest on, and cautions. When before is not nil, c is
// the comparison on a changed kit, and before that on the kit as it is; the page then says what
// the change does. HTML holds the pictures.
func Compare(c, before *route.Comparison, pictures ...page.Figure) *page.Page {
	s := words.Compared(c, before)
	return screen(s, s.Result, s.Routes, pictured(pictures), s.Changes, s.Ladder, s.Spoils, s.Reasons, s.Footing)
}

// screen is the page of a command.
func screen(s *words.Screen, parts ...[]page.Block) *page.Page {
	return &page.Page{Title: s.Title, Kind: "screen", Blocks: append(s.Opening, slices.Concat(parts...)...)}
}

// pictured are the pictures that HTML holds.
func pictured(pictures []page.Figure) (list []page.Block) {
	for _, p := range pictures {
		list = append(list, p)
	}
	return list
}
