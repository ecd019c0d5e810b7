package equipment

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	words "minim/report/words/influence"
	"minim/report/words/note"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

// nine readings (invented) in units of the mark: mean 1.01, s 0.01.
const nine = `"1.01 mL", "1.00 mL", "1.02 mL", "1.01 mL", "1.02 mL", "1.00 mL", "1.01 mL", "1.025 mL", "0.995 mL"`

// ofNine is the mean, s, and the standard deviation of the t-distribution of the mean.
var ofNine = struct{ mean, s, ofMean float64 }{1.01, 0.01, 0.01 / 3 * math.Sqrt(8.0/6)}

// ownKind is an instrument of 1 mL that says hardly anything of its error, and all that else stays,
// clings or is read, with what it is used for.
type ownKind struct {
	text string
	of   Held
}

const wide = "tolerance = \"0.6 mL\"\nshape = \"rectangular\"\n"

// owns by kind: what of the model would count a second time is stated in each.
var owns = map[string]ownKind{
	"cylinder poured":        {"[[cylinder]]\nname = \"x\"\ncapacity = \"1 mL\"\ndivision = \"0.1 mL\"\nclinging = \"0.1 mL\"\nretained = { mean = \"0.2 mL\", spread = \"0.1 mL\" }\n" + wide, Delivered},
	"cylinder made up in":    {"[[cylinder]]\nname = \"x\"\ncapacity = \"1 mL\"\ndivision = \"0.1 mL\"\nclinging = \"0.1 mL\"\nretained = \"0.2 mL\"\n" + wide, Contained},
	"cylinder that delivers": {"[[cylinder]]\nname = \"x\"\ncapacity = \"1 mL\"\ndivision = \"0.1 mL\"\nclinging = \"0.1 mL\"\nmarked = \"Ex\"\nretained = { mean = \"0.2 mL\", spread = \"0.1 mL\" }\n" + wide, Delivered},
	"Ex cylinder made up in": {"[[cylinder]]\nname = \"x\"\ncapacity = \"1 mL\"\ndivision = \"0.1 mL\"\nclinging = \"0.1 mL\"\nmarked = \"Ex\"\nretained = { mean = \"0.2 mL\", spread = \"0.1 mL\" }\n" + wide, Contained},
	"flask":                  {"[[flask]]\nname = \"x\"\ncapacity = \"1 mL\"\nbore = \"7 mm\"\nclinging = \"0.1 mL\"\n" + wide, Contained},
	"one-mark":               {"[[pipette]]\nname = \"x\"\nkind = \"one-mark\"\ncapacity = \"1 mL\"\nbore = \"3 mm\"\nretained = { mean = \"0.2 mL\", spread = \"0.1 mL\" }\n" + wide, Delivered},
	"graduated":              {"[[pipette]]\nname = \"x\"\nkind = \"graduated\"\ncapacity = \"1 mL\"\ndivision = \"0.1 mL\"\nretained = { mean = \"0.2 mL\", spread = \"0.1 mL\" }\n" + wide, Delivered},
	"piston":                 {"[[pipette]]\nname = \"x\"\nkind = \"piston\"\ncapacity = \"1 mL\"\n" + wide, Delivered},
	"transfer":               {"[[pipette]]\nname = \"x\"\nkind = \"transfer\"\ncapacity = \"1 mL\"\n" + wide, Delivered},
	"burette":                {"[[burette]]\nname = \"x\"\ncapacity = \"1 mL\"\ndivision = \"0.1 mL\"\nretained = { mean = \"0.2 mL\", spread = \"0.1 mL\" }\n" + wide, Delivered},
	"syringe":                {"[[syringe]]\nname = \"x\"\ncapacity = \"1 mL\"\nretained = \"0.1 mL\"\n" + wide, Delivered},
	"beaker made up in":      {"[[beaker]]\nname = \"x\"\ncapacity = \"1 mL\"\ndivision = \"0.5 mL\"\nclinging = \"0.1 mL\"\n" + wide, Contained},
	"beaker poured":          {"[[beaker]]\nname = \"x\"\ncapacity = \"1 mL\"\ndivision = \"0.5 mL\"\nclinging = \"0.1 mL\"\n" + wide, Delivered},
	"conical flask":          {"[[conical-flask]]\nname = \"x\"\ncapacity = \"1 mL\"\ndivision = \"0.5 mL\"\nclinging = \"0.1 mL\"\n" + wide, Contained},
	"conical measure":        {"[[conical-measure]]\nname = \"x\"\ncapacity = \"1 mL\"\ndivision = \"0.5 mL\"\nclinging = \"0.1 mL\"\nretained = { mean = \"0.2 mL\", spread = \"0.1 mL\" }\n" + wide, Delivered},
	"jar":                    {"[[jar]]\nname = \"x\"\nline = \"1 mL\"\nbore = \"20 mm\"\nclinging = \"0.1 mL\"\n" + wide, Contained},
}

