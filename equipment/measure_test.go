package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/quantity"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

// Invented pieces of which everything is known, so that nothing is noted.

func tenCylinder() *Measure {
	return &Measure{
		Name: "cylinder", Kind: "cylinder", Capacity: 10, Division: 0.2, Count: 1,
		Bias: bias{Shape: triangle, Limit: 0.2, BetweenMarks: 0.5}, Expansion: Stated{Known: true},
		Clinging: Stated{Known: true}, Retained: Retained{Known: true},
	}
}

// quamFlask is that of EURACHEM/CITAC CG 4, example A1: 100 mL ±0.1 mL. Its
// neck of 13 mm is that of ISO 1042.
func quamFlask() *Measure {
	return &Measure{
		Name: "flask", Kind: "flask", Capacity: 100, Bore: 13, Count: 1,
		Bias: bias{Shape: triangle, Limit: 0.1, BetweenMarks: 0.5}, Expansion: Stated{Known: true},
		Clinging: Stated{Known: true},
	}
}

func graduatedPipette() *Measure {
	return &Measure{
		Name: "pipette", Kind: "graduated", Ex: true, Capacity: 5, Division: 0.05, Count: 1,
		Bias: bias{Shape: triangle, Limit: 0.05, BetweenMarks: 0.5}, Expansion: Stated{Known: true},
		Retained: Retained{Known: true},
	}
}

func oneMarkPipette() *Measure {
	return &Measure{
		Name: "pipette", Kind: "one-mark", Ex: true, Capacity: 10, Bore: 4, Count: 1,
		Bias: bias{Shape: triangle, Limit: 0.02, BetweenMarks: 0.5}, Expansion: Stated{Known: true},
		Retained: Retained{Known: true},
	}
}

func contain(t testing.TB, k *Measure, u Use, mark float64) uncertainty.Analytic {
	t.Helper()
	v, err := k.Contain(u, mark)
	require.NoError(t, err)
	return propagate(t, u, v)
}

func deliver(t testing.TB, k *Measure, u Use, mark float64) uncertainty.Analytic {
	t.Helper()
	v, err := k.Deliver(u, mark)
	require.NoError(t, err)
	return propagate(t, u, v)
}

// on is a day at a temperature within ± some °C, with a liquid.
func on(u Use, temperature, within, expansion float64) Use {
	u.Day = Day{Known: true, LiquidExpansion: expansion, Excess: u.Model.Influence(uncertainty.Influence{
		Code: "temperature", Owner: uncertainty.Owner{Kind: uncertainty.Day}, Unit: "°C",
		Distribution: uncertainty.Rectangular{Low: temperature - 20 - within, High: temperature - 20 + within},
	})}
	return u
}

// EURACHEM/CITAC CG 4, A1: ±0.1 mL triangular is 0.04 mL, filling 0.02 mL, 4 °C
// with 2.1e-4 per °C and no expansion of the glass 0.05 mL: together 0.07 mL.
// The guide takes 0.02 mL from ten fillings; 0.15 mm of level in a 13 mm neck
// gives the same.
func TestFlaskAsInTheGuide(t *testing.T) {
	u := on(oneUse(), 20, 4, 2.1e-4)
	a := contain(t, quamFlask(), u, 100)
	assert.Equal(t, 100.0, a.Value)
	assert.Equal(t, set("bias of the flask at 100 mL", "reading of the flask", "temperature of the bench"), names(a))
	near.Absolute(t, "bias", 0.0408, term(a, "bias of the flask at 100 mL").StandardUncertainty, 5e-5)
	near.Absolute(t, "filling", 0.02, term(a, "reading of the flask").StandardUncertainty, 5e-4)
	near.Absolute(t, "temperature", 0.05, math.Abs(term(a, "temperature of the bench").Contribution), 2e-3)
	near.Absolute(t, "in all", 0.07, a.StandardUncertainty, 5e-3)
	assert.Equal(t, said{}, worded(u.Notes))
}

