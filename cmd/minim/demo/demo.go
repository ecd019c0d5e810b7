// Package demo holds the invented bench and recipe that minim shows when it is
// given no file.
package demo

import (
	_ "embed"

	"minim/equipment"
	"minim/uncertainty/route"
)

// Names of the two files.
const (
	KitName  = "bench.toml"
	PrepName = "dye.toml"
)

// Kit and Prep are the texts of the files.
var (
	//go:embed bench.toml
	Kit []byte
	//go:embed dye.toml
	Prep []byte
)

// Load reads the demo, its kit with changes in memory.
func Load(changes ...equipment.Change) (*route.Prep, error) {
	kit, err := equipment.ParseKitChanged(KitName, Kit, changes)
	if err != nil {
		return nil, err
	}
	p, err := route.ParsePrep(PrepName, Prep, kit)
	if err != nil {
		return nil, err
	}
	p.Changes = changes
	return p, nil
}
