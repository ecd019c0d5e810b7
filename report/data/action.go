package data

import (
	"minim/equipment"
	"minim/report/words"
	"minim/report/words/verb"
	"minim/uncertainty/route"
)

// actionJSON is a step in its parts, with the sentence that says it. Of what it brings,
// "the solution" is that of an earlier step.
type actionJSON struct {
	Step       int         `json:"step"`
	Verb       string      `json:"verb"`
	Amount     *number     `json:"amount"`
	Unit       *string     `json:"unit"`
	Of         string      `json:"of"`
	OfStep     *int        `json:"of_step"`
	Instrument *string     `json:"instrument"`
	Piece      *int        `json:"piece"`
	Options    optionsJSON `json:"options"`
	Shown      *string     `json:"amount_shown"`
	Sentence   string      `json:"sentence"`
}

// optionsJSON is what a step says besides; null where it says nothing of it.
type optionsJSON struct {
	Reading      *string `json:"reading"`
	State        *string `json:"state"`
	Emptying     *string `json:"emptying"`
	WeighedBack  bool    `json:"weighed_back"`
	SeparateTare bool    `json:"separate_tare"`
	LeftBehind   *number `json:"left_behind_g"`
	Vessel       *number `json:"vessel_g"`
	Contraction  *number `json:"contraction"`
}

func actionsToJSON(p *route.Prep, r *route.Route) []actionJSON {
	out := make([]actionJSON, len(r.Steps))
	for i, sentence := range words.Instructions(p, r) {
		out[i] = actionToJSON(p, &r.Steps[i])
		out[i].Step, out[i].Sentence = i+1, sentence
	}
	return out
}

func actionToJSON(p *route.Prep, s *route.Step) actionJSON {
	out := actionJSON{Verb: string(s.Verb), Of: broughtBy(p, s), OfStep: place(s.From), Options: optionsOf(s)}
	if s.Balance == nil && s.Measure == nil {
		return out
	}
	out.Amount, out.Unit, out.Shown, out.Piece = some(s.Amount), orNull(unitOf(s)), orNull(verb.Amount(s)), place(s.Piece)
	if s.Balance != nil {
		out.Instrument = orNull(s.Balance.Name)
	} else {
		out.Instrument = orNull(s.Measure.Name)
	}
	return out
}

// broughtBy is what a step measures out or goes on with.
func broughtBy(p *route.Prep, s *route.Step) string {
	switch {
	case s.Stock != nil:
		return s.Stock.Name
	case s.Packet != nil:
		return s.Packet.Name
	}
	switch s.Verb {
	case route.Weigh, route.Measured, route.AddSolute:
		return p.Solute.Weighed()
	case route.DissolveIn, route.MakeUpTo, route.Add, route.WeighUpTo:
		return p.Solvent.Name
	}
	return "the solution"
}

func optionsOf(s *route.Step) optionsJSON {
	return optionsJSON{
		Reading: orNull(string(s.Reading)), State: orNull(string(s.State)), Emptying: orNull(emptyings[s.Emptying]),
		WeighedBack: s.WeighedBack, SeparateTare: s.SeparateTare,
		LeftBehind: stated(s.LeftBehind), Vessel: stated(s.Vessel), Contraction: stated(s.Contraction),
	}
}

// emptyings as they are called in the JSON.
var emptyings = map[equipment.Emptying]string{equipment.Rinsed: "rinsed", equipment.BlownOut: "blown_out"}

// stated is null for what is not stated.
func stated(x equipment.Stated) *number {
	if !x.Known {
		return nil
	}
	return some(x.Value)
}

// shownJSON holds the figures of a route as the screens print them.
type shownJSON struct {
	Strength    string  `json:"strength"`
	Spread      string  `json:"give_or_take"`
	Sentence    string  `json:"sentence"`
	Relative    string  `json:"relative_give_or_take"`
	Inside      *string `json:"inside_in_100"`
	HoldsWithin string  `json:"holds_within"`
	Spoilt      string  `json:"spoilt_by"`
	Made        string  `json:"made"`
	LeftOver    string  `json:"left_over"`
	Solute      string  `json:"solute"`
}

// shownToJSON is null of a route that says almost nothing about the amount.
func shownToJSON(p *route.Prep, r *route.Result) *shownJSON {
	if !r.Possible || !r.Informative {
		return nil
	}
	f := words.Shown(p, r)
	return &shownJSON{
		Strength: f.Value, Spread: f.Spread, Sentence: f.Sentence, Relative: f.Relative, Inside: orNull(f.Inside), HoldsWithin: f.HoldsWithin,
		Spoilt: f.Spoilt, Made: f.Made, LeftOver: f.LeftOver, Solute: f.Solute,
	}
}

// shownLine holds the figures of a line of a budget as they are printed.
type shownLine struct {
	U     string `json:"standard_uncertainty"`
	Share string `json:"share"`
}