// The same guide: 100 × 4 × 2.1e-4 = 0.084 mL is the change at 4 °C. A warm
// liquid has expanded: at 24 °C the mark holds 0.084 mL less of it than at 20 °C.
func TestTemperatureHasASign(t *testing.T) {
	for temperature, want := range map[float64]float64{24: -0.084, 20: 0, 16: 0.084} {
		a := contain(t, quamFlask(), on(oneUse(), temperature, 0, 2.1e-4), 100)
		near.Absolute(t, "shift", want, a.Value-100, 1e-9)
	}
	warm := quamFlask()
	warm.Expansion.Value = 9.9e-6 // borosilicate glass, ISO 3585: 3 × 3.3e-6
	a := contain(t, warm, on(oneUse(), 24, 0, 2.1e-4), 100)
	near.Absolute(t, "with the glass", -0.084+0.00396, a.Value-100, 1e-9)
	a = deliver(t, oneMarkPipette(), on(oneUse(), 24, 0, 2.1e-4), 10)
	near.Absolute(t, "delivered", -0.0084, a.Value-10, 1e-9)
	liquidAsGlass := on(oneUse(), 24, 2, 9.9e-6)
	assert.Equal(t, "", nameOf(term(contain(t, warm, liquidAsGlass, 100), "temperature of the bench")))
}

// One day for all volumes: the ratio of two volumes in glass of one kind has
// no error of temperature.
func TestTemperatureIsTheDays(t *testing.T) {
	u := on(oneUse(), 20, 5, 2.1e-4)
	flask, pipette := quamFlask(), oneMarkPipette()
	flask.Bias.Limit, pipette.Bias.Limit = 0, 0
	u.StepReading = noReading
	v, err := flask.Contain(u, 100)
	require.NoError(t, err)
	p, err := pipette.Deliver(u, 10)
	require.NoError(t, err)
	near.Relative(t, "correlation", 1, correlation(t, u, v, p), 1e-9)
	near.Absolute(t, "ratio", 0, propagate(t, u, u.Model.Divide(p, v)).StandardUncertainty, 1e-12)
}

func TestShapesOfBias(t *testing.T) {
	for _, test := range []struct {
		shape Shape
		want  uncertainty.Distribution
		u     float64
	}{
		{triangle, uncertainty.Peaked(0.1), 0.1 / math.Sqrt(6)},
		{rectangle, uncertainty.Rectangular{Low: -0.1, High: 0.1}, 0.1 / math.Sqrt(3)},
		{Gauss, uncertainty.Normal{Sigma: 0.1}, 0.1},
	} {
		k := quamFlask()
		k.Bias.Shape = test.shape
		a := contain(t, k, oneUse(), 100)
		same(t, a, "bias of the flask at 100 mL", test.u)
		assert.Equal(t, test.want, term(a, "bias of the flask at 100 mL").Distribution)
		near.Relative(t, "u", test.u, uncertainty.SummaryOf(k.Bias.Shape.within(k.Limit(k.Capacity))).StandardUncertainty, 1e-12)
	}
	k := quamFlask()
	k.Bias.Limit = 0
	assert.Equal(t, set("reading of the flask"), names(contain(t, k, oneUse(), 100)))
}

// A scale is read within a triangle of 0.2, 0.5 or 1.2 divisions; a mark in a
// neck is set within s = 0.15, 0.25 or 0.6 mm of level.
func TestReadingWords(t *testing.T) {
	for word, want := range map[Reading][2]float64{
		Careful:   {0.2 * 0.2 / math.Sqrt(6), 0.15 * math.Pi / 4 * 169 / 1000},
		ordinary:  {0.5 * 0.2 / math.Sqrt(6), 0.25 * math.Pi / 4 * 169 / 1000},
		firstTime: {1.2 * 0.2 / math.Sqrt(6), 0.60 * math.Pi / 4 * 169 / 1000},
	} {
		u := oneUse()
		u.StepReading = word
		same(t, contain(t, tenCylinder(), u, 10), "reading of the cylinder", want[0])
		same(t, deliver(t, tenCylinder(), u, 10), "reading of the cylinder", want[0])
		same(t, contain(t, quamFlask(), u, 100), "reading of the flask", want[1])
	}
	u := oneUse()
	u.StepReading = noReading
	assert.Equal(t, set("bias of the flask at 100 mL"), names(contain(t, quamFlask(), u, 100)))
	assert.Equal(t, []string{"careful", "ordinary", "first-time", "none"}, Readings())
}

