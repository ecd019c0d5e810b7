package benchfile

// Help is what else would be right of a file, beside the hint: something that is done
// outside of it, which whoever reads it for a user words in the user's terms.
type Help int

// What helps.
const (
	// NameKit: or give the kit of the prep, which names none.
	NameKit Help = iota + 1
	// OtherKit: or give another kit than the one that is not there.
	OtherKit
	// BeginRecord: have a record written to fill in.
	BeginRecord
	// FollowRecord: give the prep together with its record.
	FollowRecord
)

// with adds what else helps, if anything does.
func (m *Mistake) with(help []Help) *Mistake {
	for _, h := range help {
		m.Help = h
	}
	return m
}
