package note

import (
	"slices"
	"strings"
)

// Owner is one of several things that have notes of their own, such as a route.
type Owner struct {
	Name  string
	Notes []Note
}

// mostNamed owners are named before a note.
const mostNamed = 3

// JoinedOf are notes in words, as by [Joined], where a note that the first of some owners does not have says first whose
// it is. One whose subject is its only owner says so itself.
func JoinedOf(list []Note, owners ...Owner) (texts []string) {
	var whose []string
	of := make(map[string][]Note)
	for _, n := range list {
		name := ownersOf(n, owners)
		if of[name] == nil {
			whose = append(whose, name)
		}
		of[name] = append(of[name], n)
	}
	for _, name := range whose {
		for _, text := range Joined(of[name]) {
			texts = append(texts, name+text)
		}
	}
	return texts
}

// ownersOf names those that have a note, before it; "" where that need not be said.
func ownersOf(n Note, owners []Owner) string {
	text := n.String()
	var names []string
	for i, o := range owners {
		if !slices.Contains(Texts(o.Notes), text) {
			continue
		}
		if i == 0 {
			return ""
		}
		names = append(names, o.Name)
	}
	switch {
	case len(names) == 0 || len(names) == 1 && names[0] == n.Subject:
		return ""
	case len(names) == 1:
		return "route " + names[0] + ": "
	case len(names) > mostNamed:
		names = append(names[:mostNamed], "others")
	}
	return "routes " + strings.Join(names, ", ") + ": "
}
