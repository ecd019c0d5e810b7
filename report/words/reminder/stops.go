package reminder

import (
	"fmt"

	"minim/report/words/clause"
	"minim/uncertainty/hazards"
)

// keepApart follows what may not meet. That a pair is not listed means nothing.
const keepApart = "Keep them apart, what is left over of them as well; no route that brings them together is proposed. The list of such pairs is short: the safety data sheets decide."

// Stop is a sentence about two that may not meet, above all else: by what they were
// recognised, and what happens.
func Stop(c *hazards.Clash) string {
	text := clause.Either(c.First == c.Second,
		fmt.Sprintf("what is in %s (%s; recognised %s, and %s)", c.First, c.FirstRole, c.FirstBy, c.SecondBy),
		fmt.Sprintf("%s (%s; recognised %s) and %s (%s; recognised %s)", c.First, c.FirstRole, c.FirstBy, c.Second, c.SecondRole, c.SecondBy))
	strong := clause.When(c.Strong, "; what is known of this pair is known of strong solutions, and how strong yours are is not asked")
	return "STOP: these two may not meet: " + text + ": " + c.What + strong + "."
}

// Stops are the sentences about some pairs that may not meet.
func Stops(clashes []hazards.Clash) []string {
	list := clause.Each(clashes, func(c hazards.Clash) string { return Stop(&c) })
	if n := len(list); n > 0 {
		list[n-1] += " " + keepApart
	}
	return list
}
