package answer

import (
	"cmp"

	"minim/equipment"
	"minim/report/figure"
	"minim/report/words"
	"minim/uncertainty"
	"minim/uncertainty/bench"
	"minim/uncertainty/plan"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// Question is what is asked about, and how the answer is worked out.
type Question struct {
	// Prep says what is to be made. Changed is it on a kit of which something is supposed, nil
	// where nothing is. Of a batch that was made Prep is what it is to become, nil where that is
	// what was planned.
	Prep, Changed *route.Prep
	// Kit whose instruments are asked for.
	Kit *equipment.Kit
	// Record of a batch that was made; of one that a paper is about it is finished.
	Record *record.Record
	// Bottle is the solution to be brought to another strength.
	Bottle *route.Stock
	// All shows what is left out of a first look, as the budgets of all routes.
	All bool
	// Route asks for the one of that name; "" for all.
	Route string
	// Settings of the simulation, and how a search goes.
	Settings uncertainty.Settings
	Search   plan.Options
	// Date, Label and Origin are what stands on a paper; its Origin gets the files that were read.
	Date   string
	Label  words.Label
	Origin words.Origin
	// PNG makes a PNG of a picture, for HTML to hold; without it HTML goes without pictures.
	PNG func(*figure.Figure) ([]byte, error)
}

// File is a file by its name, which stands for it in messages.
type File struct {
	Name string
	Data []byte
}

// Files are those of a question; there may be none of a batch. What is made of Invented ones
// is marked as an example.
type Files struct {
	Kit, Prep, Record File
	Invented          bool
}

// Read reads the files of a question. Its errors are the mistakes in them.
func Read(f Files) (q Question, err error) {
	if q.Kit, err = bench.ParseKit(f.Kit.Name, f.Kit.Data); err != nil {
		return q, err
	}
	q.Kit.Invented = f.Invented
	if q.Prep, err = bench.ParsePrep(f.Prep.Name, f.Prep.Data, q.Kit); err != nil || f.Record.Data == nil {
		return q, err
	}
	q.Record, err = bench.ParseRecord(f.Record.Name, f.Record.Data, q.Prep)
	return q, err
}

// both works something out for a prep on its kit as it is, where that differs, and on the
// changed kit.
func both[R any](q *Question, work func(p *route.Prep) (R, error)) (result, before R, err error) {
	if q.Changed != nil {
		if before, err = work(q.Prep); err != nil {
			return result, before, err
		}
	}
	result, err = work(cmp.Or(q.Changed, q.Prep))
	return result, before, err
}
