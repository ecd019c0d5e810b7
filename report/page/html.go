package page

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"html/template"
	"reflect"
	"regexp"
	"strings"

	"minim/report/words/inline"
)

var (
	//go:embed page.html
	pageText string
	//go:embed page.css
	styleText string

	pageTemplate = template.Must(template.New("page").Funcs(template.FuncMap{
		"sheets": Labels.set,
		"clean":  visible,
		"parts":  parts,
		"shown":  func(blocks []Block) []Block { return shown(false, blocks) },
		"form":   func(b Block) string { return reflect.Indirect(reflect.ValueOf(b)).Type().Name() },
		"words":  Heading.words, "joined": Facts.joined, "source": Figure.source,
		"columns": (*Table).columns, "cells": (*Table).set,
	}).Parse(pageText))
)

// htmlPage is what the page template is filled with.
type htmlPage struct {
	*Page
	Style  template.CSS
	Policy string
}

// HTML renders a page as one file that opens without a network: the style sheet and
// the pictures are in it. Its policy permits no script, and nothing from elsewhere.
func (p *Page) HTML() ([]byte, error) {
	style := styleText + p.style()
	sum := sha256.Sum256([]byte(style))
	policy := "default-src 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'; img-src data:; base-uri 'none'; form-action 'none'"
	var out bytes.Buffer
	err := pageTemplate.Execute(&out, htmlPage{p, template.CSS(style), policy})
	return out.Bytes(), err
}

// source is the picture as a URL that holds it.
func (f Figure) source() template.URL {
	return template.URL("data:image/png;base64," + base64.StdEncoding.EncodeToString(f.PNG))
}

// visible is a text of one style without what cannot be seen: control characters, and marks that
// turn the direction of writing. A break of the line becomes a space.
func visible(text string) string {
	return hidden.Replace(inline.Plain(typeset(oneLine(text))))
}

// parts are a text as it is set: in one style each, and some of them dates, which no line is to
// break at their hyphens.
func parts(text string) (list []part) {
	for _, p := range inline.Parts(typeset(oneLine(text))) {
		shown := hidden.Replace(p.Text)
		switch p.Style {
		case inline.Italic:
			list = append(list, part{Italic: shown})
		case inline.Index:
			list = append(list, part{Index: shown})
		default:
			list = append(list, datesApart(shown)...)
		}
	}
	return list
}

func datesApart(text string) (list []part) {
	for at := date.FindStringIndex(text); at != nil; at = date.FindStringIndex(text) {
		list = append(list, part{Before: text[:at[0]], Date: text[at[0]:at[1]]})
		text = text[at[1]:]
	}
	return append(list, part{Before: text})
}

// part is a date, a symbol or an index, "" for none, with the text before it.
type part struct{ Before, Date, Italic, Index string }

var (
	date = regexp.MustCompile(`\b\d{4}-\d\d-\d\d\b`)
	// hidden is what stands for such a character in a text that was for a screen.
	hidden = strings.NewReplacer("\uFFFD", "")
)
