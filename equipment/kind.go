package equipment

import "slices"

// Kind is a kind of volumetric instrument, named as in the class tables.
type Kind string

// The kinds of volumetric instrument.
const (
	Cylinder       Kind = "cylinder"
	Flask          Kind = "flask"
	OneMark        Kind = "one-mark"
	Graduated      Kind = "graduated"
	Piston         Kind = "piston"
	Transfer       Kind = "transfer"
	Burette        Kind = "burette"
	Syringe        Kind = "syringe"
	Dropper        Kind = "dropper"
	Beaker         Kind = "beaker"
	ConicalFlask   Kind = "conical-flask"
	ConicalMeasure Kind = "conical-measure"
	Jar            Kind = "jar"
)

// traits is how the instruments of a kind differ from others.
type traits struct {
	// table of a kit file that holds them.
	table string
	// receives: a solution is made up in it. delivers: a volume is measured
	// out with it; a vessel that delivers is poured out.
	receives, delivers bool
	// deliver: adjusted to deliver (Ex), unless stated otherwise.
	deliver bool
	// scale: it has divisions; otherwise one mark, or a volume that is set.
	scale bool
	// reads: the error of reading counts.
	reads bool
	// difference: a part of the scale is the difference of two readings.
	difference bool
	// lettered: its classes go by letters and are never assumed.
	lettered bool
	// set: it measures what it is set to, not what stands at a line.
	set bool
	// shape of the limit of error, unless stated otherwise.
	shape Shape
	// keeps is what stays in it when it is emptied, care what to mind when it delivers.
	// Neither has a default.
	keeps retention
	care  Care
}

// retention is what stays in an instrument that is emptied.
type retention string

const (
	// filmByCapacity: as much as cylinders of the capacity were found to keep.
	filmByCapacity retention = "a film by capacity"
	// unknownFilm: of what was poured out of it nothing is known.
	unknownFilm retention = "a film"
	// dropInTip: the last drop, unless it is blown out.
	dropInTip retention = "a drop in the tip"
	// pressedEmpty: nothing where it is pressed empty; else a dead space, or a drop.
	pressedEmpty retention = "nothing when it is pressed empty"
)

// Care is what to mind with an instrument that delivers.
type Care string

// The kinds of care.
const (
	Counted   Care = "drops are counted"
	Pressed   Care = "pressed out, without a meniscus"
	RunsOut   Care = "runs from its tip, read at a meniscus"
	PouredOut Care = "poured out, read at a meniscus"
)

var kinds = map[Kind]traits{
	Cylinder:       {table: "cylinder", receives: true, delivers: true, scale: true, reads: true, lettered: true, shape: Triangle, keeps: filmByCapacity, care: PouredOut},
	Flask:          {table: "flask", receives: true, reads: true, lettered: true, shape: Triangle, keeps: unknownFilm, care: PouredOut},
	OneMark:        {table: "pipette", delivers: true, deliver: true, reads: true, lettered: true, shape: Triangle, keeps: dropInTip, care: RunsOut},
	Graduated:      {table: "pipette", delivers: true, deliver: true, scale: true, reads: true, difference: true, lettered: true, shape: Triangle, keeps: dropInTip, care: RunsOut},
	Piston:         {table: "pipette", delivers: true, deliver: true, set: true, shape: Rectangle, keeps: pressedEmpty, care: Pressed},
	Transfer:       {table: "pipette", delivers: true, deliver: true, set: true, shape: Rectangle, keeps: pressedEmpty, care: Pressed},
	Burette:        {table: "burette", delivers: true, deliver: true, scale: true, reads: true, difference: true, lettered: true, shape: Triangle, keeps: dropInTip, care: RunsOut},
	Syringe:        {table: "syringe", delivers: true, deliver: true, set: true, shape: Rectangle, keeps: pressedEmpty, care: Pressed},
	Dropper:        {table: "dropper", delivers: true, deliver: true, set: true, shape: Rectangle, keeps: pressedEmpty, care: Counted},
	Beaker:         {table: "beaker", receives: true, delivers: true, scale: true, reads: true, shape: Rectangle, keeps: unknownFilm, care: PouredOut},
	ConicalFlask:   {table: "conical-flask", receives: true, delivers: true, scale: true, reads: true, shape: Rectangle, keeps: unknownFilm, care: PouredOut},
	ConicalMeasure: {table: "conical-measure", receives: true, delivers: true, deliver: true, scale: true, reads: true, shape: Rectangle, keeps: unknownFilm, care: PouredOut},
	Jar:            {table: "jar", receives: true, reads: true, shape: Rectangle, keeps: unknownFilm, care: PouredOut},
}

// PipetteKinds are the kinds that a [[pipette]] may be of.
func PipetteKinds() []string {
	return []string{string(OneMark), string(Graduated), string(Piston), string(Transfer)}
}

// The tables of a kit file that do not hold volumetric instruments of the bench.
const (
	balanceTables   = "balance"
	candidateTables = "candidate"
)

// KitTables are the names of the tables of a kit file.
func KitTables() []string {
	return slices.Concat([]string{balanceTables}, measureTables(), []string{candidateTables})
}

// measureTables are those of volumetric instruments, in the order in which they
// are read: a jar may rest on any other.
func measureTables() []string {
	return []string{"cylinder", "flask", "pipette", "burette", "syringe", "dropper",
		"beaker", "conical-flask", "conical-measure", "jar"}
}

// CandidateKinds are the kinds that a [[candidate]] may be of: the name of a table,
// or the kind of a pipette.
func CandidateKinds() []string {
	var list []string
	for _, table := range KitTables() {
		switch table {
		case kinds[OneMark].table:
			list = append(list, PipetteKinds()...)
		case candidateTables:
		default:
			list = append(list, table)
		}
	}
	return list
}

// Receives reports whether a solution is made up in it.
func (k Kind) Receives() bool { return kinds[k].receives }

// Delivers reports whether a measured volume is taken out with it.
func (k Kind) Delivers() bool { return kinds[k].delivers }

// AnyVolume reports whether it measures what it is set to, not what stands at a
// line.
func (k Kind) AnyVolume() bool { return kinds[k].set }

// Counts reports whether it counts drops and measures no volume.
func (k Kind) Counts() bool { return kinds[k].care == Counted }

// Care is what to mind when it delivers.
func (k Kind) Care() Care { return kinds[k].care }
