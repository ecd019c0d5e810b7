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

// FailHelp is [Table.Fail] with what helps.
func (t *Table) FailHelp(key, message, hint string, h Help) {
	before := len(t.file.mistakes)
	t.Fail(key, message, hint)
	for _, m := range t.file.mistakes[before:] {
		m.Help = h
	}
}
