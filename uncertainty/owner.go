package uncertainty

// Kind is a kind of owner.
type Kind string

// The kinds of owners. An owner without a kind is told from others by its name.
const (
	// OneUse is a step, or a part of one; Tare the tare reading before it, Rung a step of
	// a ladder, Day the state of the bench while a route is followed. They belong to one
	// route.
	OneUse Kind = "use"
	Tare   Kind = "tare"
	Rung   Kind = "rung"
	Day    Kind = "day"
	// Instrument is a piece of one, Fill one of the fills that the line of a piece was set
	// with.
	Instrument Kind = "instrument"
	Fill       Kind = "fill"
	// Bench is what holds for a liquid in all glass, Dropped for one in all droppers.
	Bench   Kind = "bench"
	Dropped Kind = "dropped"
	// Substance, Stock and Packet are materials.
	Substance Kind = "substance"
	Stock     Kind = "stock"
	Packet    Kind = "packet"
)

// ofOneRoute reports whether such owners are never shared by two quantities.
func (k Kind) ofOneRoute() bool { return k == OneUse || k == Tare || k == Rung || k == Day }

// Owner is whose an influence is. Two owners are one when all fields agree.
type Owner struct {
	Kind Kind
	// Name of the instrument or the material, and of the route where the owner belongs
	// to one. It is shown, and it tells owners of one kind apart, but no random stream
	// depends on it unless Kind is "".
	Name string
	// Step is the number of the step, the rung or the fill; 0 where there is none.
	Step int
	// Piece is the number of the piece where there are several alike; 0 for a single one.
	Piece int
	// With is the name of the instrument that a step uses, where that matters.
	With string
}

// Code says which of the influences of its owner an influence is, or what a quantity on
// the way is. How it is shown is for others to say.
type Code string

// Group is what influences count towards when shares are added up, such as an instrument.
// Two groups are one when kind and name agree.
type Group struct {
	Kind Kind
	Name string
}

// Identity tells an influence from all others, also of other models.
type Identity struct {
	owner Owner
	code  Code
	at    float64
}

// OfPieces reports whether the influence belongs to one of several pieces alike.
func (id Identity) OfPieces() bool { return id.owner.Piece > 0 }

// Identity of the influence: its owner, its code, and At.
func (in *Influence) Identity() Identity { return Identity{in.Owner, in.Code, in.At} }

// Number gives the next numbers to names of a kind that have none yet. Owners are
// numbered when the first influence of theirs is asked for; to ask here before makes
// the numbers independent of which influences there are.
func (m *Model) Number(kind Kind, names ...string) {
	for _, name := range names {
		m.number(kind, name)
	}
}

// number of a name among those of its kind, from 1 on; 0 for none.
func (m *Model) number(kind Kind, name string) uint64 {
	if name == "" {
		return 0
	}
	id := Owner{Kind: kind, Name: name}
	if m.numbers == nil {
		m.numbers, m.counts = make(map[Owner]uint64), make(map[Kind]uint64)
	}
	if m.numbers[id] == 0 {
		m.counts[kind]++
		m.numbers[id] = m.counts[kind]
	}
	return m.numbers[id]
}
