package webtest

import (
	"bytes"
	"cmp"
	"compress/zlib"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/stretchr/testify/require"
)

// Sheet is a printed page. All lengths are in mm, from its left and upper edge.
type Sheet struct {
	Width, Height float64
	// Boxes are the rectangles that are filled or outlined, in the order in which they are printed.
	Boxes []Box
	// Pictures are where those of pixels stand.
	Pictures []Box
	// Texts are in that order as well: a line may be several.
	Texts []Text
}

// Box is a rectangle on paper.
type Box struct{ X, Y, Width, Height float64 }

// Text is a piece of a line: where it begins on its base line, and the size of its type in pt.
type Text struct {
	X, Y, Size float64
	Words      string
}

// Paper prints on paper of a size in cm, and returns what is printed on its pages. It reads PDF as
// Chromium writes it, and no other.
func (b *Browser) Paper(width, height float64) (sheets []Sheet) {
	b.t.Helper()
	pdf := &document{objects: make(map[string][]byte)}
	text := b.decode(b.send("POST", "/print", map[string]any{"page": map[string]float64{"width": width, "height": height}, "shrinkToFit": false, "background": true}))
	for _, m := range object.FindAllSubmatchIndex(text, -1) {
		rest := text[m[1]:]
		end := bytes.Index(rest, []byte("\nendobj"))
		if at := stream.FindSubmatchIndex(rest); at != nil && at[0] < end {
			length, err := strconv.Atoi(string(rest[at[2]:at[3]]))
			require.NoError(b.t, err)
			end = at[1] + length
		}
		pdf.objects[string(text[m[2]:m[3]])] = rest[:end]
	}
	for _, m := range object.FindAllSubmatch(text, -1) {
		if page := pdf.objects[string(m[1])]; pageObject.Match(page) {
			sheets = append(sheets, pdf.sheet(page))
		}
	}
	require.NotEmpty(b.t, sheets)
	return sheets
}

