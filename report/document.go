package report

// document is a text for paper: blocks in their order. It is rendered as HTML or as
// Markdown. Every text in it is plain; whoever renders it escapes it.
type document struct {
	Title string
	// Kind of the document, by which the style sheet tells them apart.
	Kind   string
	Blocks []block
}

// block is a part of a document; its form names it in the page template.
type block interface{ Form() string }

type (
	// headline is the title at the top, with a line below it.
	headline struct{ Text, Below string }
	// sectionHead opens a section.
	sectionHead struct{ Text string }
	// bar is a warning that stands out, white on black, above what it is about.
	bar struct{ Text string }
	// paragraph is running text, or small print.
	paragraph struct {
		Text  string
		Small bool
	}
	// quotation stands apart, ready to be copied.
	quotation struct{ Text string }
	// instructionList is numbered.
	instructionList struct{ Items []string }
	// bulletList is a list.
	bulletList struct{ Items []string }
	// termList is labels with a text each.
	termList struct{ List []term }
	// tabular is a table. Columns from Numbers on, counted from 0, hold numbers; the row
	// Marked stands out, -1 for none.
	tabular struct {
		Caption string
		Head    []string
		Numbers int
		Rows    [][]string
		Marked  int
		// Class "form" has boxes to write in where cells are empty; "form steps" and
		// "form remarks" have their own widths.
		Class string
		// Struck are the rows of which the cell in column StruckCell is struck through.
		Struck     []bool
		StruckCell int
	}
	// picture is a PNG, with the words for those who cannot see it.
	picture struct {
		PNG                []byte
		File, Alt, Caption string
	}
	// labelSheet are small sheets to be cut out, all alike.
	labelSheet struct {
		Count int
		Lines []labelLine
	}
)

// term is a label and what it says.
type term struct{ Label, Text string }

// labelLine is a line of a label, of one of the sizes "name", "strength", "hazard" and
// "small".
type labelLine struct{ Size, Text string }

func (headline) Form() string        { return "headline" }
func (sectionHead) Form() string     { return "section" }
func (bar) Form() string             { return "bar" }
func (paragraph) Form() string       { return "paragraph" }
func (quotation) Form() string       { return "quotation" }
func (instructionList) Form() string { return "steps" }
func (bulletList) Form() string      { return "bullets" }
func (termList) Form() string        { return "terms" }
func (tabular) Form() string         { return "grid" }
func (picture) Form() string         { return "picture" }
func (labelSheet) Form() string      { return "labels" }

// IsStruck reports whether a cell is struck through.
func (t tabular) IsStruck(row, column int) bool {
	return row < len(t.Struck) && t.Struck[row] && column == t.StruckCell
}

func (d *document) add(blocks ...block) { d.Blocks = append(d.Blocks, blocks...) }

// section adds a heading and what belongs below it.
func (d *document) section(title string, blocks ...block) {
	d.add(sectionHead{title})
	d.add(blocks...)
}

// listed adds a section with a list, or nothing where the list is empty.
func (d *document) listed(title string, items []string) {
	if len(items) > 0 {
		d.section(title, bulletList{items})
	}
}
