package words

import (
	"minim/report/page"
	"minim/report/words/clause"
)

// clauses are parts of a sentence, or items of a list, each of which may be left out.
type clauses = clause.List

var when, either, count = clause.When, clause.Either[string], clause.Count

// said are the facts that have a text.
func said(facts ...fact) (list []fact) {
	for _, f := range facts {
		if f.Text != "" {
			list = append(list, f)
		}
	}
	return list
}

// section is a heading and what belongs below it.
func section(title string, blocks ...page.Block) []page.Block {
	return append([]page.Block{page.Heading{Text: title}}, blocks...)
}

// listed is a section with a list, or nothing where the list is empty.
func listed(title string, items []string) []page.Block {
	if len(items) == 0 {
		return nil
	}
	return section(title, page.Bullets{Items: items})
}

// lined is a section of lines with labels, or nothing where there are none.
func lined(title string, lines []fact) []page.Block {
	if len(lines) == 0 {
		return nil
	}
	return section(title, page.Facts{List: lines, Indent: 2, Bare: true})
}

func prose(text string) page.Block { return page.Paragraph{Text: text} }

func bar(text string) page.Block { return page.Paragraph{Text: text, Style: "bar"} }

func quotation(text string) page.Block {
	return page.Paragraph{Text: text, At: 4, Style: "quotation"}
}

// offScreen are blocks that the text screen leaves out.
func offScreen(blocks ...page.Block) page.Block { return page.Only{Blocks: blocks} }
