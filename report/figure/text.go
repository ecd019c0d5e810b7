package figure

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"

	"minim/equipment/quantity"
	"minim/report/words/inline"
)

// spellings of characters that the font does not have, by such that look alike.
var spellings = strings.NewReplacer("℃", "°C", "μ", "µ", "\u2010", "-", "\u2011", "-")

// clean makes words fit for an SVG: on one line, without marks that turn the direction of writing.
// Every letter stays, whether or not the font has it.
func clean(words string) string {
	words = strings.Map(func(r rune) rune {
		if r == utf8.RuneError || !unicode.IsPrint(r) && !unicode.IsSpace(r) {
			return '?'
		}
		return r
	}, quantity.OneLine(spellings.Replace(inline.Minus(inline.Plain(powers(words))))))
	return strings.Join(strings.Fields(words), " ")
}

// power is a number with a power of ten, as programs write it: 6.7e-07.
var power = regexp.MustCompile(`\b(\d+(?:\.\d+)?)e([-+])0*(\d+)\b`)

// powers writes powers of ten as people do: 6.7 × 10⁻⁷.
func powers(words string) string {
	return power.ReplaceAllStringFunc(words, func(number string) string {
		part := power.FindStringSubmatch(number)
		exponent, err := strconv.Atoi(strings.TrimPrefix(part[2], "+") + part[3])
		if err != nil {
			return number
		}
		return part[1] + " × 10" + raisedNumber(exponent)
	})
}

// raised are the characters that stand above the line, and what is drawn there.
var raised = map[rune]rune{'⁰': '0', '¹': '1', '²': '2', '³': '3', '⁴': '4', '⁵': '5', '⁶': '6', '⁷': '7', '⁸': '8', '⁹': '9', '⁻': '−', '⁺': '+'}

// Raised letters are so much smaller, and stand so much higher, in sizes of the others.
const (
	raisedSize = 0.68
	raisedRise = 0.36
)

// run is a part of a line that is drawn in one go.
type run struct {
	words string
	// up stands above the line; foreign has letters that the font does not have, or that are
	// written from right to left.
	up, foreign bool
}

// runs parts a line. What is foreign stays whole from its first letter to its last, with all that
// stands between, since only what shapes it can tell in which order it stands.
func runs(words string) (list []run) {
	from, kind := 0, runOf(words)
	for i, r := range words {
		if k := kindOf(r); i > 0 && k != kind && !joins(r, kind, words[i:]) {
			list = append(list, kind.with(words[from:i]))
			from, kind = i, k
		}
	}
	if words != "" {
		list = append(list, kind.with(words[from:]))
	}
	return list
}

func (r run) with(words string) run {
	r.words = words
	return r
}

func runOf(words string) run {
	r, _ := utf8.DecodeRuneInString(words)
	return kindOf(r)
}

func kindOf(r rune) run {
	_, up := raised[r]
	return run{up: up, foreign: !up && foreign(r)}
}

// joins reports whether a letter belongs to the run before it: a mark to its letter, and what
// stands between two foreign words to both.
func joins(r rune, kind run, rest string) bool {
	if unicode.Is(unicode.M, r) {
		return true
	}
	if !kind.foreign {
		return false
	}
	for _, next := range rest {
		switch {
		case foreign(next):
			return true
		case !unicode.IsSpace(next) && !unicode.IsPunct(next):
			return false
		}
	}
	return false
}

// foreign reports whether the font lacks a letter, or what draws pixels cannot set it.
func foreign(r rune) bool { return !inFont(r) || fromRight(r) || unicode.Is(unicode.M, r) }

// fromRight reports whether a letter is written from right to left.
func fromRight(r rune) bool {
	return r >= 0x590 && r < 0x900 || r >= 0xFB1D && r < 0xFE00 || r >= 0xFE70 && r < 0xFF00 || r >= 0x10800 && r < 0x11000 || r >= 0x1E800 && r < 0x1F000
}

// inFont reports whether both weights of the font have a glyph.
func inFont(r rune) bool {
	for _, style := range []textStyle{nameText, boldText} {
		if glyph, err := style.face().Face.GlyphIndex(nil, r); err != nil || glyph == 0 {
			return false
		}
	}
	return true
}

// Width is the room that words take: that of the font, an em for a letter that it does not have,
// nothing for a mark on one.
func (t textStyle) Width(words string) (wide vg.Length) {
	for _, r := range runs(words) {
		wide += t.wide(r)
	}
	return wide
}

func (t textStyle) wide(r run) (wide vg.Length) {
	if r.up {
		return raisedSize * t.Style.Width(lowered(r.words))
	}
	if !r.foreign {
		return t.Style.Width(r.words)
	}
	for _, c := range r.words {
		switch {
		case unicode.Is(unicode.M, c):
		case inFont(c):
			wide += t.Style.Width(string(c))
		default:
			wide += t.Font.Size
		}
	}
	return max(wide, t.Font.Size)
}

// lowered are raised letters as those that are drawn for them.
func lowered(words string) string { return strings.Map(func(r rune) rune { return raised[r] }, words) }

// face is the font at the size of the style.
func (t textStyle) face() font.Face { return t.Handler.Cache().Lookup(t.Font, t.Font.Size) }

// higher is the style of raised letters.
func (t textStyle) higher() textStyle {
	t.Font.Size *= raisedSize
	return t
}
