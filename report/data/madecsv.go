package data

import (
	"minim/report/words"
	"minim/uncertainty/rescue"
	"minim/uncertainty/route"
)

// MadeCSV is a row for the plan, one for the batch, and one for each way to correct it,
// with the columns of [CSV]; its column use marks the batch.
func MadeCSV(b *words.Batch) ([]byte, error) {
	c := b.Comparison()
	if b.Rescue != nil && b.Rescue.Prep.Target.Unit == b.Prep.Target.Unit {
		c.Results = append(c.Results, b.Rescue.Results...)
	}
	return csvFile(b.Prep, csvRows, c, nil)
}

// RescueCSV is a row for each way to correct a solution, with the columns of [CSV].
func RescueCSV(r *rescue.Rescue) ([]byte, error) {
	return csvFile(r.Prep, csvRows, r.Comparison, (*route.Comparison)(nil))
}
