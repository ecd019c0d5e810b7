package search

import (
	"context"
	"math"
	"slices"

	"minim/uncertainty/route"
)

// remainder holds lower bounds of the relative variance that the steps in front of
// an unfinished route bring with them: so many dilutions, the first solution and
// its source. They follow from the concentration that these steps must reach and
// from the volume that they may fill, which is what the steps behind need and what
// may be left over. With h(k, v, c) for k dilutions up to a volume v and a
// concentration c, and a dilution of an aliquot a to a volume V in the ratio r,
//
//	h(0, v, c) = least of a first solution with V <= v + least of a weighing of c V
//	h(k, v, c) = least of a dilution with V <= v + h(k - 1, v - (V - a), c/r)
//
// taken at their smallest. What is wrong with a weighing grows no faster than its
// load, so that h falls as v or c grows: a cell of the table holds its value at the
// upper ends of the cell, but for what a dissolved solid takes up, at the lower.
type remainder struct {
	volumes, strengths cells
	// of[k] are those for k dilutions, volume by volume. Of no dilution, marked and dissolved are
	// those for solute that is made up to a mark, and that is dissolved in measured solvent.
	of                [][]float64
	marked, dissolved []float64
}

// at is the bound for k dilutions, in cells of volume and concentration.
func (r *remainder) at(k, volume, strength int) float64 {
	return r.in(r.of[k], volume, strength)
}

func (r *remainder) in(table []float64, volume, strength int) float64 {
	return table[volume*r.strengths.count+strength]
}

// grown is the table for a pass, in which one dilution at least is chosen before it is asked,
// with what it holds already. Volumes go from the smallest that is taken to the largest that
// is made, concentrations from that of the target to the strongest allowed. It is of no use
// once the context is done.
func (r *remainder) grown(ctx context.Context, b *Bench, p *pass) *remainder {
	if r == nil {
		least, most := math.Inf(1), b.prep.Volume
		for i := range p.dilutionGroups {
			least, most = min(least, p.dilutionGroups[i].aliquot), max(most, p.dilutionGroups[i].volume)
		}
		r = &remainder{volumes: cellsOver(least, most, 5), strengths: cellsOver(b.prep.ConcentrationOf(b.prep.Target.Value)/2, 4, 3)}
		r.of = append(r.of, r.withoutDilution(b, p))
	}
	for len(r.of) < p.dilutions {
		r.of = append(r.of, r.oneMore(ctx, p.dilutionGroups))
	}
	return r
}

// cellsOver are cells, a power of two for each doubling, for numbers between two: 2^-40 at
// the least, and 2^40 at the most.
func cellsOver(low, high float64, bits int) cells {
	_, from := math.Frexp(min(low, 1))
	_, to := math.Frexp(high)
	from, to = max(from-1, -40), min(to, 40)
	return newCells(from, max(to, from+1), bits)
}

// withoutDilution is h(0, v, c): nothing for a stock.
func (r *remainder) withoutDilution(b *Bench, p *pass) []float64 {
	if p.from == route.Start {
		return make([]float64, r.volumes.count*r.strengths.count)
	}
	table := make([]float64, 0, r.volumes.count*r.strengths.count)
	for v := range r.volumes.count {
		for c := range r.strengths.count {
			marked, dissolved := p.leastMarked(b, r.volumes.end(v), r.strengths.end(c)), p.leastDissolved(b, r.volumes.end(v), r.strengths.start(c), r.strengths.end(c))
			r.marked, r.dissolved = append(r.marked, marked), append(r.dissolved, dissolved)
			table = append(table, min(marked, dissolved))
		}
	}
	return table
}

// oneMore is h(k, v, c) where the table has h(k - 1, v, c).
func (r *remainder) oneMore(ctx context.Context, list []group) []float64 {
	before, count := r.leastNear(r.of[len(r.of)-1]), r.strengths.count
	table := make([]float64, r.volumes.count*count)
	for i := range table {
		table[i] = math.Inf(1)
	}
	stronger := make([]int, count)
	for i := range list {
		if i%1024 == 0 && ctx.Err() != nil {
			break
		}
		d := &list[i]
		for c := range stronger {
			stronger[c] = r.strengths.of(r.strengths.end(c) / d.ratio)
		}
		for v := r.volumes.of(d.volume); v < r.volumes.count; v++ {
			row := table[v*count:][:count]
			from := before[r.volumes.of((r.volumes.end(v)-(d.volume-d.aliquot))*(1+slack))*count:][:count]
			for c, to := range stronger {
				row[c] = min(row[c], d.least+from[to])
			}
		}
	}
	return table
}

// leastNear is a table of the least of each cell of concentration and of the two before it. What a
// solid brings into measured solvent grows with the concentration; the concentrations of a cell,
// over a ratio, lie in three cells at the most, all of which are above that of the target.
func (r *remainder) leastNear(table []float64) []float64 {
	least := slices.Clone(table)
	for i := range table {
		for back := 1; back <= min(2, i%r.strengths.count); back++ {
			least[i] = min(least[i], table[i-back])
		}
	}
	return least
}

// cells divides the positive numbers from a power of two on into cells, so many,
// a power of two, for each doubling. They are found by the leading bits of a
// number. The first cell reaches down to 0, the last up to infinity.
type cells struct {
	shift, first, count int
}

// newCells lays cells from 2^from to 2^to, 2^bits of them for each doubling.
func newCells(from, to, bits int) cells {
	shift := 52 - bits
	return cells{shift, int(math.Float64bits(math.Ldexp(1, from)) >> shift), (to - from) << bits}
}

// of is the cell of a number.
func (c *cells) of(x float64) int {
	if !(x > 0) {
		return 0
	}
	return max(0, min(int(math.Float64bits(x)>>c.shift)-c.first, c.count-1))
}

// start is the lower end of a cell.
func (c *cells) start(cell int) float64 {
	if cell == 0 {
		return 0
	}
	return c.end(cell - 1)
}

// end is the upper end of a cell.
func (c *cells) end(cell int) float64 {
	if cell == c.count-1 {
		return math.Inf(1)
	}
	return math.Float64frombits(uint64(cell+1+c.first) << c.shift)
}
