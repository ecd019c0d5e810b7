package equipment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty"
	"minim/uncertainty/near"
)

// An invented bench: a jar whose pen line stands where a cylinder's fills came to.
const cylinderForLine = `[[cylinder]]
name = "c"
capacity = "10 mL"
division = "0.2 mL"
tolerance = "0.2 mL"
clinging = "0 mL"
retained = { mean = "0.1 mL", spread = "0.05 mL" }
`

const oneJar = "[[jar]]\nname = \"j\"\nline = \"30 mL\"\nset-with = \"c\"\nclinging = \"0 mL\"\n"

// bareCylinder errs by its bias alone.
const bareCylinder = `[[cylinder]]
name = "c"
capacity = "10 mL"
division = "0.2 mL"
tolerance = "0.2 mL"
clinging = "0 mL"
retained = "0 mL"
count = 2
`

func jarAndCylinder(t testing.TB, text string) (jar, cylinder *Measure) {
	t.Helper()
	kit := parseKit(t, text)
	return kit.Measure("j"), kit.Measure("c")
}

// Three fills of 10 mL, by hand: the bias of the cylinder three times in full, the
// readings and what stays three times each on its own; what stays, 0.1 mL each,
// makes the line 0.3 mL too low. The line's own 0.5 mm (common practice, no
// source) and the reading of the jar, 0.25 mm, count by its bore.
func TestJarLineByFills(t *testing.T) {
	jar, _ := jarAndCylinder(t, cylinderForLine+oneJar+"bore = \"40 mm\"")
	assert.Equal(t, []any{3, 10.0}, []any{jar.Line.Fills, jar.Line.Each})
	u := alone()
	u.BenchReading = ordinary
	got := contained(t, jar, u, 30)
	near.Relative(t, "intended", 30, got.Intended, 1e-12)
	near.Relative(t, "expected", 29.7, got.Value, 1e-12)
	millimetre := math.Pi / 4 * 40 * 40 / 1000
	bias := term(got.Analytic, "bias of the c at 10 mL")
	near.Relative(t, "bias", 3*0.2/math.Sqrt(6), bias.Contribution, 1e-12)
	same(t, got.Analytic, "line of the j", 0.5*millimetre)
	same(t, got.Analytic, "reading of the j", 0.25*millimetre)
	fills := 0.0
	for _, c := range got.Budget {
		switch nameOf(c) {
		case "reading of the c", "retained in the c":
			fills += c.Contribution * c.Contribution
		}
	}
	near.Relative(t, "fills", 3*(0.5*0.2*0.5*0.2/6+0.05*0.05), fills, 1e-12)
	assert.Equal(t, 3+3+3, len(got.Budget))
	assert.Equal(t, []string{
		"errors of glass within their limits are triangular: most pieces are better than their limit",
		"the pen line of the j is right within 0.5 mm",
	}, worded(u.Notes).Assumed)
	assert.Equal(t, []string(nil), worded(u.Notes).NotCounted)
}

// The fewest equal fills: 25 mL with a 10 mL measure are three of 8.333 mL.
func TestJarFills(t *testing.T) {
	for line, want := range map[string]line{
		"10 mL": {Fills: 1, Each: 10}, "20 mL": {Fills: 2, Each: 10}, "20.1 mL": {Fills: 3, Each: 6.7}, "4 mL": {Fills: 1, Each: 4}, "0.02 L": {Fills: 2, Each: 10},
	} {
		jar, _ := jarAndCylinder(t, cylinderForLine+"[[jar]]\nname = \"j\"\nline = \""+line+"\"\nset-with = \"c\"\n")
		assert.Equal(t, want.Fills, jar.Line.Fills)
		near.Relative(t, line, want.Each, jar.Line.Each, 1e-12)
	}
}

// The line has the cylinder's own error: what was measured with the cylinder at
// the same mark fits the jar, and the bias leaves their ratio.
func TestJarSharesItsMeasure(t *testing.T) {
	jar, cylinder := jarAndCylinder(t, bareCylinder+oneJar)
	u := quiet()
	u.Marks, u.LineMarks = 1, 1
	volume, err := jar.Contain(u.next("a"), 30)
	require.NoError(t, err)
	part := node(t, cylinder, u, "b", 10)
	near.Relative(t, "correlation", 1, correlation(t, u, volume, part), 1e-9)
	ratio := propagate(t, u, u.Model.Divide(volume, part))
	near.Relative(t, "ratio", 3, ratio.Value, 1e-12)
	near.Absolute(t, "u of the ratio", 0, ratio.StandardUncertainty, 1e-12)
	assert.Equal(t, []string{"thickness of the line on the j (bore not stated)"}, worded(u.Notes).NotCounted[:1])
}

