package page

import (
	_ "embed"
	"strconv"
	"strings"
	"text/template"
)

// Labels are small sheets to be cut out, or that come cut.
type Labels struct {
	List []Label
	LabelLayout
}

// Label is so many small sheets that are alike.
type Label struct {
	Count int
	// Of what it is, for messages.
	Of    string
	Lines []LabelLine
}

// LabelLine is a line of a label. Its style is its size: "bar", "name", "strength", "hazard" and
// "small".
type LabelLine struct {
	Paragraph
	// Short says the same in fewer words, and Shortest in the fewest, for small labels; "": there
	// is no such way.
	Short, Shortest string
	// May be left out where there is no room.
	May bool
	// Field says what is to be written into a field to write in, beside what is Known.
	Field, Known string
}

// markdown writes labels once each, parted by rules.
func (l Labels) markdown(m *markdown) {
	for i, label := range l.List {
		if i > 0 {
			m.WriteString("\n---\n")
		}
		for _, line := range label.Lines {
			line.markdown(m)
		}
	}
}

func (l Labels) text(w *screen) {
	for i, label := range l.List {
		if i > 0 {
			w.gap()
		}
		for _, line := range label.Lines {
			w.hang("", line.Text, 0)
		}
	}
}

// set are the labels as HTML has them, on as many sheets as they take: one that goes on where no
// sheet is stated.
func (l Labels) set() (sheets [][]*setLabel) {
	most := -1
	if l.Sheet != nil {
		most = l.Sheet.Columns * l.Sheet.Rows
	}
	sheets = make([][]*setLabel, 1)
	for i := range l.List {
		set := l.fit(&l.List[i])
		for range l.List[i].Count {
			if len(sheets[len(sheets)-1]) == most {
				sheets = append(sheets, nil)
			}
			sheets[len(sheets)-1] = append(sheets[len(sheets)-1], set)
		}
	}
	return sheets
}

// LeftOut are the texts of lines for which there was no room, each once.
func (l Labels) LeftOut() (list []string) {
	seen := make(map[string]bool)
	for i := range l.List {
		set := l.fit(&l.List[i])
		for _, line := range l.List[i].Lines {
			if line.May && set.level > 0 && !seen[line.Text] {
				seen[line.Text] = true
				list = append(list, line.Text)
			}
		}
	}
	return list
}

var (
	//go:embed labels.css
	labelsText  string
	labelsStyle = template.Must(template.New("labels").Funcs(template.FuncMap{"mm": mm}).Parse(labelsText))
)

// style is where labels stand on paper, as the style sheet says it.
func (l Labels) style() string {
	of := struct {
		Size  Size
		Grows bool
		Low   float64
		Sheet *LabelSheet
	}{Sheet: l.Sheet}
	if of.Size, of.Grows = l.size(); of.Size.Height < lowLabel {
		of.Low = lowField
	}
	var text strings.Builder
	if err := labelsStyle.Execute(&text, of); err != nil {
		panic(err) // a template of the program, and figures
	}
	return text.String()
}

func mm(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) + "mm" }