// The step's word beats the instrument's, that beats the bench's.
func TestReadingPriority(t *testing.T) {
	u10 := func(step, own, bench Reading) (float64, []string) {
		k, u := tenCylinder(), alone()
		k.Reading, u.StepReading, u.BenchReading = own, step, bench
		return term(contain(t, k, u, 10), "reading of the cylinder").StandardUncertainty / 0.2 * math.Sqrt(6), worded(u.Notes).Assumed
	}
	for _, test := range []struct {
		step, own, bench Reading
		want             float64
	}{
		{firstTime, Careful, ordinary, 1.2},
		{Careful, firstTime, ordinary, 0.2},
		{"", Careful, firstTime, 0.2},
		{"", firstTime, Careful, 1.2},
		{"", "", Careful, 0.2},
		{noReading, Careful, firstTime, 0},
		{"", noReading, firstTime, 0},
		{ordinary, noReading, noReading, 0.5},
	} {
		got, assumed := u10(test.step, test.own, test.bench)
		near.Absolute(t, "half-width in divisions", test.want, got, 1e-12)
		assert.Equal(t, []string(nil), assumed)
	}
	got, assumed := u10("", "", "")
	near.Relative(t, "nobody says", 0.5, got, 1e-12)
	assert.Equal(t, []string{"scales and marks are read with ordinary care"}, assumed)
}

// A graduated pipette runs to the tip when it delivers its capacity, and is
// read twice for a part of it; a poured cylinder once, and a one-mark pipette not apart from
// what scatters in it.
func TestReadingsPerDelivery(t *testing.T) {
	one, two := set("reading of the pipette"), set("reading of the pipette", "second reading of the pipette")
	for mark, want := range map[float64]map[string]bool{5: one, 2.5: two, 4.95: two, 0.05: two} {
		k := graduatedPipette()
		k.Bias.Limit = 0
		a := deliver(t, k, oneUse(), mark)
		assert.Equal(t, want, names(a))
		near.Relative(t, "u", 0.2*0.05/math.Sqrt(6)*math.Sqrt(float64(len(want))), a.StandardUncertainty, 1e-12)
	}
	k := oneMarkPipette()
	k.Bias.Limit = 0
	assert.Equal(t, set("repeatability of the pipette"), names(deliver(t, k, oneUse(), 10)))
	c := tenCylinder()
	c.Bias.Limit = 0
	for _, mark := range []float64{3, 10} {
		assert.Equal(t, set("reading of the cylinder"), names(deliver(t, c, oneUse(), mark)))
	}
}

// Readings are made anew in each step, the bias is not.
func TestReadingIsTheSteps(t *testing.T) {
	u, k := oneUse(), tenCylinder()
	a, err := k.Contain(u.next("step 1"), 10)
	require.NoError(t, err)
	b, err := k.Contain(u.next("step 2"), 10)
	require.NoError(t, err)
	difference := propagate(t, u, u.Model.Subtract(a, b))
	near.Relative(t, "two fillings", math.Sqrt2*0.04/math.Sqrt(6), difference.StandardUncertainty, 1e-9)
}