// At another mark of the same cylinder the correlation is that between marks, 1/2;
// at the same one it is 1, whatever other marks the route uses.
func TestJarAtAnotherMark(t *testing.T) {
	jar, cylinder := jarAndCylinder(t, bareCylinder+oneJar)
	u := quiet()
	u.LineMarks = 2
	volume, err := jar.Contain(u.next("a"), 30)
	require.NoError(t, err)
	near.Relative(t, "u", 3*0.2/math.Sqrt(6), propagate(t, u, volume).StandardUncertainty, 1e-12)
	u.Marks = 2
	near.Relative(t, "other mark", 0.5, correlation(t, u, volume, node(t, cylinder, u, "b", 4)), 1e-9)
	near.Relative(t, "same mark", 1, correlation(t, u, volume, node(t, cylinder, u, "c", 10)), 1e-9)
}

// Two jars alike have each their own line, but both were set with the first piece
// of the measure.
func TestPiecesOfAJar(t *testing.T) {
	jar, cylinder := jarAndCylinder(t, bareCylinder+oneJar+"count = 2\nbore = \"40 mm\"")
	u := quiet()
	volume := func(step string, piece int) uncertainty.Node {
		v := u.next(step)
		v.Piece = piece
		n, err := jar.Contain(v, 30)
		require.NoError(t, err)
		return n
	}
	first, again, second := volume("a", 1), volume("b", 1), volume("c", 2)
	near.Relative(t, "one jar", 1, correlation(t, u, first, again), 1e-9)
	bias, line := 0.6/math.Sqrt(6), 0.5*math.Pi/4*1.6
	near.Relative(t, "two jars", bias*bias/(bias*bias+line*line), correlation(t, u, first, second), 1e-9)
	u.Piece = 2
	near.Absolute(t, "second cylinder", 0, correlation(t, u, second, node(t, cylinder, u, "d", 10)), 1e-12)
}

// What was wrong when the line was set stays wrong: the readings of the fills are
// the jar's, and a second batch has the same.
func TestJarKeepsItsLine(t *testing.T) {
	jar, _ := jarAndCylinder(t, cylinderForLine+oneJar)
	u := alone()
	u.BenchReading = Careful
	a, err := jar.Contain(u.next("a"), 30)
	require.NoError(t, err)
	b, err := jar.Contain(u.next("b"), 30)
	require.NoError(t, err)
	near.Relative(t, "correlation", 1, correlation(t, u, a, b), 1e-9)
	near.Relative(t, "poured", 1, correlation(t, u, a, node(t, jar, u, "c", 30)), 1e-9)
	u.StepReading = firstTime // how the jar is read today, not how its line was set
	near.Relative(t, "read badly", 1, correlation(t, u, a, node(t, jar, u, "d", 30)), 1e-9)
	// Another jar alike was filled on its own: only the bias of the cylinder is common.
	jar.Count, u.StepReading = 2, ""
	second := u.next("f")
	second.Piece = 2
	c, err := jar.Contain(u.next("e"), 30)
	require.NoError(t, err)
	d, err := jar.Contain(second, 30)
	require.NoError(t, err)
	bias, fills := 9*0.2*0.2/6, 3*(0.04*0.04/6+0.05*0.05)
	near.Relative(t, "two jars", bias/(bias+fills), correlation(t, u, c, d), 1e-9)
}

// A jar whose line was set some other way has a limit of its own, rectangular. It
// has the one line.
func TestJarWithItsOwnTolerance(t *testing.T) {
	jar := one(t, "[[jar]]\nname = \"j\"\nline = \"250 mL\"\ntolerance = \"5 mL\"\nbore = \"65 mm\"\nclinging = \"0 mL\"\n")
	u := alone()
	u.BenchReading = ordinary
	got := contained(t, jar, u, 250)
	assert.Equal(t, set("bias of the j at 250 mL", "reading of the j"), names(got.Analytic))
	assert.Equal(t, uncertainty.Rectangular{Low: -5, High: 5}, term(got.Analytic, "bias of the j at 250 mL").Distribution)
	assert.Equal(t, said{}, worded(u.Notes))
	_, err := jar.Contain(u, 100)
	impossible(t, "the j has one mark, at 250 mL, and cannot measure 100 mL", err)
}

// The water that set the line had the temperature of some other day.
func TestJarLineHasItsOwnDay(t *testing.T) {
	jar, _ := jarAndCylinder(t, bareCylinder+oneJar)
	u := on(quiet(), 25, 0, 2.1e-4)
	got := contained(t, jar, u, 30)
	near.Relative(t, "only the filling", 30*(1-5*2.1e-4), got.Value, 1e-12)
	assert.Equal(t, "temperature of the water with which the line of the j was set", worded(u.Notes).NotCounted[1])
}
