// Package data has a result as JSON and as CSV, for other programs: in full precision, with
// the sentences of package words beside the numbers.
package data

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"unicode"
	"unicode/utf16"

	"minim/equipment"
	"minim/report/words/inline"
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

// field is a name of the JSON with what stands there; object is fields in their order.
type field struct {
	name  string
	value any
}

type object []field

// appendJSON adds a value in JSON: all digits of a finite number, and null for one that is not.
func appendJSON(out []byte, value any) []byte {
	switch value := finite(value).(type) {
	case object:
		out = append(out, '{')
		for i, f := range value {
			if i > 0 {
				out = append(out, ',')
			}
			out = appendJSON(append(strconv.AppendQuote(out, f.name), ':'), f.value)
		}
		return append(out, '}')
	case []object:
		out = append(out, '[')
		for i, o := range value {
			if i > 0 {
				out = append(out, ',')
			}
			out = appendJSON(out, o)
		}
		return append(out, ']')
	}
	text, err := json.Marshal(plain(finite(value)))
	if err != nil {
		panic(err) // it is made of texts, numbers and lists of them
	}
	return append(out, text...)
}

// finite is nil in place of a number that is not finite.
func finite(value any) any {
	switch value := value.(type) {
	case float64:
		return only(!math.IsNaN(value) && !math.IsInf(value, 0), value)
	case []float64:
		return each(value, func(x *float64) any { return finite(*x) })
	}
	return value
}

// plain is a text, or a list of texts, without what sets symbols apart.
func plain(value any) any {
	switch value := value.(type) {
	case string:
		return inline.Plain(value)
	case []string:
		return each(value, func(text *string) string { return inline.Plain(*text) })
	}
	return value
}

// each is a list of what is made of the things in another; it is never nil, so that JSON
// shows [] and not null.
func each[T, R any](list []T, of func(*T) R) []R {
	out := make([]R, len(list))
	for i := range list {
		out[i] = of(&list[i])
	}
	return out
}

// list is never nil either.
func list(texts []string) []string { return append([]string{}, texts...) }

// only is a value, nil and so null where it is not known.
func only(known bool, value any) any {
	if !known {
		return nil
	}
	return value
}

// orNull is null for an empty text, positive for a limit that is not stated, place for a
// number from 1 that there is none of, and stated for what is not stated.
func orNull(text string) any { return only(text != "", text) }

func positive(x float64) any { return only(x != 0, x) }

func place(n int) any { return only(n != 0, n) }

func stated(x equipment.Stated) any { return only(x.Known, x.Value) }

// priced are the two fields of a price.
func priced(p equipment.Price) object {
	return object{{"price", only(p.Stated(), p.Amount)}, {"currency", only(p.Stated(), orNull(p.Currency))}}
}

// set puts a value at a name that is there.
func (o object) set(name string, value any) {
	for i := range o {
		if o[i].name == name {
			o[i].value = value
		}
	}
}
