package words

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/page"
	"minim/uncertainty/plan"
	"minim/uncertainty/route"
)

// However long people call a route, its line does not hang over, and Markdown has its name.
func TestOwnRoutesOfLongNames(t *testing.T) {
	c := paperOf(100, 2).Comparison
	long := "the route by the large flask and both of the small pipettes as we made it in spring"
	own := c.Results[0]
	own.Route = &route.Route{Name: long}
	p := &plan.Plan{Comparison: c, Own: []route.Result{own}}
	screen := &page.Page{Blocks: planReasons(p, nil)}
	text := screen.Text(80)
	for line := range strings.Lines(text) {
		assert.LessOrEqual(t, len([]rune(line)), 81, line)
	}
	assert.Contains(t, text, "Your own routes\n  the route by the large flask…: give or take")
	assert.Contains(t, string(screen.Markdown()), "**"+long+":** give or take")
}