// A measured s takes the place of reading, and of the scatter of what stays
// unless that is stated, but not of its mean.
func TestRepeatabilityReplaces(t *testing.T) {
	k := graduatedPipette()
	k.Repeatability = Spread{S: 0.01, DegreesOfFreedom: 9, Known: true, Mean: 2}
	k.Retained = Retained{Mean: 0.1, Known: true}
	u := alone()
	a := deliver(t, k, u, 2)
	same(t, a, "repeatability of the pipette", 0.01)
	same(t, a, "bias of the pipette at 2 mL", 0.05/math.Sqrt(6))
	near.Relative(t, "u", math.Hypot(0.01, 0.05/math.Sqrt(6)), a.StandardUncertainty, 1e-12)
	assert.Equal(t, uncertainty.StudentT{Sigma: 0.01, Nu: 9}, term(a, "repeatability of the pipette").Distribution)
	assert.Equal(t, 9.0, term(a, "repeatability of the pipette").DegreesOfFreedom)
	assert.Equal(t, said{}, worded(u.Notes)) // no word on how it is read

	c := tenCylinder()
	c.Repeatability, c.Retained = Spread{S: 0.03, Known: true}, k.Retained
	b := deliver(t, c, alone(), 10)
	near.Relative(t, "mean", 9.9, b.Value, 1e-12)
	near.Relative(t, "u", math.Hypot(0.03, 0.2/math.Sqrt(6)), b.StandardUncertainty, 1e-12)
	k.Retained.Spread = Stated{0.05, true}
	same(t, deliver(t, k, alone(), 2), "retained in the pipette", 0.05)
	for n, want := range map[float64]uncertainty.Distribution{
		0: uncertainty.Normal{Sigma: 0.03}, 1: uncertainty.StudentT{Sigma: 0.03, Nu: 1}, 3: uncertainty.StudentT{Sigma: 0.03, Nu: 3},
	} {
		c.Repeatability.DegreesOfFreedom = n
		assert.Equal(t, want, term(contain(t, c, alone(), 10), "repeatability of the cylinder").Distribution)
	}
}

// Drops above the meniscus go along with what was read: 0..K, on average K/2
// too much, in vessels and from what is poured.
func TestClinging(t *testing.T) {
	k := tenCylinder()
	k.Clinging.Value = 0.06
	for _, a := range []uncertainty.Analytic{contain(t, k, oneUse(), 10), deliver(t, k, oneUse(), 10)} {
		near.Relative(t, "mean", 10.03, a.Value, 1e-12)
		same(t, a, "drops clinging in the cylinder", 0.06/math.Sqrt(12))
		assert.Equal(t, uncertainty.Rectangular{Low: 0, High: 0.06}, term(a, "drops clinging in the cylinder").Distribution)
	}
	u := oneUse()
	v, err := k.Contain(u, 10)
	require.NoError(t, err)
	assert.Equal(t, 10.0, u.Model.Intended(v))
	p := graduatedPipette()
	p.Clinging = Stated{0.06, true}
	assert.Equal(t, 5.0, deliver(t, p, oneUse(), 5).Value)
	k.Clinging = Stated{}
	u = oneUse()
	assert.Equal(t, "", nameOf(term(contain(t, k, u, 10), "drops clinging in the cylinder")))
	assert.Equal(t, []string{"drops clinging above the meniscus in the cylinder"}, worded(u.Notes).NotCounted)
}

// A cylinder is adjusted to contain: what stays in it is missing.
func TestPouredCylinderKeepsItsShare(t *testing.T) {
	k := tenCylinder()
	k.Retained = Retained{Mean: 0.04, Spread: Stated{0.02, true}, Known: true}
	u := oneUse()
	v, err := k.Deliver(u, 10)
	require.NoError(t, err)
	a := propagate(t, u, v)
	near.Relative(t, "mean", 9.96, a.Value, 1e-12)
	assert.Equal(t, 10.0, u.Model.Intended(v))
	c := term(a, "retained in the cylinder")
	assert.Equal(t, uncertainty.Gamma{Mu: 0.04, Sigma: 0.02}, c.Distribution)
	assert.Equal(t, false, c.Assumed)
	near.Relative(t, "contribution", -0.02, c.Contribution, 1e-12)
	assert.Equal(t, "", nameOf(term(contain(t, k, oneUse(), 10), "retained in the cylinder")))
}

