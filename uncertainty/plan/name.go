package plan

import (
	"fmt"

	"minim/report/words/verb"
	"minim/uncertainty/route"
)

// nameAll gives each route a name of its own.
func nameAll(routes []*route.Route) {
	used := make(map[string]int)
	for _, r := range routes {
		name := verb.Name(r.Steps)
		used[name]++
		if n := used[name]; n > 1 {
			name = fmt.Sprintf("%s (%d)", name, n)
		}
		r.Name = name
	}
}
