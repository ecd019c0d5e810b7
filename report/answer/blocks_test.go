package answer

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/page"
	"minim/report/words/note"
	"minim/uncertainty/route"
)

// blocksOf are the blocks of one kind on a page, in order.
func blocksOf[B page.Block](p *page.Page) (list []B) {
	for _, b := range p.Blocks {
		if is, ok := b.(B); ok {
			list = append(list, is)
		}
	}
	return list
}

// A route that aims elsewhere is said first, behind a label of its own, and its facts say
// where it aims (constructed).
func TestPageOfARouteThatAimsElsewhere(t *testing.T) {
	good := outcome(0.99, 4, 2)
	good.Route = &route.Route{Name: "good"}
	p := comparePage(aimed(0, off("a", -0.12, true), good), nil)
	paragraphs := blocksOf[page.Paragraph](p)
	require.Len(t, paragraphs, 3, "and by what is chosen")
	assert.Equal(t, "Wanted", paragraphs[0].Label)
	assert.Equal(t, "First", paragraphs[1].Label)
	assert.Contains(t, paragraphs[1].Text, "a comes out 12 % too weak")
	facts := blocksOf[page.Facts](p)
	assert.Contains(t, facts[0].List, page.Fact{"Aim", "the steps aim at 8.8, 12 % below the target"})
	require.Len(t, facts[1].List, 1, "why not the other")
	assert.Equal(t, "good", facts[1].List[0].Label)
}

// The one route to use is marked in the table, and no other; one that is not possible
// has a cell that runs across (constructed).
func TestMarkedRow(t *testing.T) {
	no := outcome(0, 4, 2)
	no.Route, no.Possible, no.Reason = &route.Route{Name: "b"}, false, note.Of("property-lacking", "", "the scale cannot carry it")
	table := blocksOf[*page.Table](comparePage(aimed(1, no, off("a", -0.12, true)), nil))[0]
	var marked []int
	for i := range table.Rows {
		if table.Rows[i].Marked {
			marked = append(marked, i)
		}
	}
	assert.Equal(t, []int{1}, marked)
	assert.Equal(t, []string{"b", "not possible"}, table.Rows[0].Cells)
	assert.Len(t, table.Rows[1].Cells, len(table.Head))
}

// What may not meet stands above all else, the example's mark before the title, and the
// cautions below all (constructed).
func TestOrderOfAPage(t *testing.T) {
	c := aimed(0, off("a", -0.12, true))
	c.Prep.Kit.Invented, c.Prep.Title = true, "Dye"
	p := comparePage(c, nil)
	var forms []string
	for _, b := range p.Blocks {
		form := fmt.Sprintf("%T", b)
		if p, is := b.(page.Paragraph); is {
			form += p.Style
		}
		forms = append(forms, form)
	}
	assert.Contains(t, forms, "page.Paragraphbar")
	assert.Less(t, slices.Index(forms, "page.Paragraphbar"), slices.Index(forms, "page.Title"))
	last, is := p.Blocks[len(p.Blocks)-1].(page.Notes)
	require.True(t, is)
	assert.Equal(t, "Cautions", last.Label)
	assert.Equal(t, "Dye", p.Title)
}