// What stays, not stated: assumed for the sizes that have a figure, and unknown by half
// of it; left out and said for others.
func TestPouredCylinderAssumed(t *testing.T) {
	for capacity, want := range map[float64]float64{5: 0.08, 10: 0.10, 25: 0.15, 50: 0.25, 100: 0.40} {
		k, u := tenCylinder(), oneUse()
		k.Capacity, k.Retained = capacity, Retained{}
		a := deliver(t, k, u, capacity)
		near.Relative(t, "mean", capacity-want, a.Value, 1e-12)
		c := term(a, "retained in the cylinder")
		near.Relative(t, "half of it", want/2, c.StandardUncertainty, 1e-12)
		assert.Equal(t, true, c.Assumed)
		assert.Equal(t, said{Assumed: []string{"the cylinder keeps about " + quantity.Millilitres(want) + " when it is poured out (unknown by half of that, and from pour to pour by a quarter)"}}, worded(u.Notes))
	}
	for _, capacity := range []float64{2, 20, 250, 1000} {
		k, u := tenCylinder(), oneUse()
		k.Capacity, k.Retained = capacity, Retained{}
		assert.Equal(t, capacity, deliver(t, k, u, capacity).Value)
		assert.Equal(t, said{NotCounted: []string{"what stays in the cylinder when it is poured out"}}, worded(u.Notes))
	}
}

// A pipette is adjusted to deliver: what stays in it on average is in its mark;
// only the scatter counts.
func TestPipetteIsAdjustedToDeliver(t *testing.T) {
	for _, k := range []*Measure{graduatedPipette(), oneMarkPipette()} {
		k.Retained = Retained{Mean: 0.1, Spread: Stated{0.05, true}, Known: true}
		u := oneUse()
		v, err := k.Deliver(u, k.Capacity)
		require.NoError(t, err)
		a := propagate(t, u, v)
		near.Relative(t, "mean", k.Capacity, a.Value, 1e-12)
		near.Relative(t, "intended", k.Capacity, u.Model.Intended(v), 1e-12)
		same(t, a, "retained in the pipette", 0.05)
		k.Retained = Retained{}
		u = oneUse()
		assert.Equal(t, "", nameOf(term(deliver(t, k, u, k.Capacity), "retained in the pipette")))
		if k.Division > 0 { // what stays in one with one mark is in the scatter that is assumed of it
			assert.Equal(t, []string{"scatter of what stays in the pipette as it delivers"}, worded(u.Notes).NotCounted)
		}
	}
}

// With its mean alone, what stays is anything from none to twice that.
func TestRetainedWithoutSpread(t *testing.T) {
	for _, test := range []struct {
		retained Retained
		want     uncertainty.Distribution
	}{
		{Retained{Mean: 0.1}, uncertainty.Rectangular{Low: 0, High: 0.2}},
		{Retained{Mean: 0.1, Spread: Stated{0.03, true}}, uncertainty.Gamma{Mu: 0.1, Sigma: 0.03}},
		{Retained{Mean: 0.1, Spread: Stated{0, true}}, uncertainty.Rectangular{Low: 0.1, High: 0.1}},
		{Retained{Mean: 0.1, Spread: Stated{1e-300, true}}, uncertainty.Rectangular{Low: 0.1, High: 0.1}},
	} {
		test.retained.Known = true
		k := tenCylinder()
		k.Retained = test.retained
		a := deliver(t, k, oneUse(), 10)
		assert.Equal(t, test.want, term(a, "retained in the cylinder").Distribution)
		near.Relative(t, "mean", 9.9, a.Value, 1e-12)
	}
	none := deliver(t, tenCylinder(), oneUse(), 10)
	assert.Equal(t, "", nameOf(term(none, "retained in the cylinder")))
	assert.Equal(t, 10.0, none.Value)
}

// The limit of ISO 4788 holds at any mark and for the difference of any two
// marks. With the same u at all marks, correlation 1/2 gives that difference
// the u of one mark.
func TestBiasAtTwoMarks(t *testing.T) {
	for r, ratio := range map[float64]float64{0: math.Sqrt2, 0.5: 1, 0.9: math.Sqrt(0.2), 1: 0} {
		k, u := tenCylinder(), oneUse()
		k.Bias.BetweenMarks, k.Reading, u.Marks = r, noReading, 2
		low, err := k.Contain(u.next("step 1"), 4)
		require.NoError(t, err)
		high, err := k.Contain(u.next("step 2"), 10)
		require.NoError(t, err)
		again, err := k.Contain(u.next("step 3"), 10)
		require.NoError(t, err)
		one := propagate(t, u, low).StandardUncertainty
		near.Relative(t, "at one mark", 0.2/math.Sqrt(6), one, 1e-12)
		difference := propagate(t, u, u.Model.Subtract(high, low))
		near.Absolute(t, "difference", ratio*one, difference.StandardUncertainty, 1e-12)
		near.Absolute(t, "correlation", r, correlation(t, u, low, high), 1e-12)
		near.Absolute(t, "the same mark", 1, correlation(t, u, high, again), 1e-12)
	}
}

