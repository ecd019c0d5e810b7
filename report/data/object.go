package data

import (
	"encoding/json"
	"math"
	"strconv"

	"minim/equipment"
)

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
	text, err := json.Marshal(finite(value))
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
