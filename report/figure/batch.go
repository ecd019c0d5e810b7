package figure

import (
	"fmt"
	"strings"

	"minim/report/words"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// Batch lays out the figure of the spread of one batch: as it was planned, as it was
// made, and as it will be when it is corrected as recommended, in the form of [Spread].
func Batch(b *words.Batch) (*Figure, error) {
	c := b.Spread()
	note := "The batch as made goes by what was really read, with all that is uncertain of that."
	if !b.Finished() {
		note = "The batch goes by what has been read so far, and for what is still to come by the plan."
	}
	words := caption{"batch, and the strength", "THIS BATCH", inOrder(c), []string{note, dots(c)}, rowsAlt("How the strength of a batch spreads", c)}
	return drawSpread(c, words), nil
}

// Ways lays out the figure of the spread of the ways to correct a solution, in the form
// of [Spread].
func Ways(r *rescue.Rescue) (*Figure, error) {
	c, word := r.Comparison, "DO THIS"
	note := "Marked: the way that is recommended. What is uncertain of the solution as it is counts in each."
	if !c.Verdict.Meets && len(c.Prep.Tolerances) > 0 {
		word, note = tag(c), "No way reaches a chance of "+shareWords(c.Prep.LeastChance)+"; the best of them is marked. What is uncertain of the solution as it is counts in each."
	}
	words := caption{"way, and the strength", word, inOrder(c), []string{note, dots(c)}, rowsAlt("How the strength spreads by each way to correct a solution", c)}
	return drawSpread(c, words), nil
}

// inOrder are the results as they stand.
func inOrder(c *route.Comparison) []*route.Result {
	list := make([]*route.Result, len(c.Results))
	for i := range c.Results {
		list[i] = &c.Results[i]
	}
	return list
}

// rowsAlt tells of every row.
func rowsAlt(subject string, c *route.Comparison) string {
	parts := make([]string, len(c.Results))
	for i := range c.Results {
		r := &c.Results[i]
		parts[i] = r.Route.Name + ", not possible"
		if r.Possible {
			parts[i] = r.Route.Name + ", " + spreadAlt(c, r)
		}
	}
	return clean(fmt.Sprintf("%s, wanted %s: a row of a hundred dots for each. %s.", subject, wanted(c.Prep), strings.Join(parts, "; ")))
}
