package main

import (
	"strings"

	"minim/report"
	"minim/report/figure"
	"minim/uncertainty/route"
)

// format is a way to write a comparison, beside that on the kit as it is where
// there is one, and what its file is called.
type format struct {
	name, file string
	render     func(c, before *route.Comparison) ([]byte, error)
}

var formats = []format{
	{"text", "compare.txt", asText(report.Text)},
	{"json", "compare.json", report.JSON},
	{"markdown", "compare.md", asText(report.Markdown)},
	{"csv", "compare.csv", report.CSV},
}

// pictures are drawn as SVG and as PNG.
var pictures = []struct {
	file string
	draw func(*route.Comparison) (*figure.Figure, error)
}{
	{"spread", figure.Spread},
	{"budget", figure.Budget},
}

// asText makes a renderer of one that cannot fail.
func asText(words func(c, before *route.Comparison) string) func(c, before *route.Comparison) ([]byte, error) {
	return func(c, before *route.Comparison) ([]byte, error) { return []byte(words(c, before)), nil }
}

// formatCalled returns nil when there is no such format.
func formatCalled(name string) *format {
	for i := range formats {
		if formats[i].name == name {
			return &formats[i]
		}
	}
	return nil
}

func formatNames(last string) string {
	names := make([]string, len(formats))
	for i, f := range formats {
		names[i] = f.name
	}
	return joined(names, last)
}

// joined is "a, b and c", where "and" is the last word to join by.
func joined(words []string, last string) string {
	n := len(words) - 1
	if n < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n], ", ") + " " + last + " " + words[n]
}

// keep stages all formats and pictures for the folder of --out; without it there
// is nothing to keep.
func keep(o compareOptions, c, before *route.Comparison) (*staged, error) {
	if o.out == "" {
		return new(staged), nil
	}
	var files []file
	for _, f := range formats {
		data, err := f.render(c, before)
		if err != nil {
			return nil, err
		}
		files = append(files, file{f.file, data})
	}
	for _, p := range pictures {
		drawn, err := p.draw(c)
		if err != nil {
			return nil, err
		}
		svg, err := drawn.SVG()
		if err != nil {
			return nil, err
		}
		png, err := drawn.PNG()
		if err != nil {
			return nil, err
		}
		files = append(files, file{p.file + ".svg", svg}, file{p.file + ".png", png})
	}
	return stage(o.out, files, o.force)
}
