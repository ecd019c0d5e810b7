package equipment

import (
	"slices"
	"sync"
)

// drawsWater is a row of names of solids whose mass changes with the air: hydrates lose water,
// hygroscopic ones take it up.
type drawsWater struct {
	Why    string   `csv:"why"`
	Names  []string `csv:"names"`
	Source string   `csv:"source"`
	Trust  string   `csv:"trust"`
}

var drawingWater = sync.OnceValue(func() (names []phrase) {
	for _, row := range readTable[drawsWater](tableFiles, "draws_water") {
		names = append(names, newPhrases(row.Names)...)
	}
	return names
})

// DrawsWater reports whether a solid is known by its name to take up water from the air, or to
// lose some to it. What is not known may do so as well.
func DrawsWater(name string) bool {
	words := textWords(name, 0)
	return slices.ContainsFunc(drawingWater(), func(p phrase) bool {
		for at := range words {
			if p.startsAt(words, at) && words[at].plain != "carbohydrate" {
				return true
			}
		}
		return false
	})
}

// MeetsPlastic reports whether a measure is of plastic where it meets what it measures: as the
// kit states it, or as its kind mostly is.
func (k *Measure) MeetsPlastic() bool {
	return k.Plastic || k.Kind.Traits().plastic && !k.Expansion.Known
}
