package rescue

// Way is a kind of correction.
type Way int

// The kinds of corrections.
const (
	// FillUp: all of the batch is made up to a mark.
	FillUp Way = iota
	// AddSolvent: measured solvent is added to all of it.
	AddSolvent
	// DilutePart: a part is diluted, the rest set aside.
	DilutePart
	// StrengthenAll: a measured volume of a stronger solution is added to all of it.
	StrengthenAll
	// AddMore: weighed solute is dissolved in all of it.
	AddMore
	// StrengthenAndAdd: more than is needed of a stronger solution is added to all of it,
	// and then measured solvent.
	StrengthenAndAdd
)

// wayWords say what each kind does.
var wayWords = [...]string{
	FillUp: "all of it made up to that mark", AddSolvent: "solvent added to all of it", DilutePart: "a part diluted",
	StrengthenAll: "a stronger solution added to all of it", AddMore: "solute dissolved in all of it",
	StrengthenAndAdd: "a stronger solution, more than is needed, and then solvent added to all of it",
}

// String says in words what a kind does.
func (w Way) String() string { return wayWords[w] }

// lastWay is the last of the kinds.
const lastWay = StrengthenAndAdd
