package plan

import "context"

// sharing holds for pairs of groups by how much more they bring than what each
// brings at the least, since they may have to share an instrument. Of two ways w
// and v with what both add to the same growing sums,
//
//	(r + s)² = r² + s² + 2 r s
//
// so that a route brings at least the sum of the least of its groups, and for
// disjoint pairs of them
//
//	min over w and v of (least w - least) + (least v - least) + 2 Σ r s
//
// on top. The numbers of first solutions follow those of dilutions.
type sharing struct {
	size int
	more []float32
}

// newSharing works out all pairs of a pass. It is of no use once the context is done.
func newSharing(ctx context.Context, p *pass) *sharing {
	all := make([]*group, 0, len(p.dilutionGroups)+len(p.firsts))
	for i := range p.dilutionGroups {
		all = append(all, &p.dilutionGroups[i])
	}
	for i := range p.firsts {
		all = append(all, &p.firsts[i])
	}
	s := &sharing{size: len(all), more: make([]float32, len(all)*len(all))}
	for i, a := range all {
		if ctx.Err() != nil {
			break
		}
		for j, b := range all[:i+1] {
			// A little less, for what rounding to fewer digits adds.
			more := float32(p.more(a, b) * (1 - 1e-6))
			s.more[i*s.size+j], s.more[j*s.size+i] = more, more
		}
	}
	return s
}

// more is what a pair of groups brings on top of what each does at the least.
func (p *pass) more(a, b *group) float64 {
	least := -1.0
	for _, w := range a.ways {
		for _, v := range b.ways {
			gap := w.least - a.least + v.least - b.least
			if least >= 0 && gap >= least {
				break
			}
			if both := gap + 2*p.product(w.making, v.making); least < 0 || both < least {
				least = both
			}
		}
	}
	return least
}

// product is Σ r s over the growing sums that both add to.
func (p *pass) product(w, v *making) float64 {
	sum := 0.0
	for _, r := range w.shared {
		if p.pulls[r.key] != oneWay {
			continue
		}
		for _, s := range v.shared {
			if s.key == r.key {
				sum += float64(r.relative * s.relative)
			}
		}
	}
	return sum
}

// between is what a pair of groups, by number, brings on top.
func (s *sharing) between(a, b int) float64 { return float64(s.more[a*s.size+b]) }

// onTop is the most that disjoint pairs of these groups bring on top.
func (s *sharing) onTop(numbers []int) float64 {
	if len(numbers) < 2 {
		return 0
	}
	last, rest := numbers[len(numbers)-1], numbers[:len(numbers)-1]
	most := s.onTop(rest)
	var room [8]int
	for i := range rest {
		others := append(append(room[:0], rest[:i]...), rest[i+1:]...)
		most = max(most, s.between(last, rest[i])+s.onTop(others))
	}
	return most
}

// onTop is what groups bring on top by sharing instruments, where that is known.
func (p *pass) onTop(numbers []int) float64 {
	if p.sharing == nil {
		return 0
	}
	return p.sharing.onTop(numbers)
}
