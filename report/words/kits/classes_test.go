package kits

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/report/page"
)

// Every row is printed, under its own standard; no line is wider than is promised or ends
// in spaces; each table names each of its sources once.
func TestClassesPrintsEveryRow(t *testing.T) {
	rows := equipment.Classes()
	text := (&page.Page{Blocks: ClassBlocks(&Tables{Classes: rows})}).Text(classesWidth)
	for line := range strings.Lines(text) {
		if strings.TrimSpace(line) != "" && !isOneAddress(line) {
			assert.LessOrEqual(t, utf8.RuneCountInString(strings.TrimRight(line, "\n")), classesWidth, line)
		}
		assert.Equal(t, strings.TrimRight(line, " \n"), strings.TrimRight(line, "\n"), "spaces at the end of a line")
	}
	printed := 0
	for _, table := range strings.Split(text, "\n\n")[1:] {
		lines := strings.Split(table, "\n")
		var sources []string
		for _, line := range lines[2:] {
			switch {
			case strings.HasPrefix(line, "  ["):
				sources = append(sources, line[7:])
			case strings.Contains(line, " ["):
				printed++
				last := line[strings.LastIndex(line, "[")+1 : strings.LastIndex(line, "]")]
				assert.Contains(t, table, "\n  ["+last+"]", line)
			}
		}
		slices.Sort(sources)
		assert.Equal(t, len(sources), len(slices.Compact(sources)), lines[0])
	}
	assert.Equal(t, len(rows), printed)
	for _, c := range rows {
		assert.Contains(t, text, "\n"+classHeading(c)+"\n")
	}
}

// The figures are those of the tables of equipment; here it is the arrangement that counts.
func TestClassesArranges(t *testing.T) {
	rows := []equipment.Class{
		{Kind: "one-mark", Standard: "ISO", Number: "ISO 1", Edition: "2001", Name: "A", Marked: "Ex",
			Capacity: 10, Tolerance: 0.02, Source: "a book ; another", Trust: "two sources"},
		{Kind: "piston", Form: "air", Standard: "ISO", Number: "ISO 2", Edition: "2002", Marked: "Ex",
			Capacity: 0.2, Tolerance: 0.0016, Random: 0.0006, Source: "a page", Trust: "one source"},
		{Kind: "one-mark", Standard: "ISO", Number: "ISO 1", Edition: "2001", Name: "B", Marked: "Ex",
			Capacity: 10, Tolerance: 0.04, Bore: 4, BoreTrust: "from memory", Source: "a third ; a book", Trust: "from memory"},
		{Kind: "syringe", Standard: "ISO", Number: "ISO 3", Edition: "2003", Marked: "Ex", Capacity: 1, Tolerance: 0.05, Share: 0.05,
			BelowHalfFixed: 0.015, BelowHalfShare: 0.02, DeadSpace: 0.07, DeadSpaceTrust: "one source", Source: "a page", Trust: "one source"},
		{Kind: "balance", Form: "pocket", Capacity: 200, Division: 0.01, Tolerance: 0.02, Random: 0.01, Source: "a leaflet", Trust: "one source"},
		{Kind: "balance", Form: "fine", Capacity: 100, Division: 0.001, Tolerance: 0.002, Random: 0.001, RandomTrust: "from memory", Source: "a leaflet", Trust: "one source"},
		{Kind: "graduated", Standard: "ISO", Number: "ISO 4", Edition: "2004", Name: "B", Marked: "Ex",
			Capacity: 2, Division: 0.02, DivisionTrust: "from memory", Tolerance: 0.02, Source: "a rule", Trust: "derived"},
	}
	_, tables, _ := strings.Cut((&page.Page{Blocks: ClassBlocks(&Tables{Classes: rows})}).Text(classesWidth), "\n\n")
	assert.Equal(t, strings.TrimPrefix(`
one-mark pipette, ISO 1:2001, Ex
     capacity, mL  limit, mL  bore, mm  trust and sources
  A            10       0.02            two sources [1] [2]
  B            10       0.04        4*  from memory [1] [3]
  [1]  a book
  [2]  another
  [3]  a third

piston pipette, ISO 2:2002, Ex
       capacity, µL  limit, µL  random, µL  trust and sources
  air           200        1.6         0.6  one source  [1]
  [1]  a page

syringe, ISO 3:2003, Ex
    capacity, mL  limit below half  limit  dead space, mL  trust and sources
               1    0.015 mL + 2 %    5 %            0.07  one source  [1]
  [1]  a page

balance, typical figures
          capacity, g  shows, g  linearity, g  repeatability, g  trust and sources
  pocket          200     0.01          0.02             0.01    one source  [1]
  fine            100     0.001         0.002            0.001*  one source  [1]
  [1]  a leaflet

graduated pipette, ISO 4:2004, Ex
     capacity, mL  division, mL  limit, mL  trust and sources
  B             2         0.02*       0.02  derived     [1]
  [1]  a rule
`, "\n"), tables)
}

// isOneAddress reports whether a line holds an address alone, which is not broken.
func isOneAddress(line string) bool {
	words := strings.Fields(line)
	return strings.Contains(words[len(words)-1], "://") && len(words) < 3
}

// classesWidth is how wide the page of the class tables is.
const classesWidth = 100
