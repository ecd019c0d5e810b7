package data

import (
	"bytes"
	"encoding/csv"
)

// Data is a result as JSON and as CSV.
type Data struct {
	whole func() object
	rows  func() [][]string
}

// JSON is the result in full precision, strengths in the unit of the target, undefined values
// null.
func (d Data) JSON() ([]byte, error) { return indented(d.whole()) }

// CSV is the result as a table (RFC 4180, UTF-8), with a header. Columns are called as in the
// JSON and hold the same digits. What is null there is empty here, and lists are joined with
// "; ". A text that a spreadsheet would take for a formula is made harmless by an apostrophe in
// front.
func (d Data) CSV() ([]byte, error) {
	var out bytes.Buffer
	err := csv.NewWriter(&out).WriteAll(d.rows())
	return out.Bytes(), err
}

// both is a result with that on the kit as it is, or with null where there is none. In the
// table of two a first column says whose rows they are: those of the kit "as it is", and below
// them those of the kit "changed".
func both[R comparable](result, before R, whole func(R) object, rows func(R) [][]string) Data {
	var none R
	if before == none {
		return Data{func() object { return append(whole(result), field{"before", nil}) }, func() [][]string { return rows(result) }}
	}
	return Data{
		func() object {
			return append(whole(result), field{"before", append(whole(before), field{"before", nil})})
		},
		func() [][]string { return csvBoth(rows(result), rows(before)) },
	}
}

// records are a whole of which the rows are records, with the columns that those have.
func records(whole func() object, list func() []object) Data {
	return Data{whole, func() [][]string {
		var rows [][]string
		for _, record := range list() {
			columns := make([]string, len(record))
			for i, f := range record {
				columns[i] = f.name
			}
			if rows == nil {
				rows = append(rows, columns)
			}
			rows = append(rows, cellsOf(record, columns))
		}
		return rows
	}}
}