// readAt are readings of one's own as a kit states them.
func readAt(of Held, mark string) string {
	return "readings = { of = \"" + string(of) + "\", at = \"" + mark + "\", values = [" + nine + "] }\n"
}

// used is what the instrument delivers, or holds, at its mark.
func used(t *testing.T, k *Measure, u Use, of Held) outcome {
	t.Helper()
	u.BenchReading = ordinary
	if of == Contained {
		return contained(t, k, u, k.Capacity)
	}
	return delivered(t, k, u, k.Capacity)
}

// Nothing is counted twice: by every kind a use has the mean of its own readings, the uncertainty
// of that mean and the scatter of one reading, and nothing else, however much clings, stays or is
// read with an error; each of these would be ten times as much. The limit is so wide that it says
// nothing (constructed).
func TestOwnMeanIsCountedOnce(t *testing.T) {
	for what, c := range owns {
		k := one(t, c.text+readAt(c.of, "1 mL"))
		got := used(t, k, alone(), c.of)
		near.Relative(t, what, ofNine.mean, got.Value, 2e-4)
		near.Relative(t, what, 1, got.Intended, 1e-12)
		near.Relative(t, "u of the "+what, math.Hypot(ofNine.s, ofNine.ofMean), got.StandardUncertainty, 0.1)
		counted := 0
		for _, line := range got.Budget {
			if line.StandardUncertainty > 0 {
				counted++
			}
		}
		assert.Equal(t, 2, counted, what)
		without := used(t, one(t, c.text), alone(), c.of)
		assert.Greater(t, without.StandardUncertainty, 10*got.StandardUncertainty, "%s without readings", what)
	}
}

// A dropper: a drop is what was read (constructed).
func TestOwnMeanOfDrops(t *testing.T) {
	k := one(t, oneDropper+"tolerance = \"0.02 mL\"\nreadings = [\"0.052 mL\", \"0.051 mL\", \"0.053 mL\", \"0.052 mL\", \"0.052 mL\"]")
	got := drops(t, k, alone(), 10)
	near.Relative(t, "ten drops", 0.52, got.Value, 1e-3)
	require.Len(t, k.Judged, 1)
	assert.Equal(t, Combined, k.Judged[0].Standing)
	near.Relative(t, "the mark", 0.05, k.Judged[0].Mark, 1e-12)
}

// A jar whose line was set with a measure: the fills by weighing stand beside that (constructed).
func TestOwnMeanOfALine(t *testing.T) {
	kit, err := ParseKit("k", []byte("[[cylinder]]\nname = \"c\"\ncapacity = \"10 mL\"\ndivision = \"0.2 mL\"\ntolerance = \"1 mL\"\nretained = \"0 mL\"\n"+
		"[[jar]]\nname = \"x\"\nline = \"10 mL\"\nset-with = \"c\"\nclinging = \"0.2 mL\"\n"+
		"readings = [\"10.41 mL\", \"10.40 mL\", \"10.42 mL\", \"10.39 mL\", \"10.38 mL\"]\n"))
	require.NoError(t, err)
	k := kit.Measure("x")
	got := contained(t, k, alone(), 10)
	near.Relative(t, "mean", 10.40, got.Value, 1e-3)
	assert.Less(t, got.StandardUncertainty, 0.03)
	assert.Equal(t, set("bias of the x at 10 mL, by its readings", "repeatability of the x", "drops clinging in the x"), names(got.Analytic))
}

