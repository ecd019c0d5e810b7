package search

import (
	"math"
	"slices"

	"minim/equipment"
	"minim/uncertainty/route"
)

// bruteByWeighing lists every route by weighing with up to so many dilutions: see
// the rule in weighlast.go.
func bruteByWeighing(p *route.Prep, dilutions int) (all [][]route.Step) {
	for _, k := range p.Kit.Balances {
		perGram := 1.0
		if p.Solute.Assay.Known {
			perGram = p.Solute.Assay.Value
		}
		for _, other := range p.Kit.Balances {
			all = append(all, bruteOn(p, k, nil, route.Step{Verb: route.Weigh, Balance: other}, perGram, dilutions)...)
		}
		for _, first := range measuredFirst(p, perGram) {
			if n := dilutions - first.dilutions; n > 0 {
				all = append(all, bruteOn(p, k, first.steps, route.Step{Verb: route.WeighAliquot, Balance: k}, p.MassFraction(first.concentration), 0)...)
			}
		}
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
	target, on := p.MassFraction(p.ConcentrationOf(p.Target.Value)), part.Balance
	for total := range totals(p, k) {
		then := func(grams float64) []route.Step {
			s := part
			s.Amount = grams
			return append(append([]route.Step(nil), before...), s, route.Step{Verb: route.WeighUpTo, Amount: total, Balance: k})
		}
		all = append(all, then(on.Displayed(math.Floor(target*total/fraction/on.Readability+0.5+1e-9))))
		for e := -6; e < 4 && more > 0; e++ {
			for _, m := range []float64{1, 2, 5} {
				m *= math.Pow10(e)
				digits := math.Round(m / on.Readability)
				if digits < 10 || math.Abs(digits*on.Readability-m) > 1e-9 || m >= total || fraction*m/total < target {
					continue
				}
				all = append(all, bruteOn(p, k, then(on.Displayed(digits)), route.Step{Verb: route.WeighAliquot, Balance: k}, fraction*m/total, more-1)...)
			}
		}
	}
	return all
}

// measured is a solution that is made by volume.
type measured struct {
	steps         []route.Step
	concentration float64
	dilutions     int
}

// measuredFirst are those of round masses, packets and stocks, each of which may be weighed up: see the rule in weighlast.go.
func measuredFirst(p *route.Prep, perGram float64) (all []measured) {
	for _, other := range p.Kit.Measures {
		for _, v := range other.Marks(false) {
			up := route.Step{Verb: route.MakeUpTo, Amount: v, Measure: other}
			for _, packet := range p.Packets {
				if other.Kind.Traits().Receives {
					all = append(all, measured{[]route.Step{{Verb: route.UsePacket, Packet: packet}, up}, packet.Content.Value * perGram / v, 0})
				}
			}
			for _, k := range p.Kit.Balances {
				for _, m := range roundMasses(k) {
					if other.Kind.Traits().Receives {
						all = append(all, measured{[]route.Step{{Verb: route.Weigh, Amount: m, Balance: k}, up}, m * perGram / v, 0})
					}
				}
			}
			for _, s := range p.Stocks {
				all = append(all, dilutedFirst(p, s, other, v)...)
			}
		}
	}
	return all
}

func dilutedFirst(p *route.Prep, s *route.Stock, other *equipment.Measure, v float64) (all []measured) {
	of, err := p.StockConcentration(s)
	if err != nil {
		return nil
	}
	for _, pipette := range p.Kit.Measures {
		for _, a := range pipette.Marks(false) {
			take := []route.Step{{Verb: route.Start, Stock: s}, {Verb: route.Take, Amount: a, Measure: pipette}}
			if !pipette.Kind.Traits().Delivers || pipette == other {
				continue
			}
			if other.Kind.Traits().Receives && v > a {
				all = append(all, measured{append(slices.Clone(take), route.Step{Verb: route.MakeUpTo, Amount: v, Measure: other}), of * a / v, 1})
			}
			if other.Kind.Traits().Delivers {
				all = append(all, measured{append(slices.Clone(take), route.Step{Verb: route.Add, Amount: v, Measure: other}), of * a / (v + a), 1})
			}
		}
	}
	return all
}

// nearestOfStock is the part of a stock that is weighed up to a total, which brings it nearest to the target
// once it is diluted.
func nearestOfStock(p *route.Prep, s *route.Stock, up route.Step, end []route.Step) (part route.Step, shown bool) {
	concentration := p.ConcentrationOf(p.Target.Value)
	for i := 0; i < len(end); i += 2 {
		total := end[i+1].Amount
		if end[i+1].Verb == route.Add {
			total += end[i].Amount
		}
		concentration *= total / end[i].Amount
	}
	if concentration > 2 {
		return part, false
	}
	k := up.Balance
	digits := math.Floor(p.MassFraction(concentration)*up.Amount/fractionOf(p, s)/k.Readability + 0.5 + 1e-9)
	return route.Step{Verb: route.WeighAliquot, Amount: k.Displayed(digits), Balance: k}, digits >= 1 && digits*k.Readability < up.Amount
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
