package equipment

// Kind is a kind of volumetric instrument, named as in the class tables.
type Kind string

// traits is how the instruments of a kind differ from others.
type traits struct {
	kind Kind
	// Table is the name of the tables of a kit file that hold it: its own, but for pipettes.
	Table string
	// Receives: a solution is made up in it. Delivers: a volume is measured
	// out with it; a vessel that delivers is poured out. ex: adjusted to deliver (Ex), unless
	// stated otherwise.
	Receives, Delivers, ex bool
	// Scale: it has divisions; otherwise one mark, or a volume that is set. Numbers: there
	// are numbers on it, those of a scale or of what measures volumes in between as well.
	Scale, Numbers bool
	// PenLine: its only mark is a line that was drawn on it.
	PenLine bool
	// Read: the error of reading counts. difference: a part of the scale is the
	// difference of two readings; toMark: all of it is, since it never runs to its tip.
	Read, difference, toMark bool
	// Lettered: its classes go by letters and are never assumed.
	Lettered bool
	// Set: it measures what it is set to, not what stands at a line. Counts: it
	// counts drops and measures no volume.
	Set, Counts bool
	// Dial: it is set in hundredths of its capacity, from a tenth of that on; small volumes
	// are told in µL; and between two sizes of the class table the larger one holds. tenths of
	// the distance of its numbers are told apart. makersDivision: the maker chooses the division
	// of its scale.
	Dial, tenths, makersDivision bool
	// Forms that the standard knows, in the words of a kit.
	Forms []string
	// LastDrop: it has one, which can be blown out. RestApart: what is left in it does not
	// belong to what was measured, and is not rinsed out. Filler: it is filled with one.
	LastDrop, RestApart, Filler bool
	// EitherMark: it has one mark or a scale, which its name may not tell. Stopper: it can be
	// closed and turned over.
	EitherMark, Stopper bool
	// plastic: most are of plastic where they meet what they measure (common practice, no source).
	plastic bool
	// shape of the limit of error, unless stated otherwise.
	shape Shape
	// keeps is what stays in it when it is emptied, Care what to mind when it delivers.
	// Neither has a default.
	keeps retention
	Care  care
	// scatters is how its use scatters where the kit does not say.
	scatters habit
}

// retention is what stays in an instrument that is emptied.
type retention string

const (
	// filmByCapacity: as much as cylinders of the capacity were found to keep.
	filmByCapacity retention = "film-by-capacity"
	// unknownFilm: of what was poured out of it nothing is known.
	unknownFilm retention = "film"
	// dropInTip: the last drop, unless it is blown out.
	dropInTip retention = "drop"
	// pressedEmpty: nothing where it is pressed empty; else a dead space, or a drop.
	pressedEmpty retention = "nothing"
)

// habit is how the use of an instrument scatters.
type habit string

const (
	// withCare: by how carefully it is read, in place of the error of reading.
	withCare habit = "care"
	// ofSetting: by a quarter of what it is set by.
	ofSetting habit = "setting"
)

// care is what to mind with an instrument that delivers.
type care string

const (
	counted care = "counted" // in drops
	pressed care = "pressed" // out, without a meniscus
	runsOut care = "runs"    // from its tip, read at a meniscus
	poured  care = "poured"  // out, read at a meniscus
)

// kinds in the order in which a kit is read: a pen line may have been set with what stands before it.
var kinds = []traits{
	{kind: "cylinder", Table: "cylinder", Receives: true, Delivers: true, Scale: true, Numbers: true, Read: true, Lettered: true,
		Forms: []string{"tall", "squat", "plastic"}, shape: triangle, keeps: filmByCapacity, Care: poured},
	{kind: "flask", Table: "flask", Receives: true, Read: true, Lettered: true, EitherMark: true, Stopper: true,
		shape: triangle, keeps: unknownFilm, Care: poured},
	{kind: "one-mark", Table: "pipette", Delivers: true, ex: true, Read: true, Lettered: true, LastDrop: true, Filler: true, EitherMark: true,
		shape: triangle, keeps: dropInTip, Care: runsOut, scatters: withCare},
	{kind: "graduated", Table: "pipette", Delivers: true, ex: true, Scale: true, Numbers: true, Read: true, difference: true, Lettered: true, LastDrop: true,
		Filler: true, EitherMark: true, shape: triangle, keeps: dropInTip, Care: runsOut},
	{kind: "piston", Table: "pipette", Delivers: true, ex: true, Set: true, Dial: true, makersDivision: true,
		Forms: []string{"air", "direct reusable", "direct single-use", "dispenser"}, plastic: true, shape: rectangle, keeps: pressedEmpty, Care: pressed},
	{kind: "transfer", Table: "pipette", Delivers: true, ex: true, Set: true, Numbers: true, plastic: true, shape: rectangle, keeps: pressedEmpty, Care: pressed},
	{kind: "burette", Table: "burette", Delivers: true, ex: true, Scale: true, Numbers: true, Read: true, difference: true, toMark: true, Lettered: true,
		RestApart: true, shape: triangle, keeps: dropInTip, Care: runsOut},
	{kind: "syringe", Table: "syringe", Delivers: true, ex: true, Set: true, Numbers: true, tenths: true, makersDivision: true,
		plastic: true, shape: rectangle, keeps: pressedEmpty, Care: pressed, scatters: ofSetting},
	{kind: "dropper", Table: "dropper", Delivers: true, ex: true, Set: true, Counts: true, RestApart: true, shape: rectangle, keeps: pressedEmpty, Care: counted},
	{kind: "beaker", Table: "beaker", Receives: true, Delivers: true, Scale: true, Numbers: true, Read: true, makersDivision: true,
		Forms: []string{"marked", "unmarked"}, shape: rectangle, keeps: unknownFilm, Care: poured},
	{kind: "conical-flask", Table: "conical-flask", Receives: true, Delivers: true, Scale: true, Numbers: true, Read: true, makersDivision: true,
		shape: rectangle, keeps: unknownFilm, Care: poured},
	{kind: "conical-measure", Table: "conical-measure", Receives: true, Delivers: true, ex: true, Scale: true, Numbers: true, Read: true, makersDivision: true,
		shape: rectangle, keeps: unknownFilm, Care: poured},
	{kind: "jar", Table: "jar", Receives: true, PenLine: true, Read: true, shape: rectangle, keeps: unknownFilm, Care: poured},
}

// Kinds are all of them, in the order in which a kit is read.
func Kinds() (list []Kind) {
	for i := range kinds {
		list = append(list, kinds[i].kind)
	}
	return list
}

// Traits of the kind; an unknown one has none.
func (k Kind) Traits() *traits {
	for i := range kinds {
		if kinds[i].kind == k {
			return &kinds[i]
		}
	}
	return new(traits)
}