// Published weighings of a 10 mL pipette with two marks at 23 °C: Z 1.003510, volume 9.99767 mL, s
// 0.02170, u 0.00686; with the limit of class B, 0.04 mL, by the normal formulas of JCGM 106 with the
// standard deviation of t: -0.0021, standard deviation 0.0074 (all recomputed elsewhere). The rectangle itself
// gives much the same.
//
// The u of the budget is not that standard deviation, since t is counted as everywhere: as s/√n = 0.00686,
// with 9 degrees of freedom, of which the rectangle, 5 times as wide, leaves 0.00686. With k = 2.26 its
// interval is ±0.0155, as that of the readings by themselves; 0.0074 with k = 1.96 gave ±0.0145.
func TestOwnMeanOfAPublishedPipette(t *testing.T) {
	k := one(t, "[[pipette]]\nname = \"x\"\nkind = \"one-mark\"\ncapacity = \"10 mL\"\nclass = \"B\"\nstandard = \"ISO\"\nshape = \"rectangular\"\nmaterial = \"borosilicate\"\n"+
		"readings = { weighed = [\"9.98 g\", \"9.95 g\", \"9.95 g\", \"9.99 g\", \"9.97 g\", \"9.99 g\", \"9.93 g\", \"9.95 g\", \"9.98 g\", \"9.94 g\"], temperature = \"23 °C\", within = \"0 °C\" }\n")
	require.Len(t, k.Judged, 1)
	j := &k.Judged[0]
	near.Absolute(t, "volume", 9.99767, j.Mean, 1e-5)
	near.Absolute(t, "s", 0.02170, j.S, 1e-5)
	near.Absolute(t, "limit", 0.04, k.Limit(10), 1e-12)
	e := uncertainty.SummaryOf(j.error)
	near.Absolute(t, "error", -0.0021, e.Mean, 3e-4)
	near.Absolute(t, "u", 0.00686, e.StandardUncertainty, 5e-5)
	assert.Equal(t, 9.0, j.degreesOfFreedom)
	m := new(uncertainty.Model)
	drawn, err := m.Simulate(t.Context(), m.Influence(uncertainty.Influence{Code: "error", Distribution: j.error}), uncertainty.Settings{Trials: 100_000, Seed: 1, Coverage: 0.95})
	require.NoError(t, err)
	near.Absolute(t, "standard deviation", 0.0074, drawn.StandardDeviation, 5e-4)
	near.Absolute(t, "lower", -0.0023-0.0155, drawn.Lower, 5e-4)
	near.Absolute(t, "upper", -0.0023+0.0155, drawn.Upper, 5e-4)
	assert.Equal(t, Combined, j.Standing)
	assert.Equal(t, Delivered, j.Of)
	u := alone()
	got := delivered(t, k, u, 10)
	near.Relative(t, "u of a use", math.Hypot(j.S, e.StandardUncertainty), got.StandardUncertainty, 1e-6)
	assert.Contains(t, strings.Join(worded(u.Notes).Assumed, "\n"), "the water weighed for the x had 23 °C within 0 °C, and the air about 1013 hPa")
}

