package data

import (
	"minim/report/words"
	"minim/report/words/verb"
	"minim/uncertainty/record"
	"minim/uncertainty/rescue"
)

// The forms of the JSON of a batch, and of the ways to correct a solution.
const (
	madeSchema   = "minim.made/1"
	rescueSchema = "minim.rescue/1"
)

type madeJSON struct {
	Schema string `json:"schema"`
	wantedJSON
	Coverage   number       `json:"coverage_probability"`
	Record     string       `json:"record"`
	Batch      *string      `json:"batch"`
	Note       *string      `json:"record_note"`
	Route      string       `json:"route"`
	Finished   bool         `json:"finished"`
	Meets      bool         `json:"meets_tolerance"`
	Bench      benchJSON    `json:"bench"`
	Planned    routeJSON    `json:"planned"`
	Made       routeJSON    `json:"made"`
	Difference *number      `json:"difference_from_plan"`
	Effects    []effectJSON `json:"effects"`
	Steps      []originJSON `json:"steps"`
	Entries    []entryJSON  `json:"entries"`
	Carried    bool         `json:"plan_in_record"`
	Differs    []differJSON `json:"plan_differs_from_prep"`
	CutOff     []cutJSON    `json:"cut_off"`
	Begun      int          `json:"steps_not_counted"`
	Room       []roomJSON   `json:"room"`
	Rescue     *waysJSON    `json:"rescue"`
	NoWay      *string      `json:"no_rescue_because"`
	Cautions   []string     `json:"cautions"`
}

// benchJSON is the bench on the day, null where it is not known.
type benchJSON struct {
	Temperature *number `json:"temperature_celsius"`
	Within      *number `json:"within_celsius"`
}

// effectJSON is a deviation from the plan. Step is 0 for the temperature of the bench,
// and null for what was done after the plan.
type effectJSON struct {
	Step     *int    `json:"step"`
	Planned  *string `json:"planned"`
	Done     *string `json:"done"`
	Relative number  `json:"relative_change"`
}

// originJSON says of a step of the made route where it is from. Amounts are in g, mL or
// drops, as the step measures.
type originJSON struct {
	Step   int     `json:"step"`
	Does   string  `json:"does"`
	Origin string  `json:"from"`
	Lost   *number `json:"thrown_away"`
}

type entryJSON struct {
	Number    int     `json:"number"`
	Line      int     `json:"line"`
	Step      *int    `json:"step"`
	Said      string  `json:"said"`
	Read      bool    `json:"read"`
	By        *string `json:"by"`
	At        *string `json:"at"`
	Spoilt    *string `json:"spoilt_by"`
	Corrects  *int    `json:"corrects"`
	Withdrawn bool    `json:"withdrawn"`
	Late      bool    `json:"late"`
	Struck    bool    `json:"struck"`
	StruckBy  *int    `json:"struck_by"`
	Note      *string `json:"note"`
}

// differJSON is where the plan in the record and the prep with its kit as they are now do
// not agree; null where nothing is stated.
type differJSON struct {
	Of   *string `json:"of"`
	Key  *string `json:"key"`
	Then *string `json:"planned_then"`
	Now  *string `json:"planned_now"`
}

type cutJSON struct {
	Line int    `json:"line"`
	Text string `json:"text"`
}

// roomJSON are the readings of a step still to come with which the batch is inside; null
// where there is no limit or no such reading.
type roomJSON struct {
	Step    int     `json:"step"`
	Planned number  `json:"planned"`
	Unit    string  `json:"unit"`
	Any     bool    `json:"any"`
	Fixed   bool    `json:"one_mark"`
	Low     *number `json:"low"`
	High    *number `json:"high"`
}

type waysJSON struct {
	To      number    `json:"to"`
	Use     string    `json:"use"`
	Meets   bool      `json:"meets_tolerance"`
	Largest number    `json:"largest_vessel_mL"`
	Ways    []wayJSON `json:"ways"`
	// Tried is the number of corrections that were worked out.
	Tried    int      `json:"corrections_tried"`
	NotTried []string `json:"not_tried"`
}

type wayJSON struct {
	Kind     string   `json:"kind"`
	Does     []string `json:"does"`
	SetAside number   `json:"set_aside_mL"`
	routeJSON
}

// rescueJSON is what there is, and the ways to correct it.
type rescueJSON struct {
	Schema string `json:"schema"`
	wantedJSON
	Coverage number        `json:"coverage_probability"`
	Has      *analyticJSON `json:"has"`
	Volume   number        `json:"has_mL"`
	waysJSON
	Cautions []string `json:"cautions"`
}

