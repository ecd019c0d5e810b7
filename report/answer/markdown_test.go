package answer

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

// The parts come in the order of the first screen, and in its words.
func TestOrderOfMarkdown(t *testing.T) {
	text := string(comparePage(compared(t, demoPrep), nil).Markdown())
	at := 0
	for _, part := range []string{"# Toning dye for a glass fill (invented", "\nWanted: 15 mL of 0.060 % w/v dye in ethanol", "\n## USE: two dilutions\n",
		"\n1. weigh 1.50 g of dye on the 0.01 g scale", "\n- **Strength:** 0.0", "\n- **Inside:** predicted chance", "\n- **Spoilt by:** ",
		"\n## All routes\n", "\n| **two dilutions** | 0.0", "\n## What spoils two dilutions\n", "| linearity near 1.5 g in a boat, 0.01 g scale | 0.01 g scale |",
		"\n## Why not the others\n", "\n- **0.1 g scale, direct:** not possible", "\n## Assumed\n", "\n## From memory\n", "\n## Not counted\n", "\n## Cautions\n",
	} {
		next := strings.Index(text[at:], part)
		if assert.GreaterOrEqual(t, next, 0, "%q is missing or out of order", part) {
			at += next
		}
	}
}

// pipe is a pipe that parts two cells.
var pipe = regexp.MustCompile(`(?:^|[^\\])(?:\\\\)*\|`)

// All rows of a table have as many cells as its head, whatever the names are.
func TestMarkdownTablesAreWhole(t *testing.T) {
	c := compared(t, demoPrep)
	for _, text := range []string{string(comparePage(c, nil).Markdown()), string(comparePage(hostile(c), nil).Markdown())} {
		cells, tables := 0, 0
		for line := range strings.Lines(text) {
			if !strings.HasPrefix(line, "|") {
				cells = 0
				continue
			}
			n := len(pipe.FindAllString(line, -1))
			if cells == 0 {
				cells = n
				tables++
			}
			assert.Equal(t, cells, n, line)
		}
		assert.Equal(t, 2, tables)
	}
}

// hostile gives a comparison names that are Markdown, HTML or formulas.
func hostile(c *route.Comparison) *route.Comparison {
	c.Prep.Title, c.Prep.Note = "# <script>alert(1)</script>", "a|b\n\n## not a heading"
	c.Prep.Solute.Name = "*dye* [here](http://example.org) `code` ~~no~~ $x$ &amp;"
	c.Results[c.Verdict.Use].Route.Name = "| two_dilutions_ \\"
	c.Results[0].Route.Name, c.Results[0].Reason = "=1+1", note.Of("property-lacking", "", "<b>no</b>\n| a | b |")
	budget := c.Results[c.Verdict.Use].Analytic.Budget
	budget[0].Code, budget[0].Owner.Name, budget[0].Uses, budget[0].Assumed = `bias \| of`, "![](x)", 2, true
	for _, text := range []string{"- an item", "1. another", "\t code?", "> quoted"} {
		c.Notes.Assume("property-lacking", "", text)
	}
	return c
}

func TestHostileMarkdown(t *testing.T) {
	skipIfSlow(t)
	c := compared(t, demoPrep)
	plain := string(comparePage(c, nil).Markdown())
	text := string(comparePage(hostile(c), nil).Markdown())
	for _, want := range []string{
		`# \# \<script\>alert(1)\</script\> (a\|b \#\# not a heading)` + "\n",
		`weigh 1.50 g of \*dye\* \[here\](http://example.org) \` + "`code\\`" + ` \~\~no\~\~ \$x\$ \&amp; on`,
		`## USE: \| two\_dilutions\_ \\` + "\n", `| **\| two\_dilutions\_ \\** |`,
		`| bias \\\| of | !\[\](x) | shared, assumed |`,
		`- **\=1+1:** not possible: \<b\>no\</b\> \| a \| b \|` + "\n",
		"\n- \\- an item\n- 1\\. another\n- code?\n- \\> quoted\n",
	} {
		assert.Contains(t, text, want)
	}
	assert.Equal(t, headings(plain), headings(text), "a name makes no heading")
}

func headings(text string) int { return strings.Count("\n"+text, "\n#") }

func TestMarkdownOfALadder(t *testing.T) {
	skipIfSlow(t)
	c := compared(t, demoPrep)
	assert.NotContains(t, string(comparePage(c, nil).Markdown()), "Ladder")
	c.Prep.Ladder = &route.Ladder{With: &equipment.Measure{Name: "a|b"}, In: &equipment.Measure{Name: "flask", Capacity: 25}}
	c.Results[c.Verdict.Use].Ladder = []route.Rung{
		{Strength: strengths.Strength{Text: "0.02 % w/v"}, TakeML: 5, Analytic: uncertainty.Analytic{Value: 0.02, ExpandedUncertainty: 0.001}},
		{Strength: strengths.Strength{Text: "0.01 % w/v"}, Reason: note.Of("property-lacking", "", "a | is no reason")},
	}
	assert.Contains(t, string(comparePage(c, nil).Markdown()), "\n## Ladder\n\nfrom this solution: an aliquot with the a\\|b, made up to 25 mL in the flask\n\n"+
		"| rung | take | strength | give or take | ratio to the last | give or take |\n| --- | --: | --: | --: | --: | --: |\n"+
		"| 0.02 % w/v | 5 mL | 0.0200 | 0.0010 |  |  |\n| 0.01 % w/v | not possible: a \\| is no reason |  |  |  |  |\n\n## What spoils")
}

func TestMarkdownWithoutAnythingUncertain(t *testing.T) {
	skipIfSlow(t)
	c := compared(t, demoPrep)
	c.Prep.Title = ""
	c.Results[c.Verdict.Use].Analytic.Budget = nil
	text := string(comparePage(c, nil).Markdown())
	assert.True(t, strings.HasPrefix(text, "Wanted: "), text)
	assert.Contains(t, text, "## What spoils two dilutions\n\nNothing that is counted.\n")
}