// Student weighings, recomputed elsewhere: three of a 10 mL pipette, 0.071 mL low, z 3.0 beside the
// limit of class B: with two degrees of freedom they are compared, and the limit stands.
func TestOwnMeanOfFew(t *testing.T) {
	const pipette = "[[pipette]]\nname = \"x\"\nkind = \"one-mark\"\ncapacity = \"10 mL\"\nclass = \"B\"\nstandard = \"ISO\"\nmaterial = \"borosilicate\"\n"
	k := one(t, pipette+"readings = { weighed = [\"9.8955 g\", \"9.8809 g\", \"9.8939 g\"], temperature = \"25 °C\" }\n")
	j := &k.Judged[0]
	near.Absolute(t, "volume", 9.92917, j.Mean, 1e-5)
	near.Absolute(t, "s", 0.00804, j.S, 1e-5)
	assert.Equal(t, Few, j.Standing)
	u := alone()
	got := delivered(t, k, u, 10)
	near.Relative(t, "the limit stands", 10, got.Value, 1e-12)
	near.Relative(t, "bias", 0.04/math.Sqrt(6), term(got.Analytic, "bias of the x at 10 mL").StandardUncertainty, 1e-9)
	assert.Contains(t, strings.Join(worded(u.Notes).NotCounted, "\n"), "the mean 9.9292 mL of the 3 readings of the x at 10 mL, 0.71 % low: it counts from four readings on, and the limit stands")
	require.Len(t, note.Doubts(u.Notes.Warnings), 1, "fewer than 1 in 100 pieces would lie so far off")
	assert.Contains(t, note.Doubts(u.Notes.Warnings)[0].String(), "0.71 % low, 1.8 times its limit: of those as good as its limit says fewer than 1 in 100 would lie so far off")
}

// The case of a pipette of 1 mL that delivers 0.950 mL: 5 % low, six times its limit (0.008 mL).
// The limit is dropped, and the t interval stands.
func TestOwnMeanTooFarOff(t *testing.T) {
	k := one(t, "[[pipette]]\nname = \"p1\"\nkind = \"one-mark\"\ncapacity = \"1 mL\"\nclass = \"A\"\nstandard = \"ISO\"\nreadings = [\"0.950 mL\", \"0.951 mL\", \"0.949 mL\", \"0.950 mL\", \"0.951 mL\"]\n")
	j := &k.Judged[0]
	assert.Equal(t, Alone, j.Standing)
	assert.Less(t, j.Chance, 1e-3)
	s := math.Sqrt(0.7e-6) // of 0, 1, -1, 0, 1 µL about 0.2
	near.Relative(t, "s", s, j.S, 1e-9)
	u := alone()
	got := delivered(t, k, u, 1)
	near.Relative(t, "mean", 0.9502, got.Value, 1e-12)
	line := term(got.Analytic, "bias of the p1 at 1 mL, by its readings")
	near.Relative(t, "s/√n", s/math.Sqrt(5), line.StandardUncertainty, 1e-9)
	assert.Equal(t, 4.0, line.DegreesOfFreedom)
	assert.Contains(t, strings.Join(worded(u.Notes).Warnings, "\n"), "the 5 readings of the p1 at 1 mL have the mean 0.9502 mL, 5 % low, 6.2 times its limit: it is not of ISO 648")
	assert.NotContains(t, strings.Join(worded(u.Notes).Assumed, "\n"), "triangular")
}

// Of a piece whose readings lie within its limit it is not said that it is not of its class: 0.9925 mL
// is 0.0075 mL off, of 0.008 mL, which a triangle has of 0.4 in 100.
func TestOwnMeanAtTheEdge(t *testing.T) {
	k := one(t, "[[pipette]]\nname = \"p1\"\nkind = \"one-mark\"\ncapacity = \"1 mL\"\nclass = \"A\"\nstandard = \"ISO\"\nreadings = [\"0.9926 mL\", \"0.9924 mL\", \"0.9922 mL\", \"0.9928 mL\"]\n")
	assert.Equal(t, Alone, k.Judged[0].Standing)
	u := alone()
	delivered(t, k, u, 1)
	warnings := strings.Join(worded(u.Notes).Warnings, "\n")
	assert.Contains(t, warnings, "0.94 times its limit: it is nearer to its limit than 99 in 100 pieces are")
	assert.NotContains(t, warnings, "it is not of")
}

