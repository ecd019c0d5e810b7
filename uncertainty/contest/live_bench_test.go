package contest_test

import (
	"context"
	"slices"
	"testing"
	"time"

	"minim/uncertainty"
	"minim/uncertainty/contest"
	"minim/uncertainty/route"
)

// eightRoutes is the demo with as many routes that can be done as a page may show: those of its own, and one of them
// twice.
func eightRoutes(b testing.TB) *route.Prep {
	p := load(b, demoPrep)
	q := *p
	q.Routes = nil
	for _, r := range p.Routes {
		if result, err := p.Assess(r, 0.95); err == nil && result.Possible {
			q.Routes = append(q.Routes, r)
		}
	}
	for i := 0; len(q.Routes) < 8; i++ {
		again := *q.Routes[i]
		again.Name += " again"
		q.Routes = append(q.Routes, &again)
	}
	return &q
}

// repeatabilityOf is the change of how an instrument scatters in use, in each route that uses it.
func repeatabilityOf(b testing.TB, p *route.Prep) uncertainty.Change {
	for _, r := range p.Routes {
		if result, err := p.Assess(r, 0.95); err == nil {
			for i := range result.Analytic.Budget {
				if line := &result.Analytic.Budget[i]; line.Code == "repeatability" || line.Code == "weighing" {
					return uncertainty.Change{Code: line.Code, Group: line.Group}
				}
			}
		}
	}
	b.Fatal("no instrument scatters")
	return uncertainty.Change{}
}

// BenchmarkUpdate is one instrument's repeatability changed on eight routes, beside a comparison that begins anew, and the
// figure by the laws before anything is simulated: medians in ms, and what an update allocates.
func BenchmarkUpdate(b *testing.B) {
	p := eightRoutes(b)
	l, err := contest.NewLive(p, fewTrials)
	if err != nil {
		b.Fatal(err)
	}
	change := repeatabilityOf(b, p)
	var updates, firsts, anew []float64
	ms := func(from time.Time) float64 { return float64(time.Since(from).Microseconds()) / 1000 }
	n := 0
	b.ReportAllocs()
	for b.Loop() {
		n++
		change.Factor = 1 + float64(n%10)/10
		changes := []uncertainty.Change{change}
		from := time.Now()
		_, err := l.Update(context.Background(), changes, func(*route.Comparison) { firsts = append(firsts, ms(from)) })
		if err != nil {
			b.Fatal(err)
		}
		updates = append(updates, ms(from))
		b.StopTimer()
		fresh := *p
		fresh.Known = changes
		from = time.Now()
		if _, err := contest.Compare(context.Background(), &fresh, "", fewTrials); err != nil {
			b.Fatal(err)
		}
		anew = append(anew, ms(from))
		b.StartTimer()
	}
	for name, list := range map[string][]float64{"ms/first": firsts, "ms/update": updates, "ms/anew": anew} {
		slices.Sort(list)
		b.ReportMetric(list[len(list)/2], name)
	}
}
