package route

// Finished reports whether what stands on the bench after a step, from 0, is a
// solution; before the first it is not.
func (r *Route) Finished(i int) bool {
	then := grammars[r.Steps[i].Verb].then
	return then == solution || then == mixture
}

// Begins reports whether a step, from 0, starts with what stands on the bench for
// itself: with nothing, a stock, or a part of a finished solution. Work that was
// spoilt can be taken up again there.
func (r *Route) Begins(i int) bool {
	if i == 0 {
		return true
	}
	switch r.Steps[i].Verb {
	case Take, Pour, WeighAliquot:
		return r.Finished(i-1) || r.Steps[i-1].Verb == Start
	}
	return false
}

// FromSolution reports whether a step of the verb takes a part of a solution.
func (v Verb) FromSolution() bool { return v == Take || v == Pour || v == WeighAliquot }

// MeasuresOut reports whether a step of the verb measures something out that is then
// put to the rest: when it is spoilt, it is done again by itself.
func (v Verb) MeasuresOut() bool {
	switch v {
	case Weigh, UsePacket, Measured, Take, Pour, Add, WeighAliquot, Strengthen, AddSolute:
		return true
	}
	return false
}