// Between 1 and 5 in 100 it is a hint, and nothing changes: ±0.1 rectangular, readings next to
// exact; 0.097 off is 3 in 100 (constructed). At 0.0995, 0.5 in 100, it is a finding.
func TestOwnMeanOddlyFar(t *testing.T) {
	text := func(mean string) string {
		return "[[flask]]\nname = \"x\"\ncapacity = \"10 mL\"\ntolerance = \"0.1 mL\"\nshape = \"rectangular\"\nclinging = \"0 mL\"\nreadings = [\"" +
			mean + "1 mL\", \"" + mean + "2 mL\", \"" + mean + "3 mL\", \"" + mean + "2 mL\", \"" + mean + "2 mL\"]\n"
	}
	odd, far, usual := one(t, text("10.0970")), one(t, text("10.0995")), one(t, text("10.0900"))
	for _, c := range []struct {
		k        *Measure
		standing Standing
		chance   float64
		warns    bool
	}{{odd, Combined, 0.03, true}, {far, Alone, 0.005, true}, {usual, Combined, 0.10, false}} {
		j := &c.k.Judged[0]
		assert.Equal(t, c.standing, j.Standing)
		near.Absolute(t, "chance", c.chance, j.Chance, 0.003)
		u := alone()
		got := contained(t, c.k, u, 10)
		near.Relative(t, "mean", j.Mean, got.Value, 1e-5)
		assert.Equal(t, c.warns, len(u.Notes.Warnings) == 1, "%v", worded(u.Notes))
	}
}

// At another mark the correlation carries half of what was found over: e' = r e + rest, with the
// variance of the limit where nothing is known of e (constructed).
func TestOwnMeanAtOtherMarks(t *testing.T) {
	const cylinder = "[[cylinder]]\nname = \"x\"\ncapacity = \"10 mL\"\ndivision = \"0.1 mL\"\ntolerance = \"0.2 mL\"\nclinging = \"0 mL\"\nretained = \"0 mL\"\n"
	text := cylinder + "readings = { of = \"contained\", at = \"10 mL\", values = [\"10.11 mL\", \"10.10 mL\", \"10.12 mL\", \"10.10 mL\", \"10.11 mL\"] }\n"
	k, u := one(t, text), quiet()
	u.Marks = 2
	e := uncertainty.SummaryOf(k.Judged[0].error)
	at10, at5 := contained(t, k, u.next("a"), 10), contained(t, k, u.next("b"), 5)
	near.Relative(t, "at 10 mL", 10+e.Mean, at10.Value, 1e-9)
	near.Relative(t, "half of it at 5 mL", 5+e.Mean/2, at5.Value, 1e-9)
	l2 := 0.2 * 0.2 / 6
	rest := at5.StandardUncertainty*at5.StandardUncertainty - k.Judged[0].S*k.Judged[0].S
	near.Relative(t, "variance", e.StandardUncertainty*e.StandardUncertainty/4+l2*(0.25+0.5), rest, 1e-9)
	// Where the limit grows with the volume, so does the error.
	share := one(t, "[[syringe]]\nname = \"x\"\ncapacity = \"10 mL\"\ntolerance = \"4 % of reading\"\nreadings = [\"10.21 mL\", \"10.20 mL\", \"10.20 mL\", \"10.19 mL\"]\n")
	near.Relative(t, "half the volume, half the error", 5+(delivered(t, share, alone(), 10).Value-10)/2, delivered(t, share, alone(), 5).Value, 1e-9)
}

// What cannot be taken for the error of the piece is said and not counted.
func TestOwnMeanThatDoesNotCount(t *testing.T) {
	const four = "readings = [\"10.1 mL\", \"10.0 mL\", \"10.1 mL\", \"10.2 mL\"]\n"
	const half = "readings = [\"5.1 mL\", \"5.0 mL\", \"5.1 mL\", \"5.2 mL\"]\n"
	for text, want := range map[string]Standing{
		oneCylinder + "division = \"0.2 mL\"\ntolerance = \"0.5 mL\"\n" + four:                                                        NotTold, // poured or made up to
		"[[flask]]\nname = \"x\"\ncapacity = \"10 mL\"\ntolerance = \"0.5 mL\"\ncount = 2\n" + four:                                   OfOthers,
		"[[syringe]]\nname = \"x\"\ncapacity = \"10 mL\"\nsingle-use = true\n" + four:                                                 OfOthers,
		"[[syringe]]\nname = \"x\"\ncapacity = \"10 mL\"\n" + half:                                                                    NotTold, // at which mark?
		"[[syringe]]\nname = \"x\"\ncapacity = \"10 mL\"\n" + four:                                                                    Combined,
		"[[flask]]\nname = \"x\"\ncapacity = \"10 mL\"\ntolerance = \"0.5 mL\"\n" + four:                                              Combined,
		"[[flask]]\nname = \"x\"\ncapacity = \"10 mL\"\ntolerance = \"0.5 mL\"\nreadings = [\"10.1 mL\", \"10.0 mL\", \"10.1 mL\"]\n": Few,
	} {
		k := one(t, text)
		require.Len(t, k.Judged, 1, text)
		assert.Equal(t, want, k.Judged[0].Standing, text)
		u := alone()
		k.tellOwn(u)
		assert.Equal(t, want == Combined, len(u.Notes.NotCounted) == 0, text)
	}
}

