package equipment

import (
	"slices"
	"strings"
	"sync"
)

// substance is a group of substances.
type substance struct {
	group string
	// also are the groups that it is part of.
	also []string
	// except are phrases that hold one of its names and mean something else; unless are
	// words beside which they do.
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

// index holds phrases by their first word, and those that begin with the end of one.
type index struct {
	first map[string][]entry
	ends  []entry
}

// entry is a phrase of a group.
type entry struct {
	phrase phrase
	of     *substance
}

func (x *index) add(of *substance, phrases []phrase) {
	for _, p := range phrases {
		if strings.HasPrefix(p[0], "*") {
			x.ends = append(x.ends, entry{p, of})
		} else {
			x.first[p[0]] = append(x.first[p[0]], entry{p, of})
		}
	}
}

var lexicon = sync.OnceValue(func() *substances {
	l := &substances{groups: make(map[string]*substance), names: index{first: make(map[string][]entry)}, words: index{first: make(map[string][]entry)}}
	for _, row := range readTable(tableFiles, "substances", "group,names,words,also,except,unless") {
		s := &substance{group: row.text("group"), also: row.groups("also"), except: row.phrases("except"), unless: row.phrases("unless")}
		l.groups[s.group] = s
		l.names.add(s, row.phrases("names"))
		l.words.add(s, row.phrases("words"))
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
