package kits

import (
	"minim/equipment"
	"minim/report/page"
)

const mayNotMeetIntroduction = "Where a prep names such a pair minim says STOP, and proposes no route that brings the two " +
	"together, but for the one pair where only the order is wrong. The list is short: what is not in it may be as dangerous, and the safety data sheets decide."

// mayNotMeet lists what may not meet, with trust and sources of every row.
func mayNotMeet(rows []equipment.Incompatible) []page.Block {
	if len(rows) == 0 {
		return nil
	}
	var stated []string
	for i := range rows {
		if rows[i].Source != "" {
			stated = append(stated, rows[i].Source)
		}
	}
	refs, sources := sourceNumbers(stated)
	list := page.Bullets{At: 4}
	for i := range rows {
		text := rows[i].A + ", with " + rows[i].B + ": " + rows[i].What + "; " + rows[i].Trust
		if rows[i].Source != "" {
			text, refs = text+" "+refs[0], refs[1:]
		}
		list.Items = append(list.Items, text)
	}
	return []page.Block{page.Heading{Text: "What may not meet"}, page.Paragraph{Text: mayNotMeetIntroduction}, page.Gap{}, list, numberedSources(sources)}
}
