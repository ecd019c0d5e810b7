package bench

import (
	"context"
	"fmt"
	"math"
	"strconv"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// LoadRecord reads the record file of a batch of a prep. A mistake in it is a
// *benchfile.Mistake.
func LoadRecord(ctx context.Context, path string, p *route.Prep) (*record.Record, error) {
	return load(ctx, path, func(name string, text []byte) (*record.Record, error) { return ParseRecord(name, text, p) })
}

// ParseRecord reads the text of a record; name stands for the file in messages. What was planned
// is what the record carries; where it carries nothing, what the prep says now.
func ParseRecord(name string, text []byte, p *route.Prep) (*record.Record, error) {
	r, err := readRecord(name, text, p)
	if err != nil {
		return nil, err
	}
	return r.Record, nil
}

func readRecord(name string, text []byte, p *route.Prep) (*recordReader, error) {
	whole, cut := wholeLines(name, text)
	root, err := benchfile.Parse(name, whole)
	if err != nil {
		return nil, err
	}
	if holds(root, "target") {
		return nil, root.Refuse("this is a prep, not a record", "", benchfile.BeginRecord)
	}
	if holds(root, kitTables()...) {
		return nil, root.Refuse("this is a kit, not a record", "", benchfile.BeginRecord)
	}
	root.DropBlanks()
	root.Need("route", "entries")
	r := &recordReader{Record: &record.Record{File: name, Digest: sha256Of(text), Now: p, Batch: root.Text("batch"), Note: root.Text("note"), Cut: cut}}
	r.readPlan(root, p)
	entries := root.Table("entries")
	if r.Planned == nil || entries == nil {
		entries.Accept()
		return nil, root.Err()
	}
	r.read(entries, prepReader{r.Plan})
	if err := root.Err(); err != nil {
		return nil, err
	}
	r.Prep = r.onTheDay(r.Plan)
	r.follow(entries)
	if err := root.Err(); err != nil {
		return nil, err
	}
	r.times()
	r.Backward = r.backwards()
	r.compareToNow(root.Table(plannedKey))
	for _, e := range r.entries {
		r.Entries = append(r.Entries, e.Entry)
	}
	return r, nil
}

// recordReader reads a record.
type recordReader struct {
	*record.Record
	entries []*entry
	own     *route.Prep // the plan as the record carries it, nil where it does not
	last    int         // the greatest number of an entry, those that are blank included
	blanks  []int       // the numbers of those that are blank
}

// entry is one of a record while it is read.
type entry struct {
	record.Entry
	when      moment
	asPlanned bool // what is written is from the plan, and not a reading
	known     bool // what it says of a step or the bench could be read
	table     *benchfile.Table
}

// read reads the entries, and checks what can be said of each by itself and against
// those above it.
func (r *recordReader) read(entries *benchfile.Table, p prepReader) {
	for i, key := range entries.Keys() {
		if most := benchfile.LongestList("entries"); i >= most {
			entries.FailKey(key, fmt.Sprintf("a record has at most %d entries", most), "go on in a record of its own for the next batch")
			entries.Accept()
			return
		}
		t := entries.Table(key)
		if t == nil {
			continue
		}
		number, err := strconv.Atoi(key)
		if err != nil || number < 1 || !quantity.Limits.WholeNumber.Holds(float64(number)) {
			entries.FailKey(key, "entries are numbered", "write 1, 2, 3 and so on before the =")
			continue
		}
		r.last = max(r.last, number)
		t.Call("entry " + key)
		e := &entry{Entry: record.Entry{Number: number, Line: t.Line()}, table: t}
		if !e.fill(r, p) {
			r.blanks = append(r.blanks, number)
			continue
		}
		if n := len(r.entries); n > 0 && e.Number <= r.entries[n-1].Number {
			entries.FailKey(key, fmt.Sprintf("stands below entry %d", r.entries[n-1].Number), "number the entries in the order in which they were written")
		}
		r.entries = append(r.entries, e)
	}
}

// onTheDay is the prep with the bench as it was: its temperature within the range of
// all that was read.
func (r *recordReader) onTheDay(p *route.Prep) *route.Prep {
	low, high, known := math.Inf(1), math.Inf(-1), false
	for _, e := range r.entries {
		if !e.Temperature.Known || e.StruckBy > 0 {
			continue
		}
		low = min(low, e.Temperature.Value-e.Within.Value)
		high = max(high, e.Temperature.Value+e.Within.Value)
		known = known || e.Within.Known
	}
	if low > high {
		return p
	}
	q := *p
	q.Bench.Temperature = equipment.Stated{Value: (low + high) / 2, Known: true}
	q.Bench.Within = equipment.Stated{Value: (high - low) / 2, Known: known || high > low}
	return &q
}
