package answer

import (
	"context"
	"errors"

	"minim/report/data"
	"minim/report/figure"
	"minim/report/page"
	"minim/report/words"
	"minim/report/words/glance"
	"minim/uncertainty/record"
	"minim/uncertainty/rescue"
)

var _ = answers("made", made, "made")

// made works out what was made, and how to correct it where it is not as it should be.
func made(ctx context.Context, q *Question) (*Answer, error) {
	m, err := record.Evaluate(ctx, q.Record, q.Settings)
	if err != nil {
		return nil, err
	}
	b, wanted := &words.Batch{Made: m}, q.Prep
	if wanted == nil {
		wanted = q.Record.OnTheBench()
	}
	if q.Prep != nil || !m.Meets() && q.Record.Finished() {
		b.Rescue, err = rescue.Find(ctx, wanted, q.Record.Made, q.Settings)
	}
	if err != nil && !errors.As(err, &b.NoWay) {
		return nil, err
	}
	return &Answer{
		Batch: b, data: data.Made(b), page: func(pictures ...page.Block) *page.Page { return madePage(b, pictures...) },
		glance:   func() *glance.Screen { return glance.Made(b) },
		pictures: []picture{{draw: drawn(figure.Batch, b)}},
	}, nil
}

// madePage is the page of a batch: what was wanted, whether the batch is that, what was done,
// what makes it differ from the plan, how far off the readings still to come may be, how it
// can be corrected, what the figures rest on, and cautions.
func madePage(b *words.Batch, pictures ...page.Block) *page.Page {
	s := b.Screen()
	return screen(s.Title, s.Opening, s.Result, pictures, s.Rest, s.Spoils, s.Footing)
}
