package kits

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"

	"minim/equipment"
	"minim/report/page"
)

// Every row is printed with its trust, and every source once.
func TestMayNotMeetPrintsEveryRow(t *testing.T) {
	rows := equipment.Incompatibles()
	text := (&page.Page{Blocks: ClassBlocks(&Tables{MayNotMeet: rows})}).Text(classesWidth)
	for line := range strings.Lines(text) {
		if strings.TrimSpace(line) != "" && !isOneAddress(line) {
			assert.LessOrEqual(t, utf8.RuneCountInString(strings.TrimRight(line, "\n")), classesWidth, line)
		}
	}
	joined := strings.Join(strings.Fields(text), " ")
	for i := range rows {
		assert.Contains(t, joined, rows[i].A+", with "+rows[i].B+": "+rows[i].What+"; "+rows[i].Trust)
		for source := range strings.SplitSeq(rows[i].Source, " ; ") {
			if source != "" && utf8.RuneCountInString(source) <= classesWidth-7 {
				assert.Equal(t, 1, strings.Count(joined, "] "+source), source)
			}
		}
	}
	assert.Contains(t, text, "The list is short")
}
