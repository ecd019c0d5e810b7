package figure

import (
	"minim/report/words"
	"minim/report/words/picture"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// Batch lays out the figure of the spread of one batch: as it was planned, as it was
// made, and as it will be when it is corrected as recommended, in the form of [Spread].
func Batch(b *words.Batch) (*Figure, error) {
	c := b.Spread()
	return drawSpread(c, picture.OfBatch(c, b.Finished()), inOrder(c)), nil
}

// Ways lays out the figure of the spread of the ways to correct a solution, in the form
// of [Spread].
func Ways(r *rescue.Rescue) (*Figure, error) {
	return drawSpread(r.Comparison, picture.OfWays(r.Comparison), inOrder(r.Comparison)), nil
}

// inOrder are the results as they stand.
func inOrder(c *route.Comparison) []*route.Result {
	list := make([]*route.Result, len(c.Results))
	for i := range c.Results {
		list[i] = &c.Results[i]
	}
	return list
}
