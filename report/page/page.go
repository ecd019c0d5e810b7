package page

// Page is a result in blocks. It is rendered as [Page.Text], [Page.Markdown] or [Page.HTML].
type Page struct {
	// Title of the HTML page, which shows beside it and not in it.
	Title string
	// Kind of the page, by which the style sheet tells them apart.
	Kind string
	// Foot stands on every printed page, beside its number; "" for neither.
	Foot   string
	Blocks []Block
}

// shown are the blocks that the text screen shows, or the other formats.
func shown(onScreen bool, blocks []Block) (list []Block) {
	for _, b := range blocks {
		switch o, is := b.(Only); {
		case !is:
			list = append(list, b)
		case o.Text == onScreen:
			list = append(list, shown(onScreen, o.Blocks)...)
		}
	}
	return list
}

// Refused says of a page with labels which has no room for what must stand on it.
func (p *Page) Refused() error {
	for _, b := range p.Blocks {
		if l, is := b.(Labels); is {
			return l.Refused()
		}
	}
	return nil
}
