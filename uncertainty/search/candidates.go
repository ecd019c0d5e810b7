package search

import "sort"

// Candidates counts the routes by volume that the options allow: all ways to make a solution
// in an order that their volumes allow, with every source.
func (b *Bench) Candidates() float64 {
	var weighedOrPacket, stocks float64
	for i := range b.sources {
		if b.sources[i].isStock() {
			stocks++
		} else {
			weighedOrPacket++
		}
	}
	total := 0.0
	aliquots := map[float64]float64{b.prep.Volume: 1} // how many routes need which volume
	var firsts []float64                              // the volumes that are made, rising
	for i := range b.firsts {
		firsts = append(firsts, b.firsts[i].volume)
	}
	sort.Float64s(firsts)
	for n := 0; ; n++ {
		for needed, ways := range aliquots {
			total += float64(ways * weighedOrPacket * float64(len(firsts)-from(firsts, needed)))
			if n > 0 {
				total += float64(ways * stocks)
			}
		}
		if n == b.options.Steps {
			return total
		}
		aliquots = b.before(aliquots)
	}
}

// before puts another dilution in front of routes that need these volumes.
func (b *Bench) before(aliquots map[float64]float64) map[float64]float64 {
	next := make(map[float64]float64)
	for needed, ways := range aliquots {
		for i := range b.dilutions {
			if d := &b.dilutions[i]; d.volume >= needed*(1-1e-9) {
				next[d.aliquot] += ways
			}
		}
	}
	return next
}

// from is the place of the first volume that is enough.
func from(volumes []float64, needed float64) int {
	return sort.SearchFloat64s(volumes, needed*(1-1e-9))
}
