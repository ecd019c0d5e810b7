package data

import (
	"encoding/json"
	"math"

	"minim/report/words"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/route"
)

// compareSchema names the form of the JSON.
const compareSchema = "minim.compare/1"

// number is a JSON number, null when it is not finite.
type number float64

// MarshalJSON prints all digits of a finite number.
func (n number) MarshalJSON() ([]byte, error) {
	if math.IsNaN(float64(n)) || math.IsInf(float64(n), 0) {
		return []byte("null"), nil
	}
	return json.Marshal(float64(n))
}

type comparisonJSON struct {
	Schema string `json:"schema"`
	wantedJSON
	Coverage number          `json:"coverage_probability"`
	Use      *string         `json:"use"`
	Meets    bool            `json:"meets_tolerance"`
	Routes   []routeJSON     `json:"routes"`
	Cautions []string        `json:"cautions"`
	Changes  []string        `json:"changes"`
	Before   *comparisonJSON `json:"before"`
}

// wantedJSON is what is wanted, and from which files.
type wantedJSON struct {
	Invented    bool            `json:"invented_example"`
	Title       string          `json:"title"`
	Note        string          `json:"note"`
	Prep        string          `json:"prep"`
	Kit         string          `json:"kit"`
	Solute      string          `json:"solute"`
	WeighedAs   string          `json:"weighed_as"`
	Counts      string          `json:"strength_counts"`
	Content     number          `json:"counted_of_weighed"`
	Solvent     string          `json:"solvent"`
	Unit        string          `json:"strength_unit"`
	Target      number          `json:"target"`
	Volume      number          `json:"volume_mL"`
	Tolerances  []toleranceJSON `json:"tolerances"`
	LeastChance number          `json:"least_conformance_probability"`
	MayNotMeet  []clashJSON     `json:"may_not_meet"`
}

type toleranceJSON struct {
	Text  string `json:"text"`
	Lower number `json:"lower"`
	Upper number `json:"upper"`
}

type routeJSON struct {
	Name          string             `json:"name"`
	Possible      bool               `json:"possible"`
	Reason        *string            `json:"reason"`
	ReasonCode    *string            `json:"reason_code"`
	Informative   bool               `json:"informative"`
	Uninformative *string            `json:"uninformative_because"`
	Steps         []string           `json:"steps"`
	Actions       []actionJSON       `json:"actions"`
	Dilutions     int                `json:"dilutions"`
	Operations    int                `json:"operations"`
	Intended      *number            `json:"intended"`
	Elsewhere     *elsewhereJSON     `json:"aims_elsewhere"`
	Analytic      *analyticJSON      `json:"analytic"`
	SecondOrder   *secondOrderJSON   `json:"second_order"`
	MonteCarlo    *monteCarloJSON    `json:"monte_carlo"`
	CrossCheck    *crossCheckJSON    `json:"cross_check"`
	Quoted        *quotedJSON        `json:"quoted"`
	Inside        []insideJSON       `json:"inside"`
	Closer        *number            `json:"closer_than_use"`
	HoldsWithin   *number            `json:"holds_within_of_target"`
	Budget        []contributionJSON `json:"budget"`
	AssumedShare  *number            `json:"assumed_share_of_variance"`
	Ladder        []rungJSON         `json:"ladder"`
	Solute        *number            `json:"solute_g"`
	Made          *number            `json:"made_mL"`
	LeftOver      *number            `json:"left_over_mL"`
	Warnings      []string           `json:"warnings"`
	Assumed       []string           `json:"assumed"`
	FromMemory    []string           `json:"from_memory"`
	NotCounted    []string           `json:"not_counted"`
	Notes         []noteJSON         `json:"notes"`
	Shown         *shownJSON         `json:"shown"`
}

type analyticJSON struct {
	Value       number  `json:"value"`
	U           number  `json:"standard_uncertainty"`
	Degrees     number  `json:"effective_degrees_of_freedom"`
	Coverage    number  `json:"coverage_probability"`
	Factor      number  `json:"coverage_factor"`
	Expanded    number  `json:"expanded_uncertainty"`
	Lower       number  `json:"lower"`
	Upper       number  `json:"upper"`
	Conformance *number `json:"conformance_probability"`
}

type secondOrderJSON struct {
	Shift  number  `json:"shift"`
	U      number  `json:"standard_uncertainty"`
	First  *string `json:"largest_term_of"`
	Second *string `json:"largest_term_with"`
}

type monteCarloJSON struct {
	Trials         int     `json:"trials"`
	Seed           uint64  `json:"seed"`
	Mean           number  `json:"mean"`
	MeanError      number  `json:"mean_standard_error"`
	Deviation      number  `json:"standard_deviation"`
	DeviationError number  `json:"standard_deviation_standard_error"`
	Lower          number  `json:"lower"`
	LowerError     number  `json:"lower_standard_error"`
	Upper          number  `json:"upper"`
	UpperError     number  `json:"upper_standard_error"`
	ShortestLower  number  `json:"shortest_lower"`
	ShortestUpper  number  `json:"shortest_upper"`
	Resolution     number  `json:"resolution"`
	Digits         int     `json:"significant_digits"`
	Conformance    *number `json:"conformance_probability"`
}

