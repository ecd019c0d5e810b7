package search

import (
	"cmp"
	"context"
	"errors"
	"math"
	"slices"
	"strconv"

	"minim/equipment"
	"minim/report/words/note"
	"minim/uncertainty/route"
)

// search looks for the routes of a bench that no other beats.
type search struct {
	*Bench
	options Options
	judge   judge
	// only: routes by volume with just so many dilutions as the options allow.
	only bool
	// mostLeftOver in mL, mostSolute in g, and strongest in g/mL limit the routes.
	mostLeftOver, mostSolute, strongest float64
	// mostWeighed is the most solute that can be weighed, in g of what counts.
	mostWeighed float64
	pass        *pass
	passes      map[passKey]*pass
	// unexplored is what all routes leave over with their last solution of a part that was cut short
	// and were not tried, or more.
	unexplored float64
	weighings  map[*source]*weighings
	// several: of some instrument there are several pieces.
	several bool
	front   *front
	counts  counts
	most    int64 // candidates that may be tried
}

func newSearch(b *Bench, o Options, j judge) *search {
	o.Tried = cmp.Or(o.Tried, b.options.Tried, new(int64))
	s := &search{Bench: b, options: o, judge: j, mostLeftOver: o.MostLeftOver(b.prep), mostSolute: o.MostSolute(), strongest: o.Strongest(b.prep),
		passes: make(map[passKey]*pass), weighings: make(map[*source]*weighings)}
	s.several = slices.ContainsFunc(b.prep.Kit.Measures, func(k *equipment.Measure) bool { return k.Count > 1 })
	for i := range b.sources {
		s.weighings[&b.sources[i]] = &weighings{Mutex: b.one, bench: b, source: &b.sources[i], known: make(map[float64]*weighing)}
	}
	s.mostWeighed = b.mostWeighed(s.mostSolute)
	s.front = &front{places: b.places}
	return s
}

// stage of a search.
type stage struct {
	name note.Note
	run  func(ctx context.Context) error
	// prepare what is asked of untried; nil where nothing is known of that.
	prepare func(ctx context.Context) error
}

// counted is "5 million candidates".
func counted(work int64) note.Note {
	if million := float64(work) / 1e6; million >= 1 {
		return note.Of("million-candidates", "", strconv.FormatFloat(million, 'f', -1, 64))
	}
	return note.Of("candidates", "", work)
}

