package report

import (
	"minim/report/page"
	"minim/uncertainty/route"
)

// stopWord comes before what may not meet, above all else.
const stopWord = "STOP: these two may not meet"

// keepApart follows what may not meet. That a pair is not listed means nothing.
const keepApart = "Keep them apart, what is left over of them as well; no route that brings them together is proposed. The list of such pairs is short: the safety data sheets decide."

// Stops are sentences about what may not meet of all that a prep names; none where nothing
// is known, which says nothing.
func Stops(p *route.Prep) []string { return stopsOf(p.Clashes()) }

func stopsOf(clashes []route.Clash) (list []string) {
	for i := range clashes {
		list = append(list, stopWord+": "+clashes[i].String()+".")
	}
	if n := len(list); n > 0 {
		list[n-1] += " " + keepApart
	}
	return list
}

// stopBars stand above a page.
func stopBars(p *route.Prep) (bars []page.Block) {
	for _, text := range Stops(p) {
		bars = append(bars, page.Bar{Text: text}, page.Gap{})
	}
	return bars
}

// notPossible says in a word that a route cannot be done, or must not.
func notPossible(r *route.Result) string {
	if r.MayNotBeUsed() {
		return "STOP: not to be used"
	}
	return "not possible"
}

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
			First:   stopThingJSON{c.First, c.FirstRole, c.FirstBy},
			Second:  stopThingJSON{c.Second, c.SecondRole, c.SecondBy},
			Happens: c.Happens, Product: orNull(c.Product), Strong: c.Strong(), Trust: c.Trust, Sentence: stopWord + ": " + c.String() + ".",
		})
	}
	return out
}
