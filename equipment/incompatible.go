package equipment

import (
	"slices"
	"strings"
	"sync"
)

// Incompatible is a row of the table of what may not meet.
type Incompatible struct {
	// A and B are the two, in the words of the table.
	A, B string
	// Happens is what happens then, Product the gas or what else is formed, "" where none
	// is named.
	Happens, Product string
	// Source is where it was read, "" for what is from memory.
	Source, Trust string

	// groups of substances that are A, and that are B. None: what is wrong is the order in
	// which the two are brought together, which no list of substances shows.
	a, b []string
}

// What happens, with what is formed: "toxic gas at once – chlorine".
func (i *Incompatible) What() string {
	if i.Product == "" {
		return i.Happens
	}
	return i.Happens + " – " + i.Product
}

// Strong reports whether the table speaks of a strong or concentrated solution.
func (i *Incompatible) Strong() bool {
	return strings.HasSuffix(i.A, ", strong") || strings.Contains(i.A+" "+i.B, "concentrated")
}

// OrderOnly reports whether the two may meet in the right order.
func (i *Incompatible) OrderOnly() bool { return len(i.a) == 0 }

// general is the group of a row that stands for what no other row knows: it says nothing
// where another speaks.
const general = "oxidiser"

// Incompatibles returns every row of the table, in table order. It is short: that two
// substances are not in it says nothing.
func Incompatibles() []Incompatible { return slices.Clone(incompatibles()) }

var incompatibles = sync.OnceValue(func() []Incompatible {
	var list []Incompatible
	for _, row := range readTable(tableFiles, "incompatible", "a,b,a_is,b_is,what_happens,gas_or_product,source,trust") {
		list = append(list, Incompatible{
			A: row.text("a"), B: row.text("b"), Happens: row.text("what_happens"), Product: row.text("gas_or_product"),
			Source: row.text("source"), Trust: row.text("trust"), a: row.groups("a_is"), b: row.groups("b_is"),
		})
	}
	return list
})

// Meeting is a row that holds for two things, with that by which the first and the second
// were recognised.
type Meeting struct {
	Incompatible
	FirstBy, SecondBy string
}

// Meet lists what is wrong when two things meet, of which the first and the second are
// recognised to be so much. A row that only knows an oxidiser counts where no other does.
// What is recognised by the same words of one name is one substance.
func Meet(first, second []Recognition) (list []Meeting) {
	if len(first) == 0 || len(second) == 0 {
		return nil
	}
	for _, row := range incompatibles() {
		if slices.Contains(row.a, general) && len(list) > 0 {
			continue
		}
		x, y, found := match(first, row.a, second, row.b)
		if !found {
			x, y, found = match(first, row.b, second, row.a)
		}
		if found {
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
