// Package data has a result as JSON and as CSV, for other programs: in full precision, with
// the sentences of package words beside the numbers.
package data

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"unicode"
	"unicode/utf16"
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

// indented is a JSON that people can read as well. What has no shape of its own, such as a
// mark that turns the direction of writing, is in it as an escape (RFC 8259, 7).
func indented(data []byte) []byte {
	var spaced, b bytes.Buffer
	if err := json.Indent(&spaced, data, "", "  "); err != nil {
		panic(err)
	}
	for _, r := range spaced.String() {
		switch {
		case r == '\n' || unicode.IsGraphic(r):
			b.WriteRune(r)
		case r > 0xFFFF:
			high, low := utf16.EncodeRune(r)
			fmt.Fprintf(&b, `\u%04x\u%04x`, high, low)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
	}
	return append(b.Bytes(), '\n')
}
