package hazards

import (
	"slices"

	"minim/equipment"
	"minim/report/words/note"
)

// Clash is two things of a prep that may not meet.
type Clash struct {
	// First and Second are their names, with what each is in the prep: the solvent.
	First, Second         string
	FirstRole, SecondRole note.Note
	// Meeting says what happens then, and by what each was recognised.
	equipment.Meeting
}

// Thing is what a prep brings to the bench, and the groups of substances that it is
// recognised to belong to: by its name alone, and by its hazard words as well.
type Thing struct {
	Name        string
	role        note.Note
	named, seen []equipment.Recognition
}

// Bring is a thing of a name, which is something in the prep, with hazard words.
func Bring(role note.Note, name string, words ...string) Thing {
	named := equipment.Recognise(name)
	return Thing{name, role, named, slices.Concat(named, equipment.Recognise("", words...))}
}

// Clashes lists the pairs that may not meet, and what holds such a pair by its name.
func Clashes(things []Thing) (list []Clash) {
	for i, a := range things {
		for _, m := range equipment.Meet(a.named, a.named) {
			list = append(list, Clash{a.Name, a.Name, a.role, a.role, m})
		}
		for _, b := range things[i+1:] {
			for _, m := range equipment.Meet(a.seen, b.seen) {
				list = append(list, Clash{a.Name, b.Name, a.role, b.role, m})
			}
		}
	}
	return list
}

// Forbidden says of a route why it may not be used, nothing where nothing is known against it.
func Forbidden(clashes []Clash) note.Note {
	if len(clashes) == 0 {
		return note.Note{}
	}
	return note.Of("may-not-meet", clashes[0].First, clashes[0].Second)
}
