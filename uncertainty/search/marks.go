package search

import (
	"slices"
	"sort"
	"strings"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty/route"
)

// A search pairs what is taken with what it is diluted to. Of so many pairs at most it
// goes through the routes; more would take more memory than a small machine has, and
// longer than anyone waits. Where a kit allows more, fewer marks of the scales are tried.
const mostPairs = 200_000

// mostSifted pairs are looked at where only those are kept that come near the target.
const mostSifted = 100 * mostPairs

// tried holds the marks of each instrument that a search tries, rising.
type tried map[*equipment.Measure][]float64

// newTried takes all marks of a kit that a search considers.
func newTried(k *equipment.Kit, fine bool) tried {
	t := make(tried)
	for _, m := range k.Measures {
		t[m] = m.Marks(fine)
	}
	return t
}

// pairs is how many pairs the marks make: of aliquots and greater volumes that are made
// up to, and of aliquots and volumes of solvent that are added.
func (t tried) pairs() int {
	var taken, contained []float64
	for k, marks := range t {
		if suits(k, route.Take) {
			taken = append(taken, marks...)
		}
		if suits(k, route.MakeUpTo) {
			contained = append(contained, marks...)
		}
	}
	sort.Float64s(contained)
	n := len(taken) * len(taken)
	for _, a := range taken {
		at, _ := slices.BinarySearch(contained, a)
		n += len(contained) - at
	}
	return n
}

// atMost keeps so many marks of each instrument: every n-th, counted from its capacity.
func (t tried) atMost(each int) tried {
	fewer := make(tried)
	for k, marks := range t {
		n := everyOf(len(marks), each)
		for i := len(marks) - 1; i >= 0; i -= n {
			fewer[k] = append(fewer[k], marks[i])
		}
		slices.Reverse(fewer[k])
	}
	return fewer
}

// everyOf is the least n so that every n-th of some marks are no more than that: 1, 2 or
// 5 times a power of ten, which leaves marks that are read with ease.
func everyOf(marks, most int) int {
	for power := 1; ; power *= 10 {
		for _, n := range []int{power, 2 * power, 5 * power} {
			if (marks+n-1)/n <= most {
				return n
			}
		}
	}
}

// thinned keeps as many marks as make no more than that many pairs: of the instruments
// with the most marks it takes away first.
func (t tried) thinned(most int) tried {
	if t.pairs() <= most {
		return t
	}
	longest := 1
	for _, marks := range t {
		longest = max(longest, len(marks))
	}
	each := sort.Search(longest, func(n int) bool { return t.atMost(n+1).pairs() > most })
	return t.atMost(max(1, each))
}

// leftOut says which marks are not tried of those that are all, in the order of a kit.
func (t tried) leftOut(k *equipment.Kit, all tried) []note.Note {
	names, every := map[int][]string{}, []int{}
	for _, m := range k.Measures {
		if len(t[m]) == len(all[m]) {
			continue
		}
		n := everyOf(len(all[m]), len(t[m]))
		if names[n] == nil {
			every = append(every, n)
		}
		names[n] = append(names[n], m.Name)
	}
	var list []note.Note
	for _, n := range every {
		list = append(list, note.Of("other-marks", "", n, strings.Join(names[n], ", the ")))
	}
	return list
}
