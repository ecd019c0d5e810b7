package equipment

import (
	"cmp"
	"math"

	"minim/equipment/quantity"
	"minim/uncertainty"
)

// droppedLiquid is a liquid that drops are counted of.
type droppedLiquid struct {
	// Name of it: of a pure liquid that of the solvent.
	Name string
	// Solvent is the liquid itself, or what is dissolved in it where it is a Solution.
	Solvent
	Solution bool
}

// What is known of the size of drops.
const (
	// tateWithin is the half-width of what Tate's law says, as a share of it: the limit of
	// USP <1101> for a dropper that is calibrated with its own liquid.
	tateWithin = 0.15
	// leastDrop is the least that a drop of an unknown liquid is taken to be, of one of
	// water from the same dropper. An early dental handbook counts 60 drops of water to
	// 60 minims, of syrup 65, creosote 122, turpentine 136 and alcohol 146, which is 0.41;
	// of ether 172 and of chloroform 250: such light or heavy solvents are to be named.
	leastDrop = 0.4
)

// dropRatio is the ratio f of a drop of one liquid to one of another from the same
// dropper: rectangular between two limits, and planned with.
type dropRatio struct {
	of, to             string
	low, high, planned float64
	// why is the code of the note that says what the limits rest on, "" for Tate's law.
	why string
}

// ratio of a drop of a liquid to the drop that the dropper is known by. By Tate's law a
// drop is as heavy as surface tension bears, so that its volume goes by σ/ρ:
//
//	f = (σ/σ_known) (ρ_known/ρ)
//
// (T. Tate, Phil. Mag. 27 (1864) 176, from memory). The counts of an early dental
// handbook give 0.41 for alcohol beside water, this law 0.39. It is taken as right within
// 15 %. A liquid of which the tension is not known, a mixture among them, is taken to be
// anything from 0.4 of water to water. What is dissolved may lower the tension as far as
// that and hardly raises it, so that a drop of a solution is anything from 0.4 of water,
// or what its solvent is at least, to what its solvent is at most.
func (k *Measure) ratio(d droppedLiquid) (dropRatio, error) {
	known := k.dropKnownBy()
	if SameLiquid(d.Name, known) && (!d.Solution || k.DropOf != "") {
		return dropRatio{low: 1, high: 1, planned: 1}, nil
	}
	base := dropOf(known)
	if base == 0 {
		return dropRatio{}, Cannot("drops-of-another-liquid", k.Name, k.DropOf, d.Name)
	}
	f := d.besideWater()
	scale := dropOf(water) / base
	f.of, f.to = d.Name, known
	f.low, f.high, f.planned = f.low*scale, f.high*scale, f.planned*scale
	return f, nil
}

// besideWater is the ratio of a drop of a liquid to one of water.
func (d droppedLiquid) besideWater() dropRatio {
	f := dropRatio{low: leastDrop, high: 1, planned: 1, why: "size-of-drop-by-no-tension"}
	if d.Tension > 0 && d.Density > 0 {
		tate := d.Tension / d.Density / dropOf(water)
		f = dropRatio{low: (1 - tateWithin) * tate, high: (1 + tateWithin) * tate, planned: tate}
	}
	if d.Solution {
		f.low, f.high = math.Min(f.low, leastDrop), math.Min(f.high, 1)
		f.why = "size-of-drop-of-solution"
	}
	return f
}

// dropOf is σ/ρ of a known liquid, to which the volume of a drop is proportional; 0 where the
// tension is not known.
func dropOf(name string) float64 {
	l, found := FindLiquid(name)
	if !found {
		return 0
	}
	return l.SurfaceTension / l.Density
}

// dropKnownBy is the liquid that the drop of a dropper is one of.
func (k *Measure) dropKnownBy() string { return cmp.Or(k.DropOf, water) }

// append appends f. The liquid owns it: it is wrong in the same way for every dropper.
func (f dropRatio) append(u Use, k *Measure) uncertainty.Node {
	if f.why != "" {
		u.Notes.Warn("size-of-drop-hardly-known", f.of, k.Name)
	}
	u.Notes.Assume(cmp.Or(f.why, "size-of-drop"), f.of, twoPlaces(f.low), twoPlaces(f.high), f.to)
	ground := uncertainty.Ground{}
	if f.why == "" {
		ground.By = byTate
	}
	return u.Model.Influence(uncertainty.Influence{
		Ground: ground,
		Code:   dropSizes + uncertainty.Code(" beside "+liquidName(f.to)),
		Owner:  uncertainty.Owner{Kind: uncertainty.Dropped, Name: f.of}, Group: uncertainty.Group{Kind: uncertainty.Dropped, Name: f.of},
		Distribution: uncertainty.Rectangular{Low: f.low, High: f.high}, Nominal: f.planned, Assumed: true,
	})
}

func twoPlaces(x float64) string { return quantity.Decimal(math.Round(100*x)/100, 9) }
