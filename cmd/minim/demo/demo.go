// Package demo holds the invented bench, recipe and record of a batch that minim shows
// when it is given no file.
package demo

import (
	_ "embed"

	"minim/equipment"
	"minim/uncertainty/bench"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// Names of the files.
const (
	KitName    = "bench.toml"
	PrepName   = "dye.toml"
	RecordName = "batch.toml"
)

// Kit, Prep and Record are the texts of the files.
var (
	//go:embed batch.toml
	Record []byte
	//go:embed bench.toml
	Kit []byte
	//go:embed dye.toml
	Prep []byte
)

// LoadKit reads the kit of the demo. It is here that all which is made of the demo gets the
// mark of an invented example.
func LoadKit() (*equipment.Kit, error) {
	kit, err := bench.ParseKit(KitName, Kit)
	if err == nil {
		kit.Invented = true
	}
	return kit, err
}

// Load reads the demo.
func Load() (*route.Prep, error) {
	kit, err := LoadKit()
	if err != nil {
		return nil, err
	}
	return bench.ParsePrep(PrepName, Prep, kit)
}

// LoadRecord reads the record of the demo.
func LoadRecord() (*record.Record, error) {
	p, err := Load()
	if err != nil {
		return nil, err
	}
	return bench.ParseRecord(RecordName, Record, p)
}