type crossCheckJSON struct {
	Agrees     bool    `json:"agrees"`
	Tolerance  number  `json:"tolerance"`
	DLow       number  `json:"d_low"`
	DHigh      number  `json:"d_high"`
	OfExpanded number  `json:"of_expanded"`
	Cause      *string `json:"cause"`
	Influence  *string `json:"influence"`
	With       *string `json:"with"`
}

type quotedJSON struct {
	Lower number `json:"lower"`
	Upper number `json:"upper"`
	From  string `json:"from"`
}

type insideJSON struct {
	Tolerance   string `json:"tolerance"`
	Conformance number `json:"conformance_probability"`
	Normal      number `json:"normal_approximation"`
	// Accepted strengths; both null where none is, one where it has no limit.
	AcceptLower number `json:"acceptance_lower"`
	AcceptUpper number `json:"acceptance_upper"`
}

type rungJSON struct {
	Rung       string        `json:"rung"`
	Take       number        `json:"take_mL"`
	Reason     *string       `json:"reason"`
	ReasonCode *string       `json:"reason_code"`
	Analytic   *analyticJSON `json:"analytic"`
	Ratio      *analyticJSON `json:"ratio_to_the_last"`
}

func rungToJSON(r *route.Rung) rungJSON {
	out := rungJSON{Rung: r.Strength.Text, Take: number(r.TakeML), Reason: orNull(r.Reason.String()), ReasonCode: orNull(r.Reason.Code)}
	if r.Reason.None() {
		out.Analytic = analyticToJSON(&r.Analytic)
	}
	if r.Ratio != nil {
		out.Ratio = analyticToJSON(r.Ratio)
	}
	return out
}

type contributionJSON struct {
	Influence    string    `json:"influence"`
	Owner        string    `json:"owner"`
	Group        string    `json:"group"`
	Shared       bool      `json:"shared"`
	U            number    `json:"standard_uncertainty"`
	Unit         string    `json:"unit"`
	Sensitivity  number    `json:"sensitivity"`
	Contribution number    `json:"contribution"`
	Share        number    `json:"share"`
	Shift        number    `json:"shift"`
	Assumed      bool      `json:"assumed"`
	Shown        shownLine `json:"shown"`
}

// JSON is the comparison in full precision, strengths in the unit of the
// target, undefined values null. Before is that on the kit as it is; it is null without
// changes.
func JSON(c, before *route.Comparison) ([]byte, error) {
	out := comparisonToJSON(c)
	if before != nil {
		out.Before = comparisonToJSON(before)
	}
	return indented(out)
}

func comparisonToJSON(c *route.Comparison) *comparisonJSON {
	p := c.Prep
	out := &comparisonJSON{
		Schema: compareSchema, wantedJSON: wantedToJSON(p), Coverage: number(c.Settings.Coverage),
		Meets: c.Verdict.Meets, Changes: list(words.ChangeTexts(p)),
	}
	var used *route.Result
	if c.Verdict.Use >= 0 {
		used = &c.Results[c.Verdict.Use]
		out.Use = &used.Route.Name
	}
	out.Cautions = words.Cautions(p, used)
	for i := range c.Results {
		out.Routes = append(out.Routes, routeToJSON(p, &c.Results[i]))
	}
	return out
}

func wantedToJSON(p *route.Prep) wantedJSON {
	out := wantedJSON{
		Invented: p.Kit.Invented, Title: p.Title, Note: p.Note, Prep: p.File, Kit: p.Kit.File,
		Solute: p.Solute.Name, WeighedAs: p.Solute.Weighed(), Counts: words.Meant(p), Content: number(p.SoluteContent()),
		Solvent: p.Solvent.Name,
		Unit:    p.Target.Unit.Name, Target: number(p.Target.Value), Volume: number(p.Volume),
		Tolerances: []toleranceJSON{}, LeastChance: number(p.LeastChance),
		MayNotMeet: clashesToJSON(p.Clashes()),
	}
	for _, t := range p.Tolerances {
		out.Tolerances = append(out.Tolerances, toleranceJSON{t.Text, number(t.Limits.Lower), number(t.Limits.Upper)})
	}
	return out
}

