package equipment

import "slices"

// Change is another value of one property of an instrument, in memory only, as it was
// written: the 0.01 g scale, its readability, "0.001 g". Replaces is another key that the kit states,
// in whose place it stands; "" where there is none.
type Change struct{ Name, Key, Value, Replaces string }

// Staying lists the keys of the instrument of a change that the kit states, or "limit" for one
// of those that state its limit of error, and that would
// follow from the changed one if it did not: of a balance that reads finer, the stated
// repeatability and linearity stay as they are. Keys that are changed as well are not
// among them.
func (k *Kit) Staying(c Change, all []Change) []string {
	return slices.DeleteFunc(k.stated(c), func(key string) bool {
		return key == c.Key || slices.ContainsFunc(all, func(o Change) bool { return o.Name == c.Name && o.Key == key })
	})
}

// stated are the keys, of those that would follow from the changed one, that are stated.
func (k *Kit) stated(c Change) []string {
	for _, l := range []*Instruments{&k.Instruments, &k.Candidates} {
		if b := l.Balance(c.Name); b != nil && c.Key == "readability" {
			return b.stated()
		}
		if m := l.Measure(c.Name); m != nil {
			return m.stated(c.Key)
		}
	}
	return nil
}

// stated are the keys of a balance that would follow from its readability.
func (b *Balance) stated() (keys []string) {
	if b.Weighing.Known {
		return []string{"weighing-uncertainty"}
	}
	keys = b.Repeatability.keys()
	if b.Linearity.Known {
		keys = append(keys, "linearity")
	}
	return keys
}

// StatedBy is the key by which a spread is stated, "" where it is not.
func (s Spread) StatedBy() string {
	switch {
	case !s.Known:
		return ""
	case s.DegreesOfFreedom > 0:
		return "readings"
	}
	return "repeatability"
}

func (s Spread) keys() (keys []string) {
	if s.Known {
		keys = append(keys, s.StatedBy())
	}
	return keys
}

// stated are the keys of a measure that would follow from its class or its reading.
func (k *Measure) stated(changed string) []string {
	switch changed {
	case "class", "standard", "form":
		if !k.Bias.ClassLimit {
			return []string{"limit"}
		}
	case "reading", "division", "bore":
		return k.Repeatability.keys()
	}
	return nil
}
