package words

import (
	"fmt"

	"minim/report/page"
	"minim/uncertainty/route"
)

// keepApart follows what may not meet. That a pair is not listed means nothing.
const keepApart = "Keep them apart, what is left over of them as well; no route that brings them together is proposed. The list of such pairs is short: the safety data sheets decide."

// Stops are sentences about what may not meet of all that a prep names; none where nothing
// is known, which says nothing.
func Stops(p *route.Prep) []string { return stopsOf(p.Clashes(nil)) }

// Stop is a sentence about two that may not meet, above all else: by what they were
// recognised, and what happens.
func Stop(c *route.Clash) string {
	text := fmt.Sprintf("%s (%s; recognised %s) and %s (%s; recognised %s)", c.First, c.FirstRole, c.FirstBy, c.Second, c.SecondRole, c.SecondBy)
	if c.First == c.Second {
		text = fmt.Sprintf("what is in %s (%s; recognised %s, and %s)", c.First, c.FirstRole, c.FirstBy, c.SecondBy)
	}
	text += ": " + c.What
	if c.Strong {
		text += "; what is known of this pair is known of strong solutions, and how strong yours are is not asked"
	}
	return "STOP: these two may not meet: " + text + "."
}

// stopBars stand above a page.
func stopBars(p *route.Prep) (bars []page.Block) {
	for _, text := range Stops(p) {
		bars = append(bars, bar(text), page.Gap{})
	}
	return bars
}

func stopsOf(clashes []route.Clash) (list []string) {
	for i := range clashes {
		list = append(list, Stop(&clashes[i]))
	}
	if n := len(list); n > 0 {
		list[n-1] += " " + keepApart
	}
	return list
}

// notPossible says in a word that a route cannot be done, or must not.
func notPossible(r *route.Result) string {
	return either(r.MayNotBeUsed(), "STOP: not to be used", "not possible")
}
