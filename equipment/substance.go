package equipment

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode"
)

// Recognition says that something belongs to a group of substances, and by what that was
// seen.
type Recognition struct {
	Group string
	// By is how it was recognised: `by its name, "vinegar"`.
	By string
	// name, and the words of it from first up to last, that were recognised; of a hazard
	// word name is empty.
	name        string
	first, last int
}

// overlaps reports whether two were recognised by the same words of one name, which then
// name one substance.
func (r *Recognition) overlaps(o *Recognition) bool {
	return r.name != "" && r.name == o.name && r.first < o.last && o.first < r.last
}

// Recognise lists the groups of substances that a name and hazard words belong to, by the
// table substances.csv. Its names are common knowledge, no source. Whole words are
// compared, in either spelling, in the singular or the plural; a word with "free" after
// it or "non" before it does not count.
func Recognise(name string, hazards ...string) []Recognition {
	list := lexicon().inText(name, func(s *substance) []phrase { return s.names }, `by its name, %q`)
	for _, h := range hazards {
		for _, r := range lexicon().inText(h, func(s *substance) []phrase { return s.words }, `by the hazard word %q`) {
			r.name = ""
			list = append(list, r)
		}
	}
	return list
}

// substance is a group of substances.
type substance struct {
	group string
	// names and hazard words by which it is recognised; also are the groups that it is
	// part of.
	names, words []phrase
	also         []string
	// except are phrases that hold such a name and mean something else; unless are
	// words beside which it does.
	except, unless []phrase
}

// phrase is words that follow each other; one that starts with * is the end of a word.
type phrase []string

// NonVolatile is the group of solids that stay when their solvent evaporates.
const NonVolatile = "non-volatile solid"

// anySubstance is the group whose exceptions hold for every group.
const anySubstance = "*"

type substances []substance

var lexicon = sync.OnceValue(func() substances {
	var list substances
	for _, row := range readTable(tableFiles, "substances", "group,names,words,also,except,unless") {
		list = append(list, substance{
			group: row.text("group"), names: row.phrases("names"), words: row.phrases("words"), also: row.groups("also"),
			except: row.phrases("except"), unless: row.phrases("unless"),
		})
	}
	for i := range list {
		if list[i].group == "organic liquid" {
			list[i].names = append(list[i].names, organicLiquids()...)
		}
	}
	return list
})

// organicLiquids are the names of the table of liquids, but for water.
func organicLiquids() (names []phrase) {
	for name, l := range liquids().find {
		if l.Name != "water" {
			names = append(names, newPhrase(name))
		}
	}
	slices.SortFunc(names, func(a, b phrase) int { return slices.Compare(a, b) })
	return names
}

// groups are words parted by "|".
func (r tableRow) groups(column string) []string {
	if r.text(column) == "" {
		return nil
	}
	return strings.Split(r.text(column), "|")
}

func (r tableRow) phrases(column string) (list []phrase) {
	for _, text := range r.groups(column) {
		list = append(list, newPhrase(text))
	}
	return list
}

func newPhrase(text string) (p phrase) {
	for _, w := range textWords(text, '*') {
		p = append(p, w.plain)
	}
	return p
}

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

// inText lists the groups of which one of the phrases stands in a text.
func (l substances) inText(text string, phrases func(*substance) []phrase, by string) (list []Recognition) {
	words := textWords(text, 0)
	for i := range l {
		s := &l[i]
		if s.group == anySubstance || holdsAny(words, s.unless) {
			continue
		}
		for _, p := range phrases(s) {
			for _, at := range places(words, p) {
				if end := at + len(p); !negated(words, at, end) && !covered(words, at, end, slices.Concat(l[0].except, s.except)) {
					list = l.add(list, s.group, Recognition{By: fmt.Sprintf(by, written(words[at:end])), name: text, first: at, last: end})
				}
			}
		}
	}
	return list
}

// add appends a recognition for a group and for those that it is part of.
func (l substances) add(list []Recognition, group string, r Recognition) []Recognition {
	r.Group = group
	list = append(list, r)
	for i := range l {
		if l[i].group == group {
			for _, also := range l[i].also {
				list = l.add(list, also, r)
			}
		}
	}
	return list
}

func written(words []word) string {
	parts := make([]string, len(words))
	for i, w := range words {
		parts[i] = w.written
	}
	return strings.Join(parts, " ")
}

// places are where a phrase stands in a text.
func places(words []word, p phrase) (list []int) {
	for at := 0; at+len(p) <= len(words); at++ {
		if p.is(words[at : at+len(p)]) {
			list = append(list, at)
		}
	}
	return list
}

func (p phrase) is(words []word) bool {
	for i, w := range p {
		end, isEnd := strings.CutPrefix(w, "*")
		if isEnd && !strings.HasSuffix(words[i].plain, end) || !isEnd && w != words[i].plain {
			return false
		}
	}
	return true
}

func holdsAny(words []word, list []phrase) bool {
	return slices.ContainsFunc(list, func(p phrase) bool { return len(places(words, p)) > 0 })
}

// negated reports whether words are said not to be there: "acid-free", "non-flammable".
func negated(words []word, first, last int) bool {
	return last < len(words) && words[last].plain == "free" || first > 0 && slices.Contains([]string{"non", "not"}, words[first-1].plain)
}

// covered reports whether words are part of one of the phrases.
func covered(words []word, first, last int, list []phrase) bool {
	return slices.ContainsFunc(list, func(p phrase) bool {
		return slices.ContainsFunc(places(words, p), func(at int) bool { return at <= first && last <= at+len(p) })
	})
}
