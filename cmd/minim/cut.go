package main

import (
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"minim/equipment/quantity"
)

// longest is how many characters of an argument messages repeat.
const longest = 200

// cutting writes messages in which arguments that are longer than that are cut.
type cutting struct {
	io.Writer
	cut *strings.Replacer
}

func newCutting(w io.Writer, args []string) cutting {
	var pairs []string
	for _, arg := range args {
		name, value, _ := strings.Cut(arg, "=")
		for _, long := range []string{arg, strings.TrimLeft(name, "-"), value} {
			if utf8.RuneCountInString(long) <= longest {
				continue
			}
			for _, form := range []string{long, inQuotes(long), quantity.Printable(long)} {
				pairs = append(pairs, form, quantity.Shortened(form))
			}
		}
	}
	return cutting{w, strings.NewReplacer(pairs...)}
}

// inQuotes is a text as it stands in quotes, without these.
func inQuotes(text string) string {
	quoted := strconv.Quote(text)
	return quoted[1 : len(quoted)-1]
}

func (c cutting) Write(p []byte) (int, error) {
	if _, err := io.WriteString(c.Writer, c.cut.Replace(string(p))); err != nil {
		return 0, err
	}
	return len(p), nil
}