// What limit and readings say together belongs to the set of the readings, as the scatter of a use does, with
// their degrees of freedom: not where the scatter is that of other marks as well, or where most of what is unknown of the mean is
// something else.
func TestOwnMeanIsOfItsSet(t *testing.T) {
	const flask = "[[flask]]\nname = \"x\"\ncapacity = \"10 mL\"\ntolerance = \"0.2 mL\"\nclinging = \"0 mL\"\nreadings = "
	for readings, of := range map[string]bool{
		`["10.01 mL", "9.99 mL", "10.00 mL", "9.97 mL"]`:                                       true,
		`{ values = ["10.01 mL", "9.99 mL", "10.00 mL", "9.97 mL"], span = "1 % of reading" }`: false,
		`["10.01 mL", "10.01 mL", "10.01 mL", "10.01 mL"]`:                                     false, // by the digit
	} {
		k := one(t, flask+readings+"\n")
		require.Equal(t, Combined, k.Judged[0].Standing)
		got := contained(t, k, alone(), 10)
		bias, use := term(got.Analytic, "bias of the x at 10 mL, by its readings"), term(got.Analytic, "repeatability of the x")
		assert.Equal(t, 3.0, use.DegreesOfFreedom)
		if !of {
			assert.Zero(t, bias.Set, readings)
			assert.Zero(t, bias.DegreesOfFreedom, readings)
			continue
		}
		assert.Equal(t, use.Set, bias.Set)
		assert.Equal(t, 3.0, bias.DegreesOfFreedom)
		near.Relative(t, "u", k.Judged[0].S/2, bias.StandardUncertainty, 0.02) // of which the limit, ten times as wide, leaves nearly all
		near.Relative(t, "ν", 3, got.DegreesOfFreedom, 0.01)
	}
}

// Two readings at each of three marks have three degrees of freedom together.
func TestOwnMeanWithPooledScatter(t *testing.T) {
	k := one(t, "[[burette]]\nname = \"x\"\ncapacity = \"10 mL\"\nclass = \"B\"\ndivision = \"0.05 mL\"\ntolerance = \"0.5 mL\"\nreadings = [ { at = \"2 mL\", values = [\"2.01 mL\", \"2.03 mL\"] }, "+
		"{ at = \"5 mL\", values = [\"5.02 mL\", \"5.04 mL\"] }, { at = \"10 mL\", values = [\"10.02 mL\", \"10.04 mL\"] } ]\n")
	require.Len(t, k.Judged, 3)
	for i := range k.Judged {
		assert.Equal(t, Combined, k.Judged[i].Standing)
		near.Relative(t, "s", math.Sqrt(0.0002), k.Judged[i].scatter.S, 1e-9)
		assert.Equal(t, 3.0, k.Judged[i].scatter.DegreesOfFreedom)
	}
	u := alone()
	near.Relative(t, "at 5 mL", 5.03, delivered(t, k, u, 5).Value, 1e-3)
	assert.Contains(t, strings.Join(worded(u.Notes).Assumed, "\n"), "scatter alike")
}

