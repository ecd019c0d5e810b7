package uncertainty

// streams are the keys of the random streams of the influences of a model, and of the scales
// of its sets of readings.
type streams struct{ influence, scale func(number int) uint64 }

func (m *Model) ownStreams() streams {
	return streams{
		influence: func(i int) uint64 { return m.keys[i] },
		scale:     func(k int) uint64 { return m.scales[k].key },
	}
}

// beside returns the streams of a quantity that is drawn together with one of another model:
// of what both share those of the other, which may have numbered it otherwise, of the rest
// some that the other has not.
func (q *Quantity) beside(first *Model) streams {
	m := q.Model
	keyBeside := func(own uint64, owner Owner, other func() (key uint64, shared bool)) uint64 {
		if m == first || owner.Kind == "" {
			return own
		}
		if key, shared := other(); shared && !owner.Kind.ofOneRoute() {
			return key
		}
		return apart(own)
	}
	return streams{
		influence: func(i int) uint64 {
			in := &m.influences[i]
			return keyBeside(m.keys[i], in.Owner, func() (uint64, bool) {
				n, shared := first.known[in.Identity()]
				if !shared {
					return 0, false
				}
				return first.keys[first.nodes[n].left], true
			})
		},
		scale: func(k int) uint64 {
			s := &m.scales[k]
			return keyBeside(s.key, s.set.Owner, func() (uint64, bool) {
				n, shared := first.findScale(s.set)
				if !shared {
					return 0, false
				}
				return first.scales[n].key, true
			})
		},
	}
}
