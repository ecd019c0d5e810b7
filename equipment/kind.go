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
	// shape of the limit of error, unless stated otherwise.
	shape Shape
}

var kinds = map[Kind]traits{
	Cylinder:       {table: "cylinder", receives: true, delivers: true, scale: true, reads: true, lettered: true, shape: Triangle},
	Flask:          {table: "flask", receives: true, reads: true, lettered: true, shape: Triangle},
	OneMark:        {table: "pipette", delivers: true, deliver: true, reads: true, lettered: true, shape: Triangle},
	Graduated:      {table: "pipette", delivers: true, deliver: true, scale: true, reads: true, difference: true, lettered: true, shape: Triangle},
	Piston:         {table: "pipette", delivers: true, deliver: true, shape: Rectangle},
	Transfer:       {table: "pipette", delivers: true, deliver: true, shape: Rectangle},
	Burette:        {table: "burette", delivers: true, deliver: true, scale: true, reads: true, difference: true, lettered: true, shape: Triangle},
	Syringe:        {table: "syringe", delivers: true, deliver: true, shape: Rectangle},
	Dropper:        {table: "dropper", delivers: true, deliver: true, shape: Rectangle},
	Beaker:         {table: "beaker", receives: true, delivers: true, scale: true, reads: true, shape: Rectangle},
	ConicalFlask:   {table: "conical-flask", receives: true, delivers: true, scale: true, reads: true, shape: Rectangle},
	ConicalMeasure: {table: "conical-measure", receives: true, delivers: true, deliver: true, scale: true, reads: true, shape: Rectangle},
	Jar:            {table: "jar", receives: true, reads: true, shape: Rectangle},
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
func (k Kind) AnyVolume() bool { return k == Piston || k == Transfer || k == Syringe || k == Dropper }

// Counts reports whether it counts drops and measures no volume.
func (k Kind) Counts() bool { return k == Dropper }
