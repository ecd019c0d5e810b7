package plan

import (
	"context"
	"fmt"

	read "minim/uncertainty/bench"
	"minim/uncertainty/route"
)

// ExampleSearch finds what no other route beats.
func ExampleSearch() {
	p, err := read.LoadPrep(context.Background(), "../../cmd/minim/demo/dye.toml", "")
	if err != nil {
		fmt.Println(err)
		return
	}
	o := quick(1)
	o.Prefer = route.Fewest
	found, err := Search(context.Background(), p, o)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(found.Results[found.Verdict.Use].Route.Name)
	// Output: 0.055 g in 90 mL
}
