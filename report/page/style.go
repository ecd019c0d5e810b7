package page

import (
	_ "embed"
	"fmt"
	"strings"
	"text/template"
)

var (
	//go:embed foot.css
	footText  string
	footStyle = template.Must(template.New("foot").Funcs(template.FuncMap{"css": quotedCSS}).Parse(footText))
)

// style is what a page needs beside the style sheet of all pages.
func (p *Page) style() string {
	var text strings.Builder
	for _, b := range p.Blocks {
		if l, is := b.(Labels); is {
			text.WriteString(l.style())
		}
	}
	if p.Foot != "" {
		if err := footStyle.Execute(&text, p); err != nil {
			panic(err) // a template of the program, and texts
		}
	}
	return text.String()
}

// quotedCSS is a text between the quotation marks of a style sheet, where it ends nothing: all of ASCII but
// letters, digits and spaces stands by its number.
func quotedCSS(text string) string {
	var quoted strings.Builder
	for _, r := range visible(text) {
		switch {
		case r == ' ' || r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' || r >= 0xa0:
			quoted.WriteRune(r)
		default:
			fmt.Fprintf(&quoted, "\\%x ", r)
		}
	}
	return quoted.String()
}
