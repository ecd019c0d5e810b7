package route

// Finished reports whether what stands on the bench after a step, from 0, is a
// solution; before the first it is not.
func (r *Route) Finished(i int) bool {
	then := r.Steps[i].Verb.Traits().then
	return then == solution || then == mixture
}

// Begins reports whether a step, from 0, starts with what stands on the bench for
// itself: with nothing, a stock, or a part of a finished solution. Work that was
// spoilt can be taken up again there.
func (r *Route) Begins(i int) bool {
	if i == 0 {
		return true
	}
	return r.Steps[i].Verb.Traits().FromSolution && (r.Finished(i-1) || r.Steps[i-1].Verb == Start)
}
