package plan

import (
	"slices"
	"strings"
)

// missed gathers what several searches have not searched: each once, with the benches
// that it concerns.
type missed struct {
	what []string
	on   map[string][]string
}

// add takes in what the search on a bench has not searched.
func (m *missed) add(bench string, what []string) {
	if m.on == nil {
		m.on = make(map[string][]string)
	}
	for _, w := range what {
		if m.on[w] == nil {
			m.what = append(m.what, w)
		}
		if !slices.Contains(m.on[w], bench) {
			m.on[w] = append(m.on[w], bench)
		}
	}
}

// texts are "routes from a stock: with the scale, with the balance".
func (m *missed) texts() []string {
	var list []string
	for _, w := range m.what {
		list = append(list, w+": "+strings.Join(m.on[w], ", "))
	}
	return list
}
