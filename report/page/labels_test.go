package page

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/webtest"
)

// labelOf is a constructed label of a solution of that name.
func labelOf(name, strength, hazard string) Label {
	line := func(style, text, short string) LabelLine {
		return LabelLine{Paragraph: Paragraph{Style: style, Text: text}, Short: short, Shortest: short}
	}
	made := line("small", "made ____ · by ____", "")
	made.Field, made.Known = "made on, by", "batch 7"
	may := line("small", "who decides what must stand here is written elsewhere", "")
	may.May = true
	return Label{Count: 1, Of: "bottle 1", Lines: []LabelLine{line("name", name, ""), line("strength", strength+" (k = 2)", strength), line("hazard", "this solution: "+hazard, hazard), made, may}}
}

// Whatever a label says is set so that a browser has room for it on labels of any size, or is refused; in
// five scripts, and in words that are long.
func TestLabelsHoldTheirText(t *testing.T) {
	names := []string{"salt", "sodium chloride in water", "хлорид натрия", "χλωριούχο νάτριο", "塩化ナトリウム水溶液", "ملح في الماء", strings.Repeat("long ", 12), "Pneumonoultramicroscopicsilicovolcanoconiosis", "WWWW MMMM @@@@ %%%%"}
	b := webtest.Start(t)
	dir := t.TempDir()
	set, refused := 0, 0
	for _, size := range []Size{LeastLabel, {30, 20}, {40, 25}, {60, 40}, {35, 70}, {100, 15}, MostLabel} {
		l := Labels{LabelLayout: LabelLayout{Size: size}}
		for _, name := range names {
			for _, strength := range []string{"1 g/L", "(0.059821 ± 0.000028) mmol/L"} {
				one := Labels{List: []Label{labelOf(name, strength, "corrosive, irritant")}, LabelLayout: l.LabelLayout}
				if err := one.Refused(); err != nil {
					assert.Regexp(t, `one of .* (would do|neither)$`, err.Error())
					refused++
					continue
				}
				l.List = append(l.List, one.List...)
				set++
			}
		}
		p := &Page{Title: "Labels", Kind: "labels-page", Blocks: []Block{l}}
		html, err := p.HTML()
		require.NoError(t, err)
		path := filepath.Join(dir, "labels.html")
		require.NoError(t, os.WriteFile(path, html, 0o644))
		b.Open("file://" + path)
		assert.Empty(t, b.Run(`return Array.from(document.querySelectorAll(".label"))
			.filter(l => l.scrollHeight > l.clientHeight || l.scrollWidth > l.clientWidth).map(l => l.textContent)`), "%v", size)
	}
	assert.True(t, set > 40 && refused > 20, "%d set, %d refused", set, refused)
}

// The smallest label holds a plain solution; the more it can hold, the more it says.
func TestLabelsSayWhatTheyHaveRoomFor(t *testing.T) {
	label := labelOf("salt in water", "9.0 g/L", "none known")
	said := func(size Size) string {
		set := Labels{LabelLayout: LabelLayout{Size: size}}.fit(&label)
		require.NotNil(t, set, size)
		text := ""
		for _, line := range set.Lines {
			text += line.Text + "; "
		}
		return text
	}
	assert.Nil(t, Labels{LabelLayout: LabelLayout{Size: LeastLabel}}.fit(&label), "nor a field to write in")
	dated := labelOf("salt in water", "9.0 g/L", "none known")
	dated.Lines[3].Field, dated.Lines[3].Known = "", ""
	dated.Lines[3].Text = "made 2026-11-28"
	assert.NotNil(t, Labels{LabelLayout: LabelLayout{Size: LeastLabel}}.fit(&dated))
	assert.Equal(t, "salt in water; 9.0 g/L; none known; batch 7; ", said(Size{25, 25}))
	assert.Equal(t, "salt in water; 9.0 g/L (k = 2); this solution: none known; batch 7; ", said(Size{60, 25}))
	assert.Equal(t, "salt in water; 9.0 g/L (k = 2); this solution: none known; batch 7; who decides what must stand here is written elsewhere; ", said(Size{70, 40}))
}

func TestLabelSizes(t *testing.T) {
	for text, want := range map[string]string{
		"60 x 40 mm": "60 x 40 mm", "60x40mm": "60 x 40 mm", "6 × 4 cm": "60 x 40 mm", "60 mm x 4 cm": "60 x 40 mm", "63.5 X 38.1 mm": "63.5 x 38.1 mm",
		"60 x 40": "not a width", "-60 x 40 mm": "not a width", "60 x 40 in": "not a width", "": "not a width", "1e2 x 40 mm": "not a width",
		"24.9 x 15 mm": "are not made", "100 x 70.1 mm": "are not made", "0 x 0 mm": "are not made",
	} {
		size, err := ParseLabelSize(text)
		if strings.HasSuffix(want, "mm") {
			assert.NoError(t, err, text)
			assert.Equal(t, want, size.String())
		} else if assert.Error(t, err, text) {
			assert.Contains(t, err.Error(), want)
		}
	}
	s, err := ParseLabelSheet("letter, 3x10, gap 3.2 x 0 mm, margin 4.8 x 12.7 mm")
	require.NoError(t, err)
	assert.Equal(t, LabelSheet{papers["letter"], 3, 10, Size{4.8, 12.7}, Size{3.2, 0}}, *s)
	size, _ := LabelLayout{Sheet: s}.size()
	assert.Equal(t, "66.6 x 25.4 mm", fmt.Sprint(size))
}
