package figure

import (
	"minim/report/words/picture"
	"minim/uncertainty/route"
)

// SpreadParts lays out the figure of [Spread] in parts that have so many rows at most, with one axis, so
// that each can be printed on a page in type that can be read. What is not possible stands in the last.
func SpreadParts(c *route.Comparison, most int) (parts []*Figure, err error) {
	order := ranked(c)
	possible := 0
	for possible < len(order) && order[possible].Possible {
		possible++
	}
	for from := 0; from < possible; from += most {
		rows := order[from:min(from+most, possible)]
		if from+most >= possible {
			rows = order[from:]
		}
		part, err := drawSpread(c, nil, picture.OfRoutes(c, rows), rows, windowOf(c))
		if err != nil {
			return nil, err
		}
		parts = append(parts, part)
	}
	return parts, nil
}
