package plan

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"minim/uncertainty/route"
)

// search looks for the routes of a bench that no other beats.
type search struct {
	*bench
	options Options
	judge   judge
	// fewest dilutions of the routes that are searched; byVolume: none by weighing.
	fewest   int
	byVolume bool
	// mostLeftOver in mL, mostSolute in g, and strongest in g/mL limit the routes.
	mostLeftOver, mostSolute, strongest float64
	// mostWeighed is the most solute that can be weighed, in g of what counts.
	mostWeighed float64
	pass        *pass
	// front is replaced as a whole, under the lock.
	front  atomic.Pointer[front]
	lock   sync.Mutex
	counts counts
}

func newSearch(b *bench, o Options, j judge) *search {
	s := &search{bench: b, options: o, judge: j, mostLeftOver: o.mostLeftOver(b.prep), mostSolute: o.mostSolute(), strongest: o.strongest(b.prep)}
	s.mostWeighed = b.mostWeighed(s.mostSolute)
	s.judge.mostU = b.mostU(o.Steps)
	s.judge.strengths = s.judge.strengthsWorth(j.floor)
	s.front.Store(new(front))
	return s
}

// stage of a search.
type stage struct {
	name string
	run  func(ctx context.Context) error
}

// run searches all routes, those with few dilutions first. When the time is up, it
// says what it has not searched.
func (s *search) run(ctx context.Context) error {
	limited, cancel := s.options.stopping(ctx)
	defer cancel()
	stages := s.stages()
	for i, p := range stages {
		if s.options.Progress != nil {
			s.options.Progress(i, len(stages))
		}
		err := p.run(limited)
		if (errors.Is(err, context.DeadlineExceeded) || errors.Is(err, errEnough)) && ctx.Err() == nil {
			s.skip(stages[i:], err)
			return nil
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// skip says that the first of these stages has not been searched to its end, and the
// others not at all.
func (s *search) skip(stages []stage, err error) {
	why := "the time was up"
	if errors.Is(err, errEnough) {
		why = fmt.Sprintf("no more than %d candidates are tried", s.options.Work)
	}
	s.timeUp = true
	for i, p := range stages {
		rest := ""
		if i == 0 {
			rest = "the rest of the "
		}
		s.notSearched = append(s.notSearched, fmt.Sprintf("%s%s (%s)", rest, p.name, why))
	}
}

// stages are the passes by number of dilutions. The routes by weighing come before
// the passes with the most dilutions, which take longest.
func (s *search) stages() []stage {
	var list []stage
	for n := s.fewest; n <= s.options.Steps; n++ {
		if n == s.options.Steps && !s.byVolume {
			list = append(list, stage{"routes by weighing", s.byWeighing})
		}
		for _, measured := range []bool{false, true} {
			for _, from := range []route.Verb{route.Weigh, route.UsePacket, route.Start} {
				if n == 0 && (measured || from == route.Start) || n > 0 && len(s.dilutions) == 0 || !s.has(from) {
					continue
				}
				list = append(list, stage{passName(n, measured, from), func(ctx context.Context) error {
					var err error
					if s.pass, err = newPass(ctx, s.bench, n, measured, from); err != nil {
						return err
					}
					return s.runPass(ctx)
				}})
			}
		}
	}
	return list
}

// passName is "routes with 2 dilutions from a stock, solvent measured".
func passName(n int, measured bool, from route.Verb) string {
	dilutions := [...]string{"direct routes", "routes with 1 dilution"}
	name := fmt.Sprintf("routes with %d dilutions", n)
	if n < len(dilutions) {
		name = dilutions[n]
	}
	name += map[route.Verb]string{route.Weigh: " from a weighing", route.UsePacket: " from a packet", route.Start: " from a stock"}[from]
	switch {
	case measured:
		name += ", solvent measured"
	case n > 0:
		name += ", made up to marks"
	}
	return name
}

// has reports whether there is a source of a pass.
func (s *search) has(from route.Verb) bool {
	return slices.ContainsFunc(s.sources, func(o source) bool { return o.step.Verb == from })
}

// runPass shares the routes of a pass out among the processors.
func (s *search) runPass(ctx context.Context) error {
	var wait sync.WaitGroup
	walks, c := make([]*walk, s.processors()), newClaims(s.pass)
	for i := range walks {
		walks[i] = s.newWalk(ctx, c)
		wait.Add(1)
		go func() {
			defer wait.Done()
			walks[i].run()
		}()
	}
	wait.Wait()
	for _, w := range walks {
		s.counts.built += w.counts.built
		s.counts.tried += w.counts.tried
		s.counts.finished += w.counts.finished
		if w.err != nil {
			return w.err
		}
	}
	return nil
}

// processors among which a pass is shared out: one where the number of candidates is
// limited.
func (s *search) processors() int {
	if s.options.Work > 0 {
		return 1
	}
	return runtime.GOMAXPROCS(0)
}

// offer puts a finished route on the front, unless it is beaten, or may not be used since
// solvent cannot go first.
func (s *search) offer(m merit, c func() chain) {
	if s.judge.worthOnly {
		m.leftOver, m.operations = 0, 0
	}
	if !(m.worth >= s.judge.floor) || s.front.Load().beaten(m) {
		return
	}
	found := c()
	if r := found.route(); found.whole == nil && mayBeRefused(r) && s.prep.CheckOrder(r) != nil {
		return
	}
	s.lock.Lock()
	defer s.lock.Unlock()
	if f := s.front.Load(); !f.beaten(m) {
		s.front.Store(f.add(s.judge.stair(m, found)))
	}
}

// mayBeRefused reports whether a route by volume is worth asking whether solvent can go first
// in it: it has a stock in another solvent, or what is made up to a mark fills it.
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
		if i+1 < len(r.Steps) && r.Steps[i+1].Verb == route.MakeUpTo && part >= r.Steps[i+1].Amount*(1-slack) {
			return true
		}
	}
	return false
}
