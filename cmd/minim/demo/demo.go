// Package demo holds the invented bench, recipe and record of a batch that minim shows
// when it is given no file.
package demo

import (
	_ "embed"

	"minim/report/answer"
)

var (
	//go:embed batch.toml
	batch []byte
	//go:embed bench.toml
	kit []byte
	//go:embed dye.toml
	prep []byte
)

// Files of the demo. All that is made of them gets the mark of an invented example.
var Files = answer.Files{
	Kit: answer.File{Name: "bench.toml", Data: kit}, Prep: answer.File{Name: "dye.toml", Data: prep}, Record: answer.File{Name: "batch.toml", Data: batch},
	Invented: true,
}
