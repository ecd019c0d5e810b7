package plan

import "time"

// allowance shares out the time of work that searches many times, alike among the searches
// that are still to come: what one does not use the later ones have.
type allowance struct {
	end  time.Time // zero means never
	left int
	// least is what a search has even where the time is up, so that something may be found.
	least time.Duration
}

// allow begins the time of so many searches; 0 means that it never ends.
func allow(all time.Duration, searches int) *allowance {
	a := &allowance{left: searches, least: min(all/time.Duration(max(searches, 1)), 10*time.Millisecond)}
	if all > 0 {
		a.end = time.Now().Add(all)
	}
	return a
}

// take is the time that each of the next n searches has, 0 for no limit.
func (a *allowance) take(n int) time.Duration {
	if a.end.IsZero() {
		return 0
	}
	share := time.Until(a.end) / time.Duration(max(a.left, n))
	a.left -= n
	return max(share, a.least, 1)
}

// drop n searches that will not be needed.
func (a *allowance) drop(n int) { a.left -= n }
