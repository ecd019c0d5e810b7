package route

// Rises reports whether the strength rises with the amount of a step: it does with what
// is weighed, measured out or taken, and falls with what dilutes.
func (s *Step) Rises() bool { return !s.Verb.brings(solvent) }
