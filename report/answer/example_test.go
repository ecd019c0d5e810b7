package answer_test

import (
	"context"
	"fmt"
	"strings"

	"minim/report/answer"
	"minim/uncertainty"
)

// The files of an invented bench, as a page in a browser has them.
const (
	kitText = `[[balance]]
name = "0.01 g scale"
capacity = "200 g"
readability = "0.01 g"
[[flask]]
name = "25 mL flask"
capacity = "25 mL"
class = "A"
`
	prepText = `target = "4 % w/v"
volume = "25 mL"
tolerance = "5 % of target"
[solute]
name = "borax"
[solvent]
name = "water"
[[route]]
name = "direct"
steps = [ { weigh = "1.00 g", on = "0.01 g scale" }, { make-up-to = "25 mL", in = "25 mL flask" } ]
`
)

// For most uses: read the bytes of a kit and a prep, ask, and take the answer in a format.
func Example() {
	q, err := answer.Read(answer.Files{Kit: answer.File{Name: "bench.toml", Data: []byte(kitText)}, Prep: answer.File{Name: "borax.toml", Data: []byte(prepText)}})
	if err != nil {
		fmt.Println(err)
		return
	}
	q.Settings = uncertainty.Settings{Trials: 10_000, Seed: 1, Coverage: 0.95}
	a, err := answer.Ask(context.Background(), "compare", q)
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := a.In("text")
	first, _, _ := strings.Cut(string(text), "\n   1")
	fmt.Println(first)
	fmt.Println(err, a.Comparison.Verdict.Meets, answer.FileNames("compare"))
	// Output:
	// Wanted: 25 mL of 4 % w/v borax in water, within 5 % of target (3.8 to 4.2)
	//
	// USE  direct
	// <nil> true [compare.txt compare.json compare.md compare.html compare.csv spread.svg spread.png budget.svg budget.png vessels.svg vessels.png result.svg result.png]
}
