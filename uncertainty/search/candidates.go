package search

import (
	"slices"
	"sort"
)

// Candidates counts the routes with a volume measured that the options allow: all ways to make a
// solution in an order that their volumes allow, with every source.
func (b *Bench) Candidates() float64 {
	var weighedOrPacket, solids, stocks float64
	for i := range b.sources {
		switch s := &b.sources[i]; {
		case s.isStock():
			stocks++
		case s.swelling != nil:
			solids++
			fallthrough
		default:
			weighedOrPacket++
		}
	}
	total := 0.0
	aliquots := map[float64]float64{b.prep.Volume: 1} // how many routes need which volume
	firsts, dissolved := volumesOf(b.firsts), volumesOf(b.dissolved)
	round := volumesOf(slices.DeleteFunc(slices.Clone(b.dissolved), func(m making) bool { return !isRound(m.made.step.Measure, m.volume) }))
	weighedUp := b.weighedUpVolumes()
	for n := 0; ; n++ {
		if n > 0 {
			dissolved = round
		}
		for needed, ways := range aliquots {
			total += float64(ways*weighedOrPacket*float64(len(firsts)-from(firsts, needed))) + float64(ways*solids*float64(len(dissolved)-from(dissolved, needed)))
			if n > 0 {
				total += float64(ways * stocks)
			}
			if n > 0 && n <= mostAfterWeighing {
				total += float64(ways * float64(len(weighedUp)-from(weighedUp, needed)))
			}
		}
		if n == b.options.Steps {
			return total
		}
		aliquots = b.before(aliquots)
	}
}

// weighedUpVolumes are those of all that may be weighed up and diluted further, rising.
func (b *Bench) weighedUpVolumes() (volumes []float64) {
	if b.up == nil {
		return nil
	}
	for i := range b.up.round {
		for k := range b.up.starts {
			if total := &b.up.round[i]; b.up.starts[k].follows(total) {
				volumes = append(volumes, total.Amount/b.up.solvent)
			}
		}
	}
	return volumes
}

// volumesOf are those that are made, rising.
func volumesOf(list []making) (volumes []float64) {
	for i := range list {
		volumes = append(volumes, list[i].volume)
	}
	sort.Float64s(volumes)
	return volumes
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
