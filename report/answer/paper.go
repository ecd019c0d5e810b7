package answer

import (
	"context"
	"path/filepath"
	"slices"

	"minim/equipment/quantity"
	"minim/report/data"
	"minim/report/figure"
	"minim/report/page"
	"minim/report/words"
	"minim/uncertainty/contest"
	"minim/uncertainty/record"
	"minim/uncertainty/route"
)

// paper works out what a document is made of. Where others are false, the routes beside
// the one that is named are left out.
func paper(ctx context.Context, q *Question, others bool) (*words.Paper, error) {
	p := &words.Paper{Date: q.Date, ByUser: q.Route != "", Origin: q.Origin}
	p.Origin.Files = []words.File{fileOf(q.Prep.File, q.Prep.Digest), fileOf(q.Prep.Kit.File, q.Prep.Kit.Digest)}
	name := q.Route
	if q.Record != nil {
		m, err := record.Evaluate(ctx, q.Record, q.Settings)
		if err != nil {
			return nil, err
		}
		p.Batch, name = &words.Batch{Made: m}, m.Planned.Name
		p.Origin.Files = append(p.Origin.Files, fileOf(q.Record.File, q.Record.Digest))
		if !others || !m.AsPlanned.Possible || len(m.Differences) > 0 || q.Prep.CheckOrder(m.Planned) != nil {
			p.Comparison = p.Batch.Alone()
			return p, nil
		}
	}
	work := contest.Compare
	if name != "" && others {
		work = contest.CompareTo
	}
	var err error
	if p.Comparison, err = work(ctx, q.Prep, name, q.Settings); err != nil {
		return nil, err
	}
	if r := &p.Results[0]; p.Verdict.Use < 0 && name != "" {
		return nil, &route.CannotError{Name: name, Reason: r.Reason, Forbidden: r.MayNotBeUsed()}
	}
	return p, nil
}

func fileOf(name, digest string) words.File {
	return words.File{Name: quantity.Printable(filepath.Base(name)), SHA256: digest}
}

// onPaper is the answer with such a page; its data are those of what it is about.
func onPaper(p *words.Paper, show func() *page.Page) *Answer {
	a := &Answer{Comparison: p.Comparison, Batch: p.Batch, page: func(...page.Block) *page.Page { return show() }, data: data.Comparison(p.Comparison, nil)}
	if p.Batch != nil {
		a.data = data.Made(p.Batch)
	}
	return a
}

// ofPaper is how a picture of what a paper is about is drawn: of the batch where there is one.
func ofPaper(p *words.Paper, draw func(*route.Comparison, *route.Result) (*figure.Figure, error)) func() (*figure.Figure, error) {
	if p.Batch == nil {
		return used(p.Comparison, draw)
	}
	made := *p.Comparison
	made.Prep = p.Batch.Prep
	return func() (*figure.Figure, error) { return draw(&made, &p.Batch.AsMade) }
}

// underTitle puts a picture below the title of a page.
func underTitle(blocks []page.Block, picture page.Block) []page.Block {
	at := slices.IndexFunc(blocks, func(b page.Block) bool { _, is := b.(page.Title); return is })
	return slices.Insert(slices.Clone(blocks), at+1, picture)
}