// The number of marks that a route uses does not change what one of them is.
func TestBiasAtOneMark(t *testing.T) {
	for marks := range 4 {
		u := oneUse()
		u.Marks, u.StepReading = marks, noReading
		near.Relative(t, "u", 0.2/math.Sqrt(6), contain(t, tenCylinder(), u, 10).StandardUncertainty, 1e-12)
	}
}

func TestPiecesHaveTheirOwnBias(t *testing.T) {
	k, u := tenCylinder(), oneUse()
	k.Count, k.Reading = 2, noReading
	fill := func(step string, piece int) uncertainty.Node {
		v := u.next(step)
		v.Piece = piece
		node, err := k.Contain(v, 10)
		require.NoError(t, err)
		return node
	}
	first, again, second := fill("a", 0), fill("b", 1), fill("c", 2)
	near.Absolute(t, "the same piece", 1, correlation(t, u, first, again), 1e-12)
	near.Absolute(t, "another piece", 0, correlation(t, u, first, second), 1e-12)
	assert.Equal(t, uncertainty.Owner{Kind: uncertainty.Instrument, Name: "cylinder", Piece: 2}, propagate(t, u, second).Budget[0].Owner)
	assert.Equal(t, uncertainty.Owner{Kind: uncertainty.Instrument, Name: "cylinder", Piece: 1}, propagate(t, u, first).Budget[0].Owner)
}

func TestReads(t *testing.T) {
	for _, test := range []struct {
		k      *Measure
		volume float64
		want   string
	}{
		{tenCylinder(), 10, ""},
		{tenCylinder(), 0.2, ""},
		{tenCylinder(), 0.1 + 0.1, ""},
		{tenCylinder(), 3.05, ""}, // between two lines: a warning
		{tenCylinder(), 10.1, "10.1 mL is more than the cylinder holds: 10 mL"},
		{tenCylinder(), 0.1, "0.1 mL is less than one division of the cylinder: 0.2 mL"},
		{tenCylinder(), 0, "0 mL is less than one division of the cylinder: 0.2 mL"},
		{quamFlask(), 100, ""},
		{quamFlask(), 50, "the flask has one mark, at 100 mL, and cannot measure 50 mL"},
		{quamFlask(), 101, "101 mL is more than the flask holds: 100 mL"},
		{oneMarkPipette(), 1, "the pipette has one mark, at 10 mL, and cannot measure 1 mL"},
		{graduatedPipette(), 0.05, ""},
		{graduatedPipette(), 0.04, "0.04 mL is less than one division of the pipette: 0.05 mL"},
	} {
		err := test.k.Reads(test.volume)
		if test.want == "" {
			assert.Equal(t, nil, err)
			continue
		}
		impossible(t, test.want, err)
		_, err = test.k.Contain(oneUse(), test.volume)
		impossible(t, test.want, err)
		_, err = test.k.Deliver(oneUse(), test.volume)
		impossible(t, test.want, err)
	}
}

