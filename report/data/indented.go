package data

import (
	"bytes"
	"encoding/json"
	"fmt"
	"unicode"
	"unicode/utf16"
)

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
