package benchfile

import "cmp"

// longestLists are the most items of lists by their key, of tables of the same header, and
// of what they make together.
var longestLists = map[string]int{
	"instruments of a kit": 100, "candidate": 50, "route": 200, "steps": 100, "stock": 50, "packet": 50, "hazard": 50, "tolerance": 20,
	"ladder": 50, "entries": 2000, "readings": 1000, "hazards": 50, "words": 50, "without": 100, "any other list": 200,
}

// longestTexts are the most characters of a text by its key.
var longestTexts = map[string]int{"note": 5000, "title": 300, "any other text": 500}

// longestText is the most characters that a text at a key may have.
func longestText(key string) int { return cmp.Or(longestTexts[key], longestTexts["any other text"]) }

// LongestList is the most items that a list at a key may have.
func LongestList(key string) int { return cmp.Or(longestLists[key], longestLists["any other list"]) }
