package page

import "slices"

// Page is a result in blocks. It is rendered as [Page.Text], [Page.Markdown] or [Page.HTML].
type Page struct {
	// Title of the HTML page, which shows beside it and not in it.
	Title string
	// Kind of the page, by which the style sheet tells them apart.
	Kind   string
	Blocks []Block
}

// Add adds blocks at the end.
func (p *Page) Add(blocks ...Block) { p.Blocks = append(p.Blocks, blocks...) }

// Section adds a heading and what belongs below it.
func (p *Page) Section(title string, blocks ...Block) {
	p.Add(Heading{Text: title})
	p.Add(blocks...)
}

// Listed adds a section with a list, or nothing where the list is empty.
func (p *Page) Listed(title string, items []string) {
	if len(items) > 0 {
		p.Section(title, Bullets{Items: items})
	}
}

// format is one of the ways to render a page.
type format int

const (
	asText format = iota
	asMarkdown
	asHTML
)

// TextOnly are blocks that Markdown and HTML leave out.
func TextOnly(blocks ...Block) Block { return only{[]format{asText}, blocks} }

// NotText are blocks that the text screen leaves out.
func NotText(blocks ...Block) Block { return only{[]format{asMarkdown, asHTML}, blocks} }

// shown are the blocks that a format shows.
func shown(in format, blocks []Block) (list []Block) {
	for _, b := range blocks {
		switch o, is := b.(only); {
		case !is:
			list = append(list, b)
		case slices.Contains(o.formats, in):
			list = append(list, shown(in, o.blocks)...)
		}
	}
	return list
}
