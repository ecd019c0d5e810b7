package page

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"html/template"
	"reflect"
	"regexp"
	"strings"

	"minim/equipment/quantity"
)

var (
	//go:embed page.html
	pageText string
	//go:embed page.css
	styleText string

	pageTemplate = template.Must(template.New("page").Funcs(template.FuncMap{
		"times": func(n int) []struct{} { return make([]struct{}, n) },
		"clean": visible,
		"parts": datesApart,
		"shown": func(blocks []Block) []Block { return shown(false, blocks) },
		"form":  func(b Block) string { return reflect.Indirect(reflect.ValueOf(b)).Type().Name() },
		"words": Heading.words, "joined": Facts.joined, "source": Figure.source,
		"heads": (*Table).heads, "isNumber": (*Table).isNumber, "isLong": (*Table).isLong, "isStruck": (*Table).isStruck, "across": (*Table).across, "name": Row.name,
	}).Parse(pageText))
)

// htmlPage is what the page template is filled with.
type htmlPage struct {
	*Page
	Style  template.CSS
	Policy string
}

// HTML renders a page as one file that opens without a network: the style sheet and
// the pictures are in it. Its policy permits no script, and nothing from elsewhere.
func (p *Page) HTML() ([]byte, error) {
	sum := sha256.Sum256([]byte(styleText))
	policy := "default-src 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'; img-src data:; base-uri 'none'; form-action 'none'"
	var out bytes.Buffer
	err := pageTemplate.Execute(&out, htmlPage{p, template.CSS(styleText), policy})
	return out.Bytes(), err
}

// source is the picture as a URL that holds it.
func (f Figure) source() template.URL {
	return template.URL("data:image/png;base64," + base64.StdEncoding.EncodeToString(f.PNG))
}

// visible leaves out of a text what cannot be seen: control characters, and marks that
// turn the direction of writing. A break of the line becomes a space. A number is not
// parted from the word after it.
func visible(text string) string {
	return afterNumber.ReplaceAllString(hidden.Replace(quantity.OneLine(text)), "$1\u00a0")
}

// datesApart is a text in parts of which some are dates, which no line is to break at their
// hyphens.
func datesApart(text string) (parts []datePart) {
	text = visible(text)
	for at := date.FindStringIndex(text); at != nil; at = date.FindStringIndex(text) {
		parts = append(parts, datePart{text[:at[0]], text[at[0]:at[1]]})
		text = text[at[1]:]
	}
	return append(parts, datePart{Before: text})
}

// datePart is a date, "" for none, with the text before it.
type datePart struct{ Before, Date string }

var (
	afterNumber = regexp.MustCompile(`(\d) `)
	date        = regexp.MustCompile(`\b\d{4}-\d\d-\d\d\b`)
	// hidden is what stands for such a character in a text that was for a screen.
	hidden = strings.NewReplacer("\uFFFD", "")
)
