package words

import (
	"fmt"

	"minim/report/page"
)

// clauses are parts of a sentence, or items of a list, each of which may be left out.
type clauses []string

// add says one in the manner of fmt, where it holds.
func (c *clauses) add(holds bool, format string, args ...any) {
	if holds {
		*c = append(*c, fmt.Sprintf(format, args...))
	}
}

// put says a text behind words, where there is a text.
func (c *clauses) put(words, text string) { c.add(text != "", "%s%s", words, text) }

// when is a text where something holds, and nothing where it does not.
func when(holds bool, text string) string { return either(holds, text, "") }

// either is the one text where something holds, and the other where it does not.
func either(holds bool, text, other string) string {
	if holds {
		return text
	}
	return other
}

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
