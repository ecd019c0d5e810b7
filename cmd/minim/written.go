package main

import (
	"embed"
	"io"
	"slices"
	"strings"
	"text/template"

	"minim/equipment/quantity"
	"minim/report/words/clause"
)

// writtenFiles are what is written of the program as it is described: scripts that complete command lines, and a
// manual page.
//
//go:embed written/*.txt
var writtenFiles embed.FS

// printCompletion writes what completes command lines of minim in a shell.
func printCompletion(args []string, w io.Writer) error {
	if len(args) == 0 || !slices.Contains(shells, args[0]) {
		return &usageError{"minim help completion needs the name of a shell", "it is one of " + quantity.Series(shells, "and")}
	}
	return printWritten(args[0], w)
}

// printWritten writes one of the files.
func printWritten(name string, w io.Writer) error {
	t, err := template.New(name+".txt").Funcs(template.FuncMap{
		"join": func(words []string) string { return strings.Join(words, " ") }, "single": single, "manual": inManual, "zsh": describedOption.zsh,
		"names": func(list []describedCommand) []string {
			return clause.Each(list, func(c describedCommand) string { return c.Name })
		},
		"colons":   func(text string) string { return strings.ReplaceAll(text, ":", `\:`) },
		"sentence": func(text string) string { return strings.ToUpper(text[:1]) + text[1:] + "." },
	}).ParseFS(writtenFiles, "written/"+name+".txt")
	if err != nil {
		return err
	}
	return t.Execute(w, describe())
}

// single puts a text in single quotes for a shell.
func single(text string) string { return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'" }

// inManual is a text whose lines are no macros of a manual page, and whose signs stay what they are.
func inManual(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`, "−", `\-`, "'", `\(aq`, "≥", `\(>=`, "µ", `\(mc`, "°", `\(de`).Replace(text)
	return strings.Join(clause.Each(strings.Split(text, "\n"), func(line string) string { return clause.When(strings.HasPrefix(line, "."), `\&`) + line }), "\n")
}
