package data

import (
	"minim/report/words"
	"minim/uncertainty/route"
)

// clashJSON is two things that may not meet.
type clashJSON struct {
	First    stopThingJSON `json:"first"`
	Second   stopThingJSON `json:"second"`
	Happens  string        `json:"what_happens"`
	Product  *string       `json:"gas_or_product"`
	Strong   bool          `json:"known_of_strong_solutions"`
	Trust    string        `json:"trust"`
	Sentence string        `json:"sentence"`
}

// stopThingJSON is one of them, and how it was recognised.
type stopThingJSON struct {
	Name       string `json:"name"`
	Role       string `json:"role"`
	Recognised string `json:"recognised"`
}

// clashesToJSON is never nil; an empty list says nothing.
func clashesToJSON(clashes []route.Clash) []clashJSON {
	out := []clashJSON{}
	for i := range clashes {
		c := &clashes[i]
		out = append(out, clashJSON{
			First:   stopThingJSON{c.First, c.FirstRole, c.FirstBy.String()},
			Second:  stopThingJSON{c.Second, c.SecondRole, c.SecondBy.String()},
			Happens: c.Happens, Product: orNull(c.Product), Strong: c.Strong(), Trust: c.Trust, Sentence: words.StopWord + ": " + c.String() + ".",
		})
	}
	return out
}
