package main

import (
	"cmp"
	"os"
	"strconv"
)

// Columns that a screen has at the least and at the most, however narrow or wide the window is.
const (
	leastColumns = 40
	mostColumns  = 120
)

// width is how many columns the screen has: what COLUMNS says, else the window that is written to, else
// as many as usual.
func (c console) width() int {
	columnsOfWindow := 0
	if f, is := c.out.(*os.File); is {
		columnsOfWindow = columns(f)
	}
	said, _ := strconv.Atoi(os.Getenv("COLUMNS"))
	return min(max(cmp.Or(max(said, 0), columnsOfWindow, usualWindow), leastColumns), mostColumns)
}
