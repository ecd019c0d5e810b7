package search

import (
	"cmp"
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
// taken at their smallest. Where a piece is free to pull both ways there is one for each need
// of its uses: either has what is needed, or one has one use and the other the other. What is wrong with a weighing grows no faster than its
// load, so that h falls as v or c grows: a cell of the table holds its value at the
// upper ends of the cell, but for what a dissolved solid takes up, at the lower.
type remainder struct {
	volumes, strengths cells
	// of[k][need] are those for k dilutions, volume by volume. Of no dilution, marked and dissolved are
	// those for solute that is made up to a mark, and that is dissolved in measured solvent.
	of                []tables
	marked, dissolved tables
	// serving are the dilutions that may be least, by how they use the piece that is free.
	serving [cancelling + 1][]*group
}

// tables of bounds, by how the piece that is free must be used.
type tables [cancelling + 1][]float64

// at is the bound for k dilutions, in cells of volume and concentration.
func (r *remainder) at(need cover, k, volume, strength int) float64 {
	return r.in(r.of[k][need], volume, strength)
}

func (r *remainder) in(table []float64, volume, strength int) float64 {
	return table[volume*r.strengths.count+strength]
}

// with is the least relative variance of a route of which the end uses the piece that is free in
// some ways, and what is in front as is still needed.
func (r *remainder) with(end *leasts, need cover, toCome, volume, strength int) float64 {
	least := math.Inf(1)
	for has := range end {
		least = min(least, end[has]+r.at(need&^cover(has), toCome, volume, strength))
	}
	return least
}

// whole is the least relative variance of a route of which the end brings what there is, with so many
// dilutions in front, in cells of volume and concentration.
func (r *remainder) whole(end *volumes, need cover, toCome, volume, strength int) float64 {
	least := end.least + r.at(0, toCome, volume, strength)
	if need != 0 {
		least = max(least, r.with(&end.with, need, toCome, volume, strength))
	}
	return least
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
		bits := 5
		if p.free != nil {
			bits = 4 // there are nine times as many sums
		}
		r = &remainder{volumes: cellsOver(least, most, bits), strengths: cellsOver(b.prep.ConcentrationOf(b.prep.Target.Value)/2, 4, 3)}
		for has := range r.serving {
			if cover(has)&^p.need() == 0 {
				r.serving[has] = p.serve(cover(has))
			}
		}
		r.of = append(r.of, r.withoutDilution(b, p))
	}
	for len(r.of) < p.dilutions {
		r.of = append(r.of, r.oneMore(ctx, p))
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
func (r *remainder) withoutDilution(b *Bench, p *pass) (of tables) {
	for need := range of {
		if cover(need)&^p.need() != 0 {
			continue
		}
		of[need] = r.filled(math.Inf(1))
		if p.from == route.Start {
			if need == 0 {
				clear(of[need])
			}
			continue
		}
		for v := range r.volumes.count {
			for c := range r.strengths.count {
				at, volume, strength := v*r.strengths.count+c, r.volumes.end(v), r.strengths.end(c)
				marked, dissolved := p.leastMarked(b, cover(need), volume, strength), p.leastDissolved(b, cover(need), volume, r.strengths.start(c), strength)
				r.marked[need], r.dissolved[need] = append(r.marked[need], marked), append(r.dissolved[need], dissolved)
				if of[need][at] = min(marked, dissolved); p.weighsLast() && need == 0 {
					of[need][at] = b.up.leastWeighedUp(volume, strength)
				}
			}
		}
	}
	return of
}

// filled is a table of one value.
func (r *remainder) filled(with float64) []float64 {
	return slices.Repeat([]float64{with}, r.volumes.count*r.strengths.count)
}

// oneMore is h(k, v, c) where the table has h(k - 1, v, c).
func (r *remainder) oneMore(ctx context.Context, p *pass) (of tables) {
	var before tables
	for need, table := range r.of[len(r.of)-1] {
		if table != nil {
			before[need], of[need] = r.leastNear(table), r.filled(math.Inf(1))
		}
	}
	stronger := make([]int, r.strengths.count)
	for has, list := range r.serving {
		for i, d := range list {
			if i%64 == 0 && ctx.Err() != nil {
				return of
			}
			for c := range stronger {
				stronger[c] = r.strengths.of(r.strengths.end(c) / d.ratio)
			}
			for need := range of {
				if of[need] != nil && has&^need == 0 {
					r.inFront(of[need], before[need&^has], d, d.with[has], stronger)
				}
			}
		}
	}
	return of
}

// serve keeps of the dilutions those of which no other makes no more, loses no more, dilutes
// as much and brings no more: with any other the bound is no less. Where solute may be dissolved, and so
// brings more to a stronger solution, it must dilute just as much.
func (p *pass) serve(has cover) (kept []*group) {
	list := p.dilutionGroups
	var sorted []*group
	for i := range list {
		if !math.IsInf(list[i].with[has], 1) {
			sorted = append(sorted, &list[i])
		}
	}
	slices.SortStableFunc(sorted, func(a, b *group) int { return cmp.Compare(a.with[has], b.with[has]) })
	for _, d := range sorted {
		if !slices.ContainsFunc(kept, func(k *group) bool {
			return k.volume <= d.volume && k.volume-k.aliquot <= d.volume-d.aliquot && (k.ratio == d.ratio || k.ratio < d.ratio && len(p.dissolved) == 0)
		}) {
			kept = append(kept, d)
		}
	}
	return kept
}

// inFront puts a dilution that brings least in front of what is before.
func (r *remainder) inFront(table, before []float64, d *group, least float64, stronger []int) {
	count := len(stronger)
	for v := r.volumes.of(d.volume); v < r.volumes.count; v++ {
		row := table[v*count:][:count]
		from := before[r.volumes.of((r.volumes.end(v)-(d.volume-d.aliquot))*(1+slack))*count:][:count]
		for c, to := range stronger {
			if brings := least + from[to]; brings < row[c] { // no number is missing, so that min, which is slower, is not needed
				row[c] = brings
			}
		}
	}
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