func routeToJSON(p *route.Prep, r *route.Result) routeJSON {
	out := routeJSON{
		Name: r.Route.Name, Possible: r.Possible, Reason: orNull(r.Reason.String()), ReasonCode: orNull(r.Reason.Code),
		Informative: r.Informative, Uninformative: orNull(r.Uninformative.String()),
		Steps: words.Instructions(p, r.Route), Actions: actionsToJSON(p, r.Route), Dilutions: r.Dilutions, Operations: r.Operations,
		Inside: []insideJSON{}, Budget: []contributionJSON{}, Ladder: []rungJSON{},
		Warnings: list(note.Texts(r.Notes.Warnings)), Assumed: list(note.Texts(r.Notes.Assumed)),
		FromMemory: list(note.Texts(r.Notes.FromMemory)), NotCounted: list(note.Texts(r.Notes.NotCounted)), Notes: notesToJSON(&r.Notes), Shown: shownToJSON(p, r),
	}
	if !r.Possible {
		return out
	}
	out.Intended, out.HoldsWithin, out.AssumedShare = some(r.Intended), some(r.HoldsWithin), some(r.AssumedShare)
	out.Solute, out.Made, out.LeftOver = soluteGrams(r), some(r.MadeML), some(r.LeftOverML)
	out.Closer, out.Elsewhere = some(r.Closer), elsewhereToJSON(r)
	out.Analytic, out.MonteCarlo = analyticToJSON(&r.Analytic), monteCarloToJSON(&r.MonteCarlo)
	out.SecondOrder = &secondOrderJSON{
		number(r.SecondOrder.Shift), number(r.SecondOrder.StandardUncertainty), orNull(r.SecondOrder.First), orNull(r.SecondOrder.Second),
	}
	if len(r.Inside) > 0 {
		out.Analytic.Conformance, out.MonteCarlo.Conformance = some(r.Inside[0].Normal), some(r.Inside[0].Simulated)
	}
	out.CrossCheck = crossCheckToJSON(&r.CrossCheck)
	out.Quoted = &quotedJSON{number(r.Quoted.Lower), number(r.Quoted.Upper), quotedFrom(r.Quoted)}
	for i, chance := range r.Inside {
		out.Inside = append(out.Inside, insideJSON{
			p.Tolerances[i].Text, number(chance.Simulated), number(chance.Normal), number(chance.Acceptance.Lower), number(chance.Acceptance.Upper),
		})
	}
	for i := range r.Ladder {
		out.Ladder = append(out.Ladder, rungToJSON(&r.Ladder[i]))
	}
	for i := range r.Analytic.Budget {
		out.Budget = append(out.Budget, contributionToJSON(&r.Analytic.Budget[i]))
	}
	return out
}

func analyticToJSON(a *uncertainty.Analytic) *analyticJSON {
	return &analyticJSON{
		Value: number(a.Value), U: number(a.StandardUncertainty), Degrees: number(a.DegreesOfFreedom),
		Coverage: number(a.CoverageProbability), Factor: number(a.CoverageFactor),
		Expanded: number(a.ExpandedUncertainty), Lower: number(a.Lower()), Upper: number(a.Upper()),
	}
}

func monteCarloToJSON(mc *uncertainty.MonteCarlo) *monteCarloJSON {
	return &monteCarloJSON{
		Trials: mc.Trials, Seed: mc.Seed, Resolution: number(mc.Resolution), Digits: mc.Digits,
		Mean: number(mc.Mean), Deviation: number(mc.StandardDeviation),
		MeanError: number(mc.MeanError), DeviationError: number(mc.DeviationError),
		Lower: number(mc.Lower), Upper: number(mc.Upper),
		LowerError: number(mc.LowerError), UpperError: number(mc.UpperError),
		ShortestLower: number(mc.ShortestLower), ShortestUpper: number(mc.ShortestUpper),
	}
}

func crossCheckToJSON(c *uncertainty.CrossCheck) *crossCheckJSON {
	out := &crossCheckJSON{
		Agrees: c.Agrees, Tolerance: number(c.Tolerance),
		DLow: number(c.DLow), DHigh: number(c.DHigh), OfExpanded: number(c.OfExpanded),
	}
	out.Cause, out.Influence, out.With = orNull(string(c.Cause)), orNull(c.Influence), orNull(c.With)
	return out
}

func quotedFrom(q uncertainty.Quoted) string {
	if q.Simulated {
		return "monte_carlo"
	}
	return "analytic"
}

func contributionToJSON(line *uncertainty.Contribution) contributionJSON {
	owner, u, share := words.Line(line)
	return contributionJSON{
		Influence: line.Name, Owner: owner, Group: line.Group.Name, Shared: line.Shared(),
		U: number(line.StandardUncertainty), Unit: line.Unit, Sensitivity: number(line.Sensitivity),
		Contribution: number(line.Contribution), Share: number(line.Share),
		Shift: number(line.Shift()), Assumed: line.Assumed,
		Shown: shownLine{u, share},
	}
}

// orNull is a text, nil and so null when there is none.
func orNull(text string) *string {
	if text == "" {
		return nil
	}
	return &text
}

func some(x float64) *number {
	n := number(x)
	return &n
}

// list is never nil, so that JSON shows [] and not null.
func list(texts []string) []string {
	if texts == nil {
		return []string{}
	}
	return texts
}
