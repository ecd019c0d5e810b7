package equipment

import (
	"slices"
	"strings"
	"unicode"
)

// word of a text, as it stands and as it is compared.
type word struct{ written, plain string }

// textWords parts a text at all that is neither letter nor digit, nor the mark.
func textWords(text string, mark rune) (list []word) {
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsNumber(r) && r != mark }) {
		list = append(list, word{w, plainWord(w)})
	}
	return list
}

// plainWord is a word in the singular and in small letters, with f for ph in sulphur and
// with plain digits.
func plainWord(w string) string {
	w = strings.Map(func(r rune) rune {
		if r >= '₀' && r <= '₉' {
			return '0' + r - '₀'
		}
		return unicode.ToLower(r)
	}, w)
	w = strings.ReplaceAll(w, "sulph", "sulf")
	if len(w) > 4 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") {
		w = strings.TrimSuffix(w, "s")
	}
	return w
}

func written(words []word) string {
	parts := make([]string, len(words))
	for i, w := range words {
		parts[i] = w.written
	}
	return strings.Join(parts, " ")
}

func (p phrase) startsAt(words []word, at int) bool {
	if at+len(p) > len(words) {
		return false
	}
	for i, w := range p {
		end, isEnd := strings.CutPrefix(w, "*")
		if found := words[at+i].plain; isEnd && !strings.HasSuffix(found, end) || !isEnd && w != found {
			return false
		}
	}
	return true
}

// negated reports whether words are said not to be there: "acid-free", "non-flammable".
func negated(words []word, first, last int) bool {
	return last < len(words) && words[last].plain == "free" || first > 0 && slices.Contains([]string{"non", "not"}, words[first-1].plain)
}

// covered reports whether words are part of one of the phrases.
func covered(words []word, first, last int, list []phrase) bool {
	return slices.ContainsFunc(list, func(p phrase) bool { return p.startsWithin(words, last-len(p), first) })
}

// startsWithin reports whether a phrase stands in a text from a word on that is one of several.
func (p phrase) startsWithin(words []word, first, last int) bool {
	for at := max(first, 0); at <= last; at++ {
		if p.startsAt(words, at) {
			return true
		}
	}
	return false
}