// What is wrong with all readings alike is not divided by √n: a span of 0.3 % of a mean of 10 mL, and
// the rounding where they scatter by less than half a digit. Then the degrees of freedom are more.
func TestOwnMeanHasACommonError(t *testing.T) {
	own := Own{Spread: FromReadings([]float64{10, 10, 10, 10}, 0.01)}
	j := Judged{Own: own, scatter: own.Spread}
	near.Relative(t, "0.41 of a digit, and the rounding", 0.01*math.Hypot(1/math.Sqrt(24), 1/math.Sqrt(12)), j.measured(j.scatter, j.Common).Scale, 1e-12)
	near.Relative(t, "degrees of freedom", 3*9, j.measured(j.scatter, j.Common).Nu, 1e-9)
	own = Own{Spread: FromReadings([]float64{9.98, 10.02, 10.00, 10.00}, 0)}
	own.SetCommon(0.0004, 0.003)
	j = Judged{Own: own, scatter: own.Spread}
	m := j.measured(j.scatter, j.Common)
	a, b := own.S/2, 10*math.Hypot(0.0004, 0.003/math.Sqrt(3))
	near.Relative(t, "scale", math.Hypot(a, b), m.Scale, 1e-12)
	near.Relative(t, "Welch and Satterthwaite", math.Pow(math.Hypot(a, b), 4)/(math.Pow(a, 4)/3), m.Nu, 1e-9)
}

// The influences of readings have their names, and no figure is one of the limit any more.
func TestOwnMeanIsCalled(t *testing.T) {
	c := owns["cylinder poured"]
	got := used(t, one(t, c.text+readAt(c.of, "1 mL")), alone(), c.of)
	assert.Equal(t, set("what the x delivers at 1 mL, by its readings", "repeatability of the x"), names(got.Analytic))
	assert.Equal(t, "x", words.Group(got.Budget[0].Group))
}

// What readings and an assumed triangle say together rests on the assumption in part, by the
// information that the limit brings, and a rectangle in its place would make of the whole what it
// does where the kit states it.
func TestOwnMeanRestsOnAnAssumedShape(t *testing.T) {
	const flask = "[[flask]]\nname = \"x\"\ncapacity = \"10 mL\"\ntolerance = \"0.02 mL\"\nclinging = \"0 mL\"\nreadings = [\"10.010 mL\", \"9.990 mL\", \"10.005 mL\", \"9.980 mL\"]\n"
	triangular := contained(t, one(t, flask), alone(), 10)
	flat := contained(t, one(t, flask+"shape = \"rectangular\"\n"), alone(), 10)
	stated := contained(t, one(t, flask+"shape = \"triangular\"\n"), alone(), 10)
	line := term(triangular.Analytic, "bias of the x at 10 mL, by its readings")
	assert.True(t, line.Assumed && line.AssumedShape)
	before := 0.02 / math.Sqrt(6)
	part := line.StandardUncertainty * line.StandardUncertainty / (before * before)
	near.Relative(t, "part", part, line.AssumedPart, 1e-9)
	assert.True(t, part > 0.3 && part < 0.9, "%v", part)
	near.Relative(t, "share", line.Share*part, triangular.AssumedShare(), 1e-9)
	near.Relative(t, "rectangular", flat.ExpandedUncertainty, triangular.IfRectangular(), 1e-9)
	near.Absolute(t, "nothing is assumed", 0, stated.AssumedShare()+flat.AssumedShare(), 0)
	near.Relative(t, "as stated", stated.ExpandedUncertainty, stated.IfRectangular(), 1e-15)
	// Readings that say much more than the limit rest on themselves; alone they rest on nothing assumed.
	sharp := contained(t, one(t, strings.NewReplacer("0.02", "0.2", "9.980", "9.995").Replace(flask)), alone(), 10)
	assert.Less(t, term(sharp.Analytic, "bias of the x at 10 mL, by its readings").AssumedPart, 0.02)
	alone := contained(t, one(t, strings.NewReplacer("\"0.02 mL", "\"0.0002 mL", "10.010", "10.017", "9.990", "10.017", "10.005", "10.018", "9.980", "10.018").Replace(flask)), alone(), 10)
	near.Absolute(t, "alone", 0, alone.AssumedShare(), 0)
}