// run searches all routes, those with few dilutions first. When enough is tried, it
// says what it has not searched.
func (s *search) run(ctx context.Context) error {
	stages := s.stages()
	s.most = s.options.room()
	defer func() { *s.options.Tried += s.counts.work() }()
	for i, p := range stages {
		if s.options.Progress != nil {
			s.options.Progress(i, len(stages))
		}
		s.unexplored = 0
		err := p.run(ctx)
		if errors.Is(err, errEnough) {
			return s.skip(ctx, stages[i:])
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// skip says that the first of these stages has not been searched to its end, and the
// others not at all, but for those of which no route is left that is not beaten.
func (s *search) skip(ctx context.Context, stages []stage) error {
	from := s.unexplored
	for i, p := range stages {
		least, err := s.leastOf(ctx, p, from)
		if err != nil {
			return err
		}
		from = 0
		if math.IsInf(least, 1) {
			continue
		}
		if p.prepare == nil {
			s.cut(math.Inf(1))
		} else {
			s.cut(least)
		}
		note.Add(&s.NotSearched, s.notTried(p, i == 0, math.Floor(least*100)/100))
	}
	return nil
}

// notTried says of a stage, or the rest of it, that it was not searched, and what that leaves over at the least, in mL.
func (s *search) notTried(p stage, rest bool, least float64) note.Note {
	switch no := counted(s.options.Work); {
	case rest && least > 0:
		return note.Of("rest-of-stage-leaves", "", p.name, no, equipment.ML(least))
	case rest:
		return note.Of("rest-of-stage", "", p.name, no)
	case least > 0:
		return note.Of("stage-leaves", "", p.name, no, equipment.ML(least))
	default:
		return note.Of("stage", "", p.name, no)
	}
}

// leastOf is what each route of a stage that no other beats leaves over, or more, of those that were not tried: 0 where nothing is known.
func (s *search) leastOf(ctx context.Context, p stage, from float64) (float64, error) {
	if p.prepare == nil || s.judge.worthOnly {
		return 0, nil
	}
	if err := p.prepare(ctx); err != nil {
		return 0, err
	}
	return s.untried(from), nil
}

// stages are the passes by number of dilutions. The routes by weighing come before
// the passes with the most dilutions, which take longest; those in which one piece pulls both
// ways come last.
func (s *search) stages() []stage {
	var list []stage
	pass := func(n int, free *equipment.Measure) {
		for _, from := range []route.Verb{route.Weigh, route.UsePacket, route.Measured, route.Start, route.WeighUpTo} {
			if s.begins(n, from) {
				list = append(list, s.stage(n, from, free))
			}
		}
	}
	fewest := 0
	if s.only {
		fewest = s.options.Steps
	}
	for n := fewest; n <= s.options.Steps; n++ {
		if n == s.options.Steps && !s.only && s.has(route.WeighUpTo) {
			list = append(list, s.stage(0, route.WeighUpTo, nil))
		}
		pass(n, nil)
	}
	for n := max(1, fewest); n <= s.options.Steps && s.options.All; n++ {
		for _, k := range s.prep.Kit.Measures {
			if suits(k, route.Take) && k.Count <= 1 {
				pass(n, k)
			}
		}
	}
	return list
}

// begins reports whether there are routes with so many dilutions by volume of a source.
func (s *search) begins(n int, from route.Verb) bool {
	switch {
	case !s.has(from) || n > 0 && len(s.dilutions) == 0:
		return false
	case from == route.WeighUpTo:
		return n > 0 && n <= mostAfterWeighing && !s.only
	}
	return n > 0 || from != route.Start
}

// stage is a pass. Of what is not diluted by volume after it was weighed up nothing is known that was not tried.
func (s *search) stage(n int, from route.Verb, free *equipment.Measure) stage {
	prepare := func(ctx context.Context) error {
		s.pass = s.passFrom(from, free)
		return s.pass.about(ctx, s.Bench, n)
	}
	one := stage{name: passName(n, from, free), run: func(ctx context.Context) error {
		if err := prepare(ctx); err != nil {
			return err
		}
		return s.runPass(ctx)
	}}
	if n > 0 || from != route.WeighUpTo {
		one.prepare = prepare
	}
	return one
}

// passFrom prepares the passes from a source once.
func (s *search) passFrom(from route.Verb, free *equipment.Measure) *pass {
	key := passKey{from, free}
	if s.passes[key] == nil {
		s.passes[key] = newPass(s.Bench, from, free)
	}
	return s.passes[key]
}

type passKey struct {
	from route.Verb
	free *equipment.Measure
}

// passName is "routes with 2 dilutions from a stock", "in which the cylinder cancels".
func passName(n int, from route.Verb, free *equipment.Measure) note.Note {
	if n == 0 && from == route.WeighUpTo {
		return note.Of("by-weighing", "")
	}
	dilutions := note.Of("several-dilutions", "", n)
	switch n {
	case 0:
		dilutions = note.Of("no-dilution", "")
	case 1:
		dilutions = note.Of("one-dilution", "")
	}
	source := note.Of(map[route.Verb]string{route.Weigh: "from-weighing", route.UsePacket: "from-packet", route.Measured: "from-measuring", route.Start: "from-stock", route.WeighUpTo: "from-weighing-up"}[from], "")
	if free != nil {
		return note.Of("pass-both-ways", free.Name, dilutions, source)
	}
	return note.Of("pass", "", dilutions, source)
}

// has reports whether there is a source of a pass.
func (s *search) has(from route.Verb) bool {
	if from == route.WeighUpTo {
		return s.up != nil && len(s.up.starts) > 0
	}
	return slices.ContainsFunc(s.sources, func(o source) bool { return o.verb() == from })
}

// refuses reports whether a route may not be used since solvent cannot go first.
func (s *search) refuses(c *chain) bool {
	r := c.route()
	if c.mayBeNothing {
		if a, err := s.prep.Assess(r, s.coverage); err != nil || !a.Possible {
			return true
		}
	}
	return mayBeRefused(r) && s.prep.CheckOrder(r) != nil
}

// mayBeRefused reports whether a route is worth asking whether solvent can go first in it: it has a
// stock in another solvent, or what is made up to a mark fills it, or less than twice as much solvent is weighed to it.
func mayBeRefused(r *route.Route) bool {
	for i := range r.Steps {
		s := &r.Steps[i]
		if s.Stock != nil && s.Stock.Solvent != "" {
			return true
		}
		part := s.Amount
		if s.Packet != nil {
			part = s.Packet.Content.Value
		}
		if i+1 == len(r.Steps) {
			break
		}
		most := r.Steps[i+1].Amount * (1 - slack)
		if verb := r.Steps[i+1].Verb; verb == route.MakeUpTo && part >= most || verb == route.WeighUpTo && 3*part >= most {
			return true
		}
	}
	return false
}

// offered is the merit that counts, and whether it is worth looking for.
func (j *judge) offered(m merit) (merit, bool) {
	if j.worthOnly {
		m.leftOver, m.operations = 0, 0
	}
	return m, m.worth >= j.floor
}
