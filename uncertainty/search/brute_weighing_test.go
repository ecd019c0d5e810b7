package search

import (
	"math"

	"minim/equipment"
	"minim/uncertainty/route"
)

// bruteByWeighing lists every route by weighing with up to so many dilutions: see
// the rule in byweighing.go.
func bruteByWeighing(p *route.Prep, dilutions int) (all [][]route.Step) {
	for _, k := range p.Kit.Balances {
		perGram := 1.0
		if p.Solute.Assay.Known {
			perGram = p.Solute.Assay.Value
		}
		all = append(all, bruteOn(p, k, nil, route.Step{Verb: route.Weigh, Balance: k}, perGram, dilutions)...)
		for _, packet := range p.Packets {
			for total := range totals(p, k) {
				steps := []route.Step{{Verb: route.UsePacket, Packet: packet}, {Verb: route.WeighUpTo, Amount: total, Balance: k}}
				all = append(all, steps)
				if dilutions > 0 {
					all = append(all, bruteOn(p, k, steps, route.Step{Verb: route.WeighAliquot, Balance: k}, perGram*packet.Content.Value/total, dilutions-1)...)
				}
			}
		}
		for _, s := range p.Stocks {
			if dilutions > 0 {
				start := []route.Step{{Verb: route.Start, Stock: s}}
				all = append(all, bruteOn(p, k, start, route.Step{Verb: route.WeighAliquot, Balance: k}, fractionOf(p, s), dilutions-1)...)
			}
		}
	}
	return all
}

func bruteOn(p *route.Prep, k *equipment.Balance, before []route.Step, part route.Step, fraction float64, more int) (all [][]route.Step) {
	target := p.MassFraction(p.ConcentrationOf(p.Target.Value))
	for total := range totals(p, k) {
		then := func(grams float64) []route.Step {
			s := part
			s.Amount = grams
			return append(append([]route.Step(nil), before...), s, route.Step{Verb: route.WeighUpTo, Amount: total, Balance: k})
		}
		all = append(all, then(k.Displayed(math.Floor(target*total/fraction/k.Readability+0.5+1e-9))))
		for e := -6; e < 4 && more > 0; e++ {
			for _, m := range []float64{1, 2, 5} {
				m *= math.Pow10(e)
				digits := math.Round(m / k.Readability)
				if digits < 10 || math.Abs(digits*k.Readability-m) > 1e-9 || m >= total || fraction*m/total < target {
					continue
				}
				all = append(all, bruteOn(p, k, then(k.Displayed(digits)), route.Step{Verb: route.WeighAliquot, Balance: k}, fraction*m/total, more-1)...)
			}
		}
	}
	return all
}

// totals are the masses that solutions are made up to.
func totals(p *route.Prep, k *equipment.Balance) map[float64]bool {
	masses := []float64{p.Volume * p.Solvent.Density.Value, p.Volume * p.Density(1.1*p.MassFraction(p.ConcentrationOf(p.Target.Value)))}
	for _, m := range p.Kit.Measures {
		if m.Kind.Traits().Receives {
			masses = append(masses, m.Capacity*p.Solvent.Density.Value)
		}
	}
	all := map[float64]bool{}
	for _, m := range masses {
		if total := k.Displayed(math.Ceil(m / k.Readability * (1 - 1e-12))); total <= k.Capacity {
			all[total] = true
		}
	}
	return all
}

// weighedUpTotals are those of a solution that is diluted by volume: see the rule in weighedup.go.
func weighedUpTotals(p *route.Prep, end []route.Step) (all []route.Step) {
	for _, k := range p.Kit.Balances {
		for e := -6; e < 4; e++ {
			for _, m := range []float64{1, 2, 5} {
				total := m * math.Pow10(e)
				digits := math.Round(total / k.Readability)
				if len(end) > 0 && digits >= 10 && math.Abs(digits*k.Readability-total) < 1e-9 && total <= k.Capacity && total > end[0].Amount/2 {
					all = append(all, route.Step{Verb: route.WeighUpTo, Amount: k.Displayed(digits), Balance: k})
				}
			}
		}
	}
	return all
}
