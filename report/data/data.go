package data

import (
	"bytes"
	"encoding/csv"
)

// Data is a result for other programs.
type Data struct {
	// JSON is the result in full precision, strengths in the unit of the target, undefined
	// values null.
	JSON func() []byte
	// CSV is the result as a table (RFC 4180, UTF-8), with a header. Columns are called as in
	// the JSON and hold the same digits. What is null there is empty here, and lists are joined
	// with "; ". A text that a spreadsheet would take for a formula is made harmless by an
	// apostrophe in front.
	CSV func() []byte
}

func dataOf(whole func() object, rows func() [][]string) Data {
	return Data{func() []byte { return indented(appendJSON(nil, whole())) }, func() []byte {
		var out bytes.Buffer
		_ = csv.NewWriter(&out).WriteAll(rows()) // a buffer takes whatever is written
		return out.Bytes()
	}}
}

// both is a result with that on the kit as it is, or with null where there is none. In the
// table of two a first column says whose rows they are: those of the kit "as it is", and below
// them those of the kit "changed".
func both[R comparable](result, before R, whole func(R) object, rows func(R) [][]string) Data {
	var none R
	if before == none {
		return dataOf(func() object { return append(whole(result), field{"before", nil}) }, func() [][]string { return rows(result) })
	}
	return dataOf(func() object {
		return append(whole(result), field{"before", append(whole(before), field{"before", nil})})
	}, func() [][]string { return csvBoth(rows(result), rows(before)) })
}

// records are a whole of which the rows are records, with the columns that those have.
func records(whole func() object, list func() []object) Data {
	return dataOf(whole, func() [][]string {
		var rows [][]string
		for i, record := range list() {
			var columns, cells []string
			for _, f := range record {
				columns, cells = append(columns, f.name), append(cells, csvCell(f.value))
			}
			if i == 0 {
				rows = append(rows, columns)
			}
			rows = append(rows, cells)
		}
		return rows
	})
}
