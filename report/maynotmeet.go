package report

import (
	"strings"

	"minim/equipment"
)

const mayNotMeetIntroduction = "What may not meet. Where a prep names such a pair minim says STOP, and proposes no route that brings the two " +
	"together, but for the one pair where only the order is wrong. The list is short: what is not in it may be as dangerous, and the safety data sheets decide."

// MayNotMeet prints the table of what may not meet, with trust and sources of every row.
func MayNotMeet(rows []equipment.Incompatible) string {
	b := new(strings.Builder)
	b.WriteString("\n")
	for _, line := range fold(mayNotMeetIntroduction, classesWidth) {
		b.WriteString(line + "\n")
	}
	b.WriteString("\n")
	var stated []string
	for i := range rows {
		if rows[i].Source != "" {
			stated = append(stated, rows[i].Source)
		}
	}
	refs, sources := sourceNumbers(stated)
	for i := range rows {
		text := rows[i].A + ", with " + rows[i].B + ": " + rows[i].What() + "; " + rows[i].Trust
		if rows[i].Source != "" {
			text, refs = text+" "+refs[0], refs[1:]
		}
		for j, line := range fold(text, classesWidth-4) {
			b.WriteString(strings.Repeat(" ", 2+2*min(j, 1)) + line + "\n")
		}
	}
	printSources(b, sources)
	return b.String()
}
