package glance

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/page"
	"minim/uncertainty/policy"
)

// crowded is a screen with more than there is room for.
func crowded(steps, rows, others int, caution string) *Screen {
	s := &Screen{
		head: []page.Block{page.Paragraph{Text: "Dye (invented)"}}, verdict: fact{Label: "USE", Text: "two dilutions: 99.7 in 100 inside, 95 asked for"},
		facts: []fact{{Label: "Gives", Text: "20 mL"}}, hazards: []string{caution}, rowName: "route",
		table: &page.Table{Head: []string{"route", "inside", "why not"}, Numbers: 1, WordsLast: true, Indent: 2, Most: 24, Least: 12},
	}
	for range steps {
		s.steps = append(s.steps, "take 2 mL with the 2 mL pipette, into what was measured first; mix; rinse it with what is taken")
	}
	for i := range rows {
		s.table.Rows = append(s.table.Rows, page.Row{Cells: []string{"a route", "31.2 in 100", "less sure"}, Marked: i == rows-1})
		s.order = append([]int{i}, s.order...)
	}
	for range others {
		s.others = append(s.others, fact{Label: "Steps a", Text: "2 in 25 mL"})
	}
	s.hidden = []count{{12, "assumed"}, {1, "rungs"}, {0, "not counted"}}
	return s
}

// Whatever there is too much of gives way until 24 lines hold it; hazards never do.
func TestRoom(t *testing.T) {
	long := strings.TrimSpace(strings.Repeat("Acid: pour the acid into the water, slowly. ", 8))
	for _, steps := range []int{0, 1, 7, 8, 9, 30} {
		for _, rows := range []int{1, 6, 7, 40} {
			for _, caution := range []string{"Dye: irritant.", long} {
				s := crowded(steps, rows, 2, caution)
				for _, width := range []int{40, 60, 80, 100, 120} {
					text := s.Text(width, "")
					words := strings.Join(strings.Fields(text), " ")
					if width >= Columns {
						assert.LessOrEqual(t, strings.Count(text, "\n"), Lines, text)
					}
					assert.Contains(t, words, caution)
					assert.Equal(t, 2, strings.Count(words, "99.7 in 100 inside, 95 asked for"), text)
					assert.Contains(t, words, "12 assumed, 1 rung: --all")
				}
			}
		}
	}
	s := crowded(7, 2, 0, long)
	for range 5 {
		s.helps = append(s.helps, fact{Label: "Helps", Text: "a finer balance"})
	}
	text := s.Text(80, "")
	assert.Contains(t, text, "3 more steps: --all")
	assert.Equal(t, 1, strings.Count(text, "finer balance"), "hints give way to steps: %s", text)
	assert.Contains(t, text, "4 hints: --all")
	assert.Contains(t, crowded(9, 1, 0, "").Text(120, ""), "2 more steps: --all", "of more than eight the first seven are shown")
	assert.NotContains(t, crowded(8, 1, 0, "").Text(120, ""), "more step")
	assert.Contains(t, crowded(1, 7, 0, "").Text(80, ""), "1 route, ")
	assert.Equal(t, 6, strings.Count(crowded(1, 40, 0, "").Text(80, ""), "less sure"))
}

// The row of the route to use stays to the last.
func TestUsedRouteStays(t *testing.T) {
	for n := 1; n <= 6; n++ {
		rows := crowded(1, 9, 0, "").rows(n)
		assert.Len(t, rows, n)
		assert.True(t, rows[n-1].Marked)
	}
}

// Every rule of the policy has a reason of a few words, or one with figures.
func TestEveryRuleHasAReason(t *testing.T) {
	for _, rule := range []policy.Rule{
		policy.Use, policy.Doubt, policy.Holding, policy.Meeting, policy.Chance, policy.Misreading, policy.LowOnScale, policy.BothWays, policy.TooLarge,
		policy.Roundness, policy.Solute, policy.Surer, policy.Name,
	} {
		assert.NotEmpty(t, reasons[rule], rule)
		assert.LessOrEqual(t, len(reasons[rule]), 30, rule)
	}
}

// A reason that runs across is its first part, cut at a word.
func TestShortly(t *testing.T) {
	assert.Equal(t, "not possible: 0.009 g shows as 0.0 g on the 0.1 g…", shortly("not possible: 0.009 g shows as 0.0 g on the 0.1 g balance of the house; the least it can show is 0.1 g"))
	assert.Equal(t, "too little", shortly("too little; and more"))
}
