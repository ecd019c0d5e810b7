package equipment

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"minim/equipment/quantity"

	"gonum.org/v1/gonum/floats/scalar"
)

// findClass returns the one row that fits what a kit states about a piece: its kind, form,
// standard, class, capacity and division, zero where they are not stated. A standard or form
// that is not stated is taken to be the one that the tables list first: ISO for glass, pistons
// and syringes, USP for a dropper, the tall cylinder, air displacement, the beaker that is
// marked; a class is never assumed. The division is needed only where the standard knows several
// for one capacity. A piston between two sizes gets the row of the next larger one (ISO
// 8655-2 and -5), whose Capacity is then not the piece's. The error is a *quantity.Error: which
// statement the class tables do not bear out, and what would be right.
func findClass(asked Class) (Class, error) {
	rows := classTable()
	asked = asked.withDefaults(rows)
	for i := range classKeys {
		kept := slices.DeleteFunc(slices.Clone(rows), func(row Class) bool { return !row.fits(i, asked) })
		if len(kept) == 0 {
			return Class{}, noSuchClass(asked, i, rows)
		}
		rows = kept
	}
	last := len(classKeys) - 1
	switch {
	case Kind(asked.Kind).Traits().Dial:
		return slices.MinFunc(rows, func(a, b Class) int { return cmp.Compare(a.Capacity, b.Capacity) }), nil
	case len(rows) > 1:
		return Class{}, refuse("the class table"+asked.describe(last)+" has several divisions", "state which: "+choices(rows, last))
	}
	return rows[0], nil
}

// withDefaults fills in the standard and the form that rows list first.
func (c Class) withDefaults(rows []Class) Class {
	for _, row := range rows {
		if row.Kind == c.Kind && (c.Standard == "" || row.Standard == c.Standard) {
			c.Standard, c.Form = row.Standard, cmp.Or(c.Form, row.Form)
			return c
		}
	}
	return c
}

// classKeys are the keys by which a kit says which row it means, in the order in which they
// narrow the table.
var classKeys = []string{"kind", "standard", "form", "class", "capacity", "division"}

// stated is what a row has, or a kit states, under one of the keys; "" for nothing.
func (c *Class) stated(key int) string {
	if text := []string{c.Kind, c.Standard, c.Form, c.Name, "", ""}[key]; text != "" {
		return strconv.Quote(text)
	}
	if volume := []float64{0, 0, 0, 0, c.Capacity, c.Division}[key]; volume != 0 {
		return quantity.Exact(volume) + " mL"
	}
	return ""
}

// fits reports whether a row fits what is asked under one of the keys.
func (c *Class) fits(key int, asked Class) bool {
	is := Kind(c.Kind).Traits()
	switch classKeys[key] {
	case "class":
		return c.Name == asked.Name || asked.Name == "AS" && c.alsoAS()
	case "capacity":
		return is.Dial && asked.Capacity > 0 && c.Capacity > asked.Capacity || sameVolume(c.Capacity, asked.Capacity)
	case "division":
		return asked.Division == 0 || c.Division == 0 && is.makersDivision || sameVolume(c.Division, asked.Division)
	}
	return c.stated(key) == asked.stated(key)
}

// noSuchClass says that none of rows, which fit the keys before, fits this one as well.
func noSuchClass(asked Class, key int, rows []Class) error {
	name, right := classKeys[key], choices(rows, key)
	mistake := func(hint string) error {
		if text := asked.stated(key); text != "" {
			return refuse("the class table"+asked.describe(key)+" has no "+name+" "+text, hint)
		}
		return refuse(name+" is not stated"+asked.describe(key), hint)
	}
	switch {
	case right == "":
		return mistake("leave " + name + " out")
	case name == "kind":
		return mistake("kind can be " + right)
	case rows[0].Division == 0:
		return mistake(name + " can be " + right + ", or state an own tolerance instead of the class")
	}
	return mistake(name + " can be " + right + ", or state an own tolerance and division instead of the class")
}

// describe writes what is stated before a key: ` for kind "flask", standard "ISO"`.
func (c *Class) describe(before int) string {
	var parts []string
	for i, key := range classKeys[:before] {
		if text := c.stated(i); text != "" {
			parts = append(parts, key+" "+text)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return " for " + strings.Join(parts, ", ")
}

// choices lists the different values of rows under a key, in table order.
func choices(rows []Class, key int) string {
	var texts []string
	for i := range rows {
		if text := rows[i].stated(key); text != "" && !slices.Contains(texts, text) {
			texts = append(texts, text)
		}
	}
	return strings.Join(texts, ", ")
}

// refuse is the error of what a kit states about a piece.
func refuse(message, hint string) error { return &quantity.Error{Message: message, Hint: hint} }

// sameVolume allows for the rounding of a conversion of units.
func sameVolume(a, b float64) bool { return scalar.EqualWithinRel(a, b, 1e-9) }
