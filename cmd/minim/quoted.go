package main

import (
	"fmt"
	"os"
	"strings"
	"unicode"
	"unicode/utf8"
)

// special are the characters that a shell would not take as they are. A backslash is one,
// but on Windows, where it stands between folders.
var special = map[bool]string{false: " \t\"'`$!&|;<>()*?[]{}#~^\\", true: " \t\"'`$!&|;<>()*?[]{}#~^"}[os.PathSeparator == '\\']

// quoted puts a word that a shell would not take as it is in quotes. What it returns can
// be shown: a line feed, or what has no shape of its own, is written as an escape, which
// bash, zsh and the shells of POSIX.1-2024 read.
func quoted(word string) string {
	switch {
	case !shows(word):
		return "$'" + escaped(word) + "'"
	case word != "" && word[0] != '=' && !strings.ContainsAny(word, special):
		return word
	case !strings.ContainsAny(word, "\"`$!\\"):
		return `"` + word + `"`
	}
	return "'" + strings.ReplaceAll(word, "'", `'\''`) + "'"
}

// quotedFile is quoted for the name of a file, which no command takes for an option.
func quotedFile(name string) string {
	if strings.HasPrefix(name, "-") {
		name = "./" + name
	}
	return quoted(name)
}

// shows reports whether every character of a text has a shape.
func shows(text string) bool {
	return utf8.ValidString(text) && !strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsGraphic(r) })
}

// escaped is a word for between $' and ', its bytes in octal digits where they have no shape
// or a meaning.
func escaped(word string) string {
	var b strings.Builder
	for i, r := range word {
		switch size := max(1, utf8.RuneLen(r)); {
		case r == '\n':
			b.WriteString(`\n`)
		case r == utf8.RuneError && !strings.HasPrefix(word[i:], string(utf8.RuneError)):
			fmt.Fprintf(&b, `\%03o`, word[i])
		case !unicode.IsGraphic(r) || strings.ContainsRune(`\'!`, r):
			for _, c := range []byte(word[i : i+size]) {
				fmt.Fprintf(&b, `\%03o`, c)
			}
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