var (
	object   = regexp.MustCompile(`(?m)^(\d+) 0 obj\n`)
	stream   = regexp.MustCompile(`/Length (\d+)>> stream\r?\n`)
	mediaBox = regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`)
	contents = regexp.MustCompile(`/Contents (\d+) 0 R`)
	fontName = regexp.MustCompile(`/(F\d+) (\d+) 0 R`)
	unicodes = regexp.MustCompile(`/ToUnicode (\d+) 0 R`)
	mapping  = regexp.MustCompile(`<([0-9A-F]{4})>(?: <([0-9A-F]{4})>)? <([0-9A-F]+)>`)
	token    = regexp.MustCompile(`<<.*?>>|<[0-9A-Fa-f]*>|\((?:\\.|[^\\)])*\)|/[^\s/<\[(]*|[\[\]]|[^\s<\[\]/(]+`)
)

// document is a PDF by the numbers of its objects.
type document struct{ objects map[string][]byte }

// unpacked is the stream of an object.
func (d *document) unpacked(number string) []byte {
	o := d.objects[number]
	at := stream.FindIndex(o)
	if at == nil {
		return nil
	}
	r, err := zlib.NewReader(bytes.NewReader(o[at[1]:]))
	if err != nil {
		return o[at[1]:]
	}
	text, _ := io.ReadAll(r)
	return text
}

func (d *document) sheet(page []byte) Sheet {
	size := mediaBox.FindSubmatch(page)
	p := &printed{fonts: make(map[string]map[uint64]string), at: matrix{1, 0, 0, 1, 0, 0}}
	p.Width, p.Height = number(size[1])*25.4/72, number(size[2])*25.4/72
	for _, m := range fontName.FindAllSubmatch(page, -1) {
		letters := make(map[uint64]string)
		if u := unicodes.FindSubmatch(d.objects[string(m[2])]); u != nil {
			letters = lettersOf(d.unpacked(string(u[1])))
		}
		p.fonts[string(m[1])] = letters
	}
	for _, m := range contents.FindAllSubmatch(page, -1) {
		for _, t := range token.FindAllString(string(d.unpacked(string(m[1]))), -1) {
			p.take(t)
		}
	}
	return p.Sheet
}

// lettersOf a font by their codes.
func lettersOf(cmap []byte) map[uint64]string {
	letters := make(map[uint64]string)
	for _, m := range mapping.FindAllSubmatch(cmap, -1) {
		from, _ := strconv.ParseUint(string(m[1]), 16, 32)
		to := from
		if m[2] != nil {
			to, _ = strconv.ParseUint(string(m[2]), 16, 32)
		}
		for code := from; code <= to && code-from < 1<<16; code++ {
			first, _ := strconv.ParseUint(string(m[3][:4]), 16, 32)
			letters[code] = string(rune(first + code - from))
			if len(m[3]) > 4 { // a ligature
				second, _ := strconv.ParseUint(string(m[3][4:8]), 16, 32)
				letters[code] += string(rune(second))
			}
		}
	}
	return letters
}

// matrix turns lengths of the page's drawing into points from the lower left corner.
type matrix [6]float64

func (m matrix) times(n matrix) matrix {
	return matrix{
		m[0]*n[0] + m[1]*n[2], m[0]*n[1] + m[1]*n[3], m[2]*n[0] + m[3]*n[2], m[2]*n[1] + m[3]*n[3],
		m[4]*n[0] + m[5]*n[2] + n[4], m[4]*n[1] + m[5]*n[3] + n[5],
	}
}

// printed is a page while the operators of its content are taken one by one.
type printed struct {
	Sheet
	fonts    map[string]map[uint64]string
	operands []string
	at       matrix
	kept     []matrix
	text     matrix
	font     string
	size     float64
	path     []Box
}

func number[T ~string | ~[]byte](text T) float64 {
	x, _ := strconv.ParseFloat(strings.TrimSpace(string(text)), 64)
	return x
}

// last are the last n operands as numbers.
func (p *printed) last(n int) []float64 {
	list := make([]float64, n)
	for i := range list {
		if at := len(p.operands) - n + i; at >= 0 {
			list[i] = number(p.operands[at])
		}
	}
	return list
}

func (p *printed) take(t string) {
	switch t {
	case "q":
		p.kept = append(p.kept, p.at)
	case "Q":
		p.at, p.kept = p.kept[len(p.kept)-1], p.kept[:len(p.kept)-1]
	case "cm":
		p.at = matrix(p.last(6)).times(p.at)
	case "re":
		r := p.last(4)
		p.path = append(p.path, p.box(r[0], r[1], r[2], r[3]))
	case "f", "f*", "S", "B":
		p.Boxes = append(p.Boxes, p.path...)
		p.path = nil
	case "n":
		p.path = nil
	case "Do":
		p.Pictures = append(p.Pictures, p.box(0, 0, 1, 1))
	case "Tf":
		p.font, p.size = strings.TrimPrefix(p.operands[len(p.operands)-2], "/"), p.last(1)[0]
	case "Tm":
		p.text = matrix(p.last(6))
	case "Td":
		by := p.last(2)
		p.text = matrix{1, 0, 0, 1, by[0], by[1]}.times(p.text)
	case "Tj", "TJ":
		p.show()
	default:
		p.operands = append(p.operands, t)
		return
	}
	p.operands = p.operands[:0]
}

// place is where a point stands on paper, in mm.
func (p *printed) place(m matrix, x, y float64) (float64, float64) {
	return (m[0]*x + m[2]*y + m[4]) * 25.4 / 72, p.Height - (m[1]*x+m[3]*y+m[5])*25.4/72
}

func (p *printed) box(x, y, width, height float64) Box {
	left, top := p.place(p.at, x, y)
	right, bottom := p.place(p.at, x+width, y+height)
	return Box{min(left, right), min(top, bottom), math.Abs(right - left), math.Abs(bottom - top)}
}

// show takes in the texts since the last operator.
func (p *printed) show() {
	m := p.text.times(p.at)
	t := Text{Size: p.size * math.Hypot(m[2], m[3])}
	t.X, t.Y = p.place(m, 0, 0)
	for _, o := range p.operands {
		if !strings.HasPrefix(o, "<") || strings.HasPrefix(o, "<<") {
			continue
		}
		for code := strings.Trim(o, "<>"); len(code) >= 4; code = code[4:] {
			letter, _ := strconv.ParseUint(code[:4], 16, 32)
			t.Words += p.fonts[p.font][letter]
		}
	}
	p.Texts = append(p.Texts, t)
}

// Lines are the texts put together that stand on one base line, from above.
func (s *Sheet) Lines() (lines []Text) {
	texts := slices.Clone(s.Texts)
	slices.SortStableFunc(texts, func(a, b Text) int { return cmp.Compare(a.X, b.X) })
	for _, t := range texts {
		at := slices.IndexFunc(lines, func(l Text) bool { return math.Abs(l.Y-t.Y) < 0.1 })
		if at < 0 {
			lines = append(lines, t)
			continue
		}
		lines[at].Words += t.Words
	}
	slices.SortStableFunc(lines, func(a, b Text) int { return cmp.Compare(a.Y, b.Y) })
	return lines
}