// MadeJSON is a batch in full precision; see [JSON].
func MadeJSON(b *words.Batch) ([]byte, error) {
	p := b.Prep
	out := &madeJSON{
		Schema: madeSchema, wantedJSON: wantedToJSON(p), Coverage: number(b.Settings.Coverage),
		Record: b.File, Batch: orNull(b.Record.Batch), Note: orNull(b.Record.Note), Route: b.Record.Made.Name,
		Carried: !b.PlanMissing, Differs: []differJSON{}, Finished: b.Finished(), Meets: b.Meets() && len(p.Tolerances) > 0, Begun: b.Begun,
		Planned: routeToJSON(b.Record.Plan, &b.AsPlanned), Made: routeToJSON(p, &b.AsMade),
		Effects: []effectJSON{}, Entries: []entryJSON{}, CutOff: []cutJSON{}, Room: []roomJSON{}, Cautions: b.Cautions(),
	}
	if t := p.Bench.Temperature; t.Known {
		out.Bench = benchJSON{some(t.Value), some(p.Bench.Within.Value)}
	}
	if b.AsPlanned.Possible {
		out.Difference = some(b.Difference())
	}
	for _, e := range b.Effects {
		out.Effects = append(out.Effects, effectToJSON(e))
	}
	for i := range b.Steps {
		out.Steps = append(out.Steps, originToJSON(b.Record, i))
	}
	for i := range b.Entries {
		out.Entries = append(out.Entries, entryToJSON(&b.Entries[i]))
	}
	for _, d := range b.Differences {
		out.Differs = append(out.Differs, differJSON{orNull(d.Of), orNull(d.Key), orNull(d.Then), orNull(d.Now)})
	}
	for _, c := range b.Cut {
		out.CutOff = append(out.CutOff, cutJSON(c))
	}
	for i := range b.Room {
		out.Room = append(out.Room, roomToJSON(b, &b.Room[i]))
	}
	if b.Rescue != nil {
		out.Rescue = waysToJSON(b.Rescue)
	}
	if b.NoWay != nil {
		out.NoWay = orNull(b.NoWay.Reason)
	}
	return indented(out)
}

// RescueJSON is the ways to correct a solution in full precision; see [JSON].
func RescueJSON(r *rescue.Rescue) ([]byte, error) {
	return indented(&rescueJSON{
		Schema: rescueSchema, wantedJSON: wantedToJSON(r.Prep), Coverage: number(r.Settings.Coverage),
		Has: analyticToJSON(&r.Batch.Analytic), Volume: number(r.Batch.MadeML), waysJSON: *waysToJSON(r), Cautions: words.Cautions(r.Prep, &r.Results[r.Verdict.Use]),
	})
}

func effectToJSON(e record.Effect) effectJSON {
	out := effectJSON{Step: &e.Step, Relative: number(e.Relative)}
	if e.Step == record.Extra {
		out.Step = nil
	}
	if e.Done != nil {
		out.Planned, out.Done = orNull(verb.Short(e.Planned)), orNull(verb.Short(e.Done))
	}
	return out
}

// origins as they are called in the JSON.
var origins = map[record.Origin]string{
	record.Recorded: "reading", record.AsPlanned: "done as planned", record.Missing: "plan", record.ToCome: "to come",
}

func originToJSON(r *record.Record, i int) originJSON {
	s := &r.Made.Steps[i]
	out := originJSON{Step: i + 1, Does: verb.Short(s), Origin: origins[r.Steps[i]]}
	if s.Lost > 0 {
		out.Lost = some(s.Lost)
	}
	return out
}

func entryToJSON(e *record.Entry) entryJSON {
	said, struck := words.SaidIn(e)
	return entryJSON{
		Number: e.Number, Line: e.Line, Step: place(e.Step), Said: said, Read: e.Read, By: orNull(e.By), At: orNull(e.At),
		Spoilt: orNull(e.Spoilt), Corrects: place(e.Corrects), Withdrawn: e.Withdrawn, Late: e.Late,
		Struck: struck, StruckBy: place(e.StruckBy), Note: orNull(e.Note),
	}
}

// place is a number from 1, nil and so null when there is none.
func place(n int) *int {
	if n == 0 {
		return nil
	}
	return &n
}

func roomToJSON(b *words.Batch, r *record.Room) roomJSON {
	out := roomJSON{Step: r.Step, Planned: number(r.Planned), Unit: unitOf(&b.Record.Made.Steps[r.Step-1]), Any: r.Any, Fixed: r.Fixed}
	if r.Any && !r.LowFree {
		out.Low = some(r.Low)
	}
	if r.Any && !r.HighFree {
		out.High = some(r.High)
	}
	return out
}

// ways as they are called in the JSON.
var wayNames = map[rescue.Way]string{
	rescue.FillUp: "fill_up", rescue.AddSolvent: "add_solvent", rescue.DilutePart: "dilute_part",
	rescue.StrengthenAll: "strengthen", rescue.AddMore: "add_solute", rescue.StrengthenAndAdd: "strengthen_and_add_solvent",
}

func waysToJSON(r *rescue.Rescue) *waysJSON {
	out := &waysJSON{
		To: number(r.Prep.Target.Value), Use: r.Results[r.Verdict.Use].Route.Name,
		Meets: r.Verdict.Meets && len(r.Prep.Tolerances) > 0, Largest: number(r.Largest), Tried: r.Tried, NotTried: list(r.NotTried),
	}
	for i := range r.Results {
		out.Ways = append(out.Ways, wayJSON{
			Kind: wayNames[r.Kinds[i]], Does: words.WayInstructions(r, i), SetAside: number(r.SetAside(i)), routeJSON: routeToJSON(r.Prep, &r.Results[i]),
		})
	}
	return out
}
