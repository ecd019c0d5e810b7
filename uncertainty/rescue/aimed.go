package rescue

import (
	"slices"

	"minim/uncertainty/route"
	"minim/uncertainty/tolerances"
)

// Aimed is a prep with another target. A tolerance that is a share of the target, or a
// half-width, is laid off round the new one; limits stated one by one stay where they
// permit it, and go where they do not. The volume wanted stays. Its errors are those of
// a strength in a file.
func Aimed(p *route.Prep, target string) (*route.Prep, error) {
	s, err := p.ParseStrength(target)
	if err != nil {
		return nil, err
	}
	q := *p
	q.Target, q.Tolerances, q.Ladder = s, nil, nil
	q.Hazards = slices.Clone(p.Hazards)
	for i := range q.Hazards {
		from := &q.Hazards[i].From
		from.Value, from.Unit = q.InTargetUnit(*from), s.Unit
	}
	for _, t := range p.Tolerances {
		if t.Stated {
			if s.Unit == p.Target.Unit && t.Limits.Permits(s.Value) {
				q.Tolerances = append(q.Tolerances, t)
			}
			continue
		}
		aimed, err := tolerances.Parse(&q, t.Text)
		if err != nil {
			return nil, err
		}
		q.Tolerances = append(q.Tolerances, aimed)
	}
	return &q, nil
}
