package page

import "unicode"

// boldWidths of the printable letters of ASCII in thousandths of the size of the type: those of
// Helvetica Bold, which Arial Bold and Liberation Sans Bold have as well (from memory; a test sets
// labels in a browser). Regular type is narrower.
var boldWidths = [...]float64{
	278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611,
	975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556,
	333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611,
	611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
}

// widthToSpare is how much wider than by the table a text may come out.
const widthToSpare = 1.05

// textWidth is how wide a text is at most, in the unit of its size: letters that the table does not
// have are taken as wide as they are in any script.
func textWidth(text string, size float64) (width float64) {
	for _, r := range text {
		switch {
		case r >= ' ' && int(r-' ') < len(boldWidths):
			width += boldWidths[r-' ']
		case unicode.Is(unicode.Mn, r) || unicode.Is(unicode.Me, r):
		case r == '\u00a0' || r == '·':
			width += 333
		case unicode.In(r, unicode.Latin, unicode.Greek, unicode.Cyrillic) && unicode.IsLower(r):
			width += 700
		case r < 0x590 || r >= 0x2000 && r < 0x2100:
			width += 800
		default:
			width += 1050
		}
	}
	return float64(width * size * widthToSpare / 1000)
}
