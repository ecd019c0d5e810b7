package equipment

import (
	"slices"
	"strings"
	"sync"

	"minim/report/words/note"
)

// Incompatible is a row of the table of what may not meet.
type Incompatible struct {
	// A and B are the two, in the words of the table.
	A string `csv:"a"`
	B string `csv:"b"`
	// GroupsA and GroupsB are the groups of substances that are A, and that are B. None: what is
	// wrong is the order in which the two are brought together, which no list of substances shows.
	GroupsA []string `csv:"a_is"`
	GroupsB []string `csv:"b_is"`
	// Happens is what happens then, Product the gas or what else is formed, "" where none
	// is named.
	Happens string `csv:"what_happens"`
	Product string `csv:"gas_or_product"`
	// What is both: "toxic gas at once – chlorine".
	What string
	// Strong: the table speaks of a strong or concentrated solution.
	Strong bool
	// Source is where it was read, "" for what is from memory.
	Source string `csv:"source"`
	Trust  string `csv:"trust"`
}

// general is the group of a row that stands for what no other row knows: it says nothing
// where another speaks.
const general = "oxidiser"

// Incompatibles returns every row of the table, in table order. It is short: that two
// substances are not in it says nothing.
func Incompatibles() []Incompatible { return slices.Clone(incompatibles()) }

var incompatibles = sync.OnceValue(func() []Incompatible {
	list := readTable[Incompatible](tableFiles, "incompatible")
	for i := range list {
		row := &list[i]
		row.What = strings.TrimSuffix(row.Happens+" – "+row.Product, " – ")
		row.Strong = strings.HasSuffix(row.A, ", strong") || strings.Contains(row.A+" "+row.B, "concentrated")
	}
	return list
})

// Meeting is a row that holds for two things, with that by which the first and the second
// were recognised.
type Meeting struct {
	Incompatible
	FirstBy, SecondBy note.Note
}

// Meet lists what is wrong when two things meet, of which the first and the second are
// recognised to be so much. A row that only knows an oxidiser counts where no other does.
// What is recognised by the same words of one name is one substance.
func Meet(first, second []Recognition) (list []Meeting) {
	for _, row := range incompatibles() {
		x, y, found := match(first, row.GroupsA, second, row.GroupsB)
		if !found {
			x, y, found = match(first, row.GroupsB, second, row.GroupsA)
		}
		if found && (len(list) == 0 || !slices.Contains(row.GroupsA, general)) {
			list = append(list, Meeting{row, x.By, y.By})
		}
	}
	return list
}

// match is a pair of which the first belongs to one of the groups a, and the second to one
// of the groups b.
func match(first []Recognition, a []string, second []Recognition, b []string) (x, y Recognition, found bool) {
	for _, x = range first {
		for _, y = range second {
			if slices.Contains(a, x.Group) && slices.Contains(b, y.Group) && !x.overlaps(&y) {
				return x, y, true
			}
		}
	}
	return x, y, false
}
