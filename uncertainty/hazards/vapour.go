package hazards

import (
	_ "embed"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"
	"sync"

	"minim/equipment"
)

// vapours lists what solutions give off that harms whoever breathes it, from which mass fraction on, with the
// hazard statements of GHS (from memory). It is short: what is not in it may do so as well.
//
//go:embed vapours.csv
var vapours string

// Vapour is what a solution gives off that must not be breathed.
type Vapour struct {
	// What it is, such as "hydrogen chloride".
	What string
	// From is the mass fraction in % from which on it counts, Phrases are the hazard statements by GHS of a solution
	// of the strength.
	From    float64
	Phrases []string
	// Trust is "from memory" of what was not seen in print.
	Trust string

	names []string
	molar float64 // g/mol
	// phrases, with the mass fraction in % from which on each holds as the last word.
	phrases []string
}

var vapourTable = sync.OnceValue(func() (list []Vapour) {
	rows, err := csv.NewReader(strings.NewReader(vapours)).ReadAll()
	if err != nil {
		panic("hazards: vapours.csv: " + err.Error())
	}
	for _, r := range rows[1:] {
		v := Vapour{What: r[2], From: number(r[3]), molar: number(r[4]), Trust: r[7]}
		v.names = slices.DeleteFunc(append([]string{r[0]}, strings.Split(r[1], "|")...), isEmpty)
		v.phrases = slices.DeleteFunc(strings.Split(r[5], "|"), isEmpty)
		list = append(list, v)
	}
	return list
})

// number is a figure of the table.
func number(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("hazards: vapours.csv: " + err.Error())
	}
	return x
}

func isEmpty(s string) bool { return s == "" }

// Vapours are those of a substance known by one of some names, as they stand in the table, as the table of stocks
// has them for it, or with the words of a bottle; nil where none is known.
func Vapours(names ...string) *Vapour {
	list := vapourTable()
	for _, name := range names {
		name = strings.ToLower(strings.Join(strings.Fields(name), " "))
		if s, found := equipment.FindStock(name); found {
			name = s.Name
		}
		name, _, _ = strings.Cut(name, ",")
		for i := range list {
			if slices.ContainsFunc(list[i].names, func(known string) bool { return name == known || strings.HasPrefix(name, known+" ") }) {
				return &list[i]
			}
		}
	}
	return nil
}

// At is the vapour of a solution that holds so many g, or mol, of a form of it in 1 mL; nil where it is too weak. Of
// a substance of which no densities are known a solution counts as 1 g/mL.
func (v *Vapour) At(perML float64, inMol bool, form string) *Vapour {
	if inMol {
		perML *= v.molar
	}
	if s, found := equipment.FindStock(v.names[0]); found {
		return v.AtFraction(s.Fraction(perML * s.Holds(form)))
	}
	return v.AtFraction(perML)
}

// AtFraction is that of a mass fraction.
func (v *Vapour) AtFraction(w float64) *Vapour {
	reaches := func(percent float64) bool { return 100*w >= percent*(1-1e-9) }
	if !reaches(v.From) {
		return nil
	}
	at := *v
	for _, phrase := range v.phrases {
		if last := strings.LastIndex(phrase, " "); reaches(number(phrase[last+1:])) {
			at.Phrases = append(at.Phrases, phrase[:last])
		}
	}
	return &at
}
