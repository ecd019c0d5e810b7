package equipment

import (
	"slices"
	"strings"
	"sync"
)

// substance is a group of substances.
type substance struct {
	Group string `csv:"group"`
	// Names of its members, and hazard words that tell it.
	Names []string `csv:"names"`
	Words []string `csv:"words"`
	// Also are the groups that it is part of.
	Also []string `csv:"also"`
	// Except are phrases that hold one of its names and mean something else; Unless are
	// words beside which they do.
	Except []string `csv:"except"`
	Unless []string `csv:"unless"`

	except, unless []phrase
}

// phrase is words that follow each other; one that starts with * is the end of a word.
type phrase []string

// NonVolatile is the group of solids that stay when their solvent evaporates.
const NonVolatile = "non-volatile solid"

// anySubstance is the group whose exceptions hold for every group.
const anySubstance = "*"

// substances are the groups by their names, with the phrases that name each and the hazard
// words that tell it.
type substances struct {
	groups       map[string]*substance
	names, words index
}

// index holds phrases by their first word, and those that begin with the end of one by
// anyStart.
type index map[string][]entry

const anyStart = "*"

// entry is a phrase of a group.
type entry struct {
	phrase phrase
	of     *substance
}

func (x index) add(of *substance, phrases []phrase) {
	for _, p := range phrases {
		start := p[0]
		if strings.HasPrefix(start, "*") {
			start = anyStart
		}
		x[start] = append(x[start], entry{p, of})
	}
}

var lexicon = sync.OnceValue(func() *substances {
	l := &substances{groups: make(map[string]*substance), names: make(index), words: make(index)}
	for _, s := range readTable[substance](tableFiles, "substances") {
		s.except, s.unless = newPhrases(s.Except), newPhrases(s.Unless)
		l.groups[s.Group] = &s
		l.names.add(&s, newPhrases(s.Names))
		l.words.add(&s, newPhrases(s.Words))
	}
	l.names.add(l.groups["organic liquid"], organicLiquids())
	return l
})

// organicLiquids are the names of the table of liquids, but for water.
func organicLiquids() (names []phrase) {
	for name, l := range liquids().find {
		if !IsWater(l.Name) {
			names = append(names, newPhrase(name))
		}
	}
	slices.SortFunc(names, func(a, b phrase) int { return slices.Compare(a, b) })
	return names
}

func newPhrases(texts []string) (list []phrase) {
	for _, text := range texts {
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
