package main

import (
	"context"
	"fmt"

	"minim/cmd/minim/demo"
	"minim/equipment"
	"minim/report"
)

// listKit is minim kit.
func listKit(ctx context.Context, args []string, c console) error {
	files, err := parse(newFlags("kit"), args, 0, 1, c)
	if err != nil {
		return unlessHelp(err)
	}
	kit, err := loadKit(files)
	if err != nil {
		return err
	}
	_, err = fmt.Fprint(c.out, report.Kit(kit))
	return err
}

func loadKit(files []string) (*equipment.Kit, error) {
	if len(files) > 0 {
		return equipment.LoadKit(files[0])
	}
	return equipment.ParseKit(demo.KitName, demo.Kit)
}
