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

// Load reads the demo.
func Load() (*route.Prep, error) {
	kit, err := equipment.ParseKit(KitName, Kit)
	if err != nil {
		return nil, err
	}
	return route.ParsePrep(PrepName, Prep, kit)
}