func TestNotesOfAMeasure(t *testing.T) {
	memory := func(k *Measure) {
		k.Class = &Class{Number: "ISO 4788", Standard: "ISO", Edition: "2005", Name: "B", Form: "tall", Tolerance: 0.2, Trust: "from memory"}
		k.Bias.ClassLimit = true
	}
	for what, test := range map[string]struct {
		mark   float64
		change func(*Measure)
		want   said
	}{
		"all known": {10, func(*Measure) {}, said{}},
		"class row from memory": {10, memory, said{FromMemory: []string{
			"the limit of the cylinder, ±0.2 mL (ISO 4788:2005 class B, tall form)"}}},
		"own limit instead of that of the class": {10, func(k *Measure) { memory(k); k.Bias.ClassLimit = false }, said{}},
		"class row that was seen":                {10, func(k *Measure) { memory(k); k.Class.Trust = "one source" }, said{}},
		"standard not stated": {10, func(k *Measure) { memory(k); k.Class.Trust = ""; k.StandardAssumed = true },
			said{Assumed: []string{"the cylinder has the limits of ISO 4788:2005 class B, tall form"}}},
		"shape not stated": {10, func(k *Measure) { k.Bias.ShapeAssumed = true },
			said{Assumed: []string{"errors of glass within their limits are triangular: most pieces are better than their limit"}}},
		"no limit to have a shape": {10, func(k *Measure) { k.Bias.ShapeAssumed = true; k.Bias.Limit = 0 }, said{}},
		"expansion not known": {10, func(k *Measure) { k.Expansion = Stated{} },
			said{NotCounted: []string{"thermal expansion of the cylinder"}}},
		"between two lines": {2.5, func(*Measure) {},
			said{Warnings: []string{"2.5 mL lies between two lines of the cylinder (division 0.2 mL)"}}},
		// Common practice: nothing under 2 mL in a 10 mL cylinder
		// (ijpc.com/abstracts/abstract.cfm?ABS=1484).
		"a fifth": {2, func(*Measure) {}, said{}},
		"under a fifth": {1.8, func(*Measure) {},
			said{Warnings: []string{"1.8 mL is less than a fifth of the cylinder; a smaller one reads better"}}},
	} {
		k := tenCylinder()
		test.change(k)
		u := on(oneUse(), 20, 2, 2.1e-4)
		contain(t, k, u, test.mark)
		contain(t, k, u, test.mark) // each note once
		assert.Equal(t, test.want, worded(u.Notes), what)
	}
}

func TestNotesWithoutADay(t *testing.T) {
	k, u := tenCylinder(), oneUse()
	k.Expansion = Stated{}
	contain(t, k, u, 10)
	assert.Equal(t, said{}, worded(u.Notes))
}

// A mark in a neck of unknown width cannot be weighed up; then nothing is said
// of how it is read either.
func TestBoreNotKnown(t *testing.T) {
	k, u := quamFlask(), alone()
	k.Bore = 0
	assert.Equal(t, set("bias of the flask at 100 mL"), names(contain(t, k, u, 100)))
	assert.Equal(t, said{NotCounted: []string{"reading of the flask (the bore at its mark is not known)"}}, worded(u.Notes))
	k.Reading = noReading
	u = alone()
	contain(t, k, u, 100)
	assert.Equal(t, said{}, worded(u.Notes))
}

func TestMergeNotes(t *testing.T) {
	of := func(codes ...string) (list []note.Note) {
		for _, code := range codes {
			list = append(list, note.Of(code, "x", ML(1)))
		}
		return list
	}
	a := Notes{Warnings: of("w"), Assumed: of("a"), FromMemory: of("m"), NotCounted: of("n")}
	b := Notes{Warnings: of("w", "v"), Assumed: of("b"), FromMemory: of("m"), NotCounted: of("o", "n")}
	a.Merge(b)
	assert.Equal(t, Notes{Warnings: of("w", "v"), Assumed: of("a", "b"), FromMemory: of("m"), NotCounted: of("n", "o")}, a)
	a.Warn("w", "x", ML(2)) // another argument, another note
	assert.Equal(t, append(of("w", "v"), note.Of("w", "x", ML(2))), a.Warnings)
}

func TestNumbers(t *testing.T) {
	for x, want := range map[float64]string{
		0: "0 mL", 10: "10 mL", 0.05: "0.05 mL", 0.1 + 0.2: "0.3 mL", 1e-6: "0.000001 mL", 2000: "2000 mL", 1.0 / 3: "0.3333333 mL", 50 * (1 + 1e-9): "50 mL",
	} {
		assert.Equal(t, want, quantity.Millilitres(x))
	}
}
