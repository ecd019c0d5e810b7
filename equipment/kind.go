package equipment

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
	Cylinder:       {receives: true, delivers: true, scale: true, reads: true, lettered: true, shape: Triangle, keeps: filmByCapacity, care: PouredOut},
	Flask:          {receives: true, reads: true, lettered: true, shape: Triangle, keeps: unknownFilm, care: PouredOut},
	OneMark:        {delivers: true, deliver: true, reads: true, lettered: true, shape: Triangle, keeps: dropInTip, care: RunsOut},
	Graduated:      {delivers: true, deliver: true, scale: true, reads: true, difference: true, lettered: true, shape: Triangle, keeps: dropInTip, care: RunsOut},
	Piston:         {delivers: true, deliver: true, set: true, shape: Rectangle, keeps: pressedEmpty, care: Pressed},
	Transfer:       {delivers: true, deliver: true, set: true, shape: Rectangle, keeps: pressedEmpty, care: Pressed},
	Burette:        {delivers: true, deliver: true, scale: true, reads: true, difference: true, lettered: true, shape: Triangle, keeps: dropInTip, care: RunsOut},
	Syringe:        {delivers: true, deliver: true, set: true, shape: Rectangle, keeps: pressedEmpty, care: Pressed},
	Dropper:        {delivers: true, deliver: true, set: true, shape: Rectangle, keeps: pressedEmpty, care: Counted},
	Beaker:         {receives: true, delivers: true, scale: true, reads: true, shape: Rectangle, keeps: unknownFilm, care: PouredOut},
	ConicalFlask:   {receives: true, delivers: true, scale: true, reads: true, shape: Rectangle, keeps: unknownFilm, care: PouredOut},
	ConicalMeasure: {receives: true, delivers: true, deliver: true, scale: true, reads: true, shape: Rectangle, keeps: unknownFilm, care: PouredOut},
	Jar:            {receives: true, reads: true, shape: Rectangle, keeps: unknownFilm, care: PouredOut},
}

// PipetteKinds are the kinds of pipette.
func PipetteKinds() []string {
	return []string{string(OneMark), string(Graduated), string(Piston), string(Transfer)}
}

// Receives reports whether a solution is made up in it.
func (k Kind) Receives() bool { return kinds[k].receives }

// Delivers reports whether a measured volume is taken out with it.
func (k Kind) Delivers() bool { return kinds[k].delivers }

// AnyVolume reports whether it measures what it is set to, not what stands at a
// line.
func (k Kind) AnyVolume() bool { return kinds[k].set }

// HasScale reports whether it has divisions; otherwise it has one mark, or is set.
func (k Kind) HasScale() bool { return kinds[k].scale }

// HasNumbers reports whether there are numbers on it: those of a scale, or of a
// syringe or transfer pipette, which measure volumes in between as well.
func (k Kind) HasNumbers() bool { return kinds[k].scale || k == Syringe || k == Transfer }

// IsRead reports whether the error of reading it counts.
func (k Kind) IsRead() bool { return kinds[k].reads }

// Lettered reports whether its classes go by letters, and are never assumed.
func (k Kind) Lettered() bool { return kinds[k].lettered }

// Counts reports whether it counts drops and measures no volume.
func (k Kind) Counts() bool { return kinds[k].care == Counted }

// Care is what to mind when it delivers.
func (k Kind) Care() Care { return kinds[k].care }
