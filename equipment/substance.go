package equipment

import (
	"slices"

	"minim/report/words/note"
)

// Recognition says that something belongs to a group of substances, and by what that was
// seen.
type Recognition struct {
	Group string
	// By is how it was recognised, such as by its name "vinegar".
	By note.Note
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
	l := lexicon()
	list := l.recognise(name, l.names, "by-name")
	for _, h := range hazards {
		for _, r := range l.recognise(h, l.words, "by-hazard-word") {
			r.name = ""
			list = append(list, r)
		}
	}
	return list
}

// recognise lists the groups of which a phrase of an index stands in a text.
func (l *substances) recognise(text string, x index, by string) (list []Recognition) {
	words := textWords(text, 0)
	for at := range words {
		for _, e := range slices.Concat(x[words[at].plain], x[anyStart]) {
			if end := at + len(e.phrase); e.phrase.startsAt(words, at) && l.means(e.of, words, at, end) {
				list = l.add(list, e.of.Group, Recognition{By: note.Of(by, "", written(words[at:end])), name: text, first: at, last: end})
			}
		}
	}
	return list
}

// means reports whether words that name a group do not mean something else here.
func (l *substances) means(s *substance, words []word, first, last int) bool {
	beside := func(p phrase) bool { return p.startsWithin(words, 0, len(words)) }
	return !negated(words, first, last) && !slices.ContainsFunc(s.unless, beside) &&
		!covered(words, first, last, s.except) && !covered(words, first, last, l.groups[anySubstance].except)
}

// add appends a recognition for a group and for those that it is part of.
func (l *substances) add(list []Recognition, group string, r Recognition) []Recognition {
	r.Group = group
	list = append(list, r)
	for _, also := range l.groups[group].Also {
		list = l.add(list, also, r)
	}
	return list
}

// StaysBehind reports whether a name is of a solid that stays when its solvent evaporates.
func StaysBehind(name string) bool {
	return slices.ContainsFunc(Recognise(name), func(r Recognition) bool { return r.Group == NonVolatile })
}
