package main

import (
	_ "embed"
	"io"
	"strings"

	"minim/report/page"
)

// wordsText has a line for each special word of the screens, with a sentence that says what it means.
//
//go:embed words.txt
var wordsText string

// glossary are the words and what they mean, in the order of the alphabet.
func glossary() (list []page.Fact) {
	for line := range strings.Lines(wordsText) {
		word, meaning, _ := strings.Cut(strings.TrimSpace(line), ": ")
		list = append(list, page.Fact{Label: word, Text: meaning})
	}
	return list
}

// wordsAt is the column of the meanings.
const wordsAt = 22

// printWords says what the words of the screens mean, for the window that is written to.
func printWords(w io.Writer) error {
	p := &page.Page{Blocks: []page.Block{page.Facts{List: glossary(), At: wordsAt}}}
	_, err := io.WriteString(w, p.Text(console{out: w}.width()))
	return err
}
