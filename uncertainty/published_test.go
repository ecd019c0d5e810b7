package uncertainty

import (
	"math"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/near"
	"minim/uncertainty/portable"
)

// The figures of published worked examples stand in testdata/published, one a
// row, each with its source:
//
//	example, quantity  which figure it is
//	recomputed         its value at full precision, worked out outside the project
//	error              the standard error of that value, where it was simulated
//	published          the figure as printed; empty where none is
//	published error    the standard error of that, where it was simulated
//	status             MISMATCH where the printed figure is not the rounded value
//	note               the reason, or where the recomputed value comes from
//	source             where it is published, or "constructed"
//
// What the engine finds must lie within half a unit of the last digit of both
// figures, and where something was simulated within five standard errors of the
// difference besides. It must not agree with a printed figure that is a MISMATCH,
// so that no note outlives its reason.
const publishedFolder = "../testdata/published/"

const publishedHeader = "example,quantity,recomputed,error,published,published error,status,note,source"

// published holds for each file what works out its examples.
var published = map[string]map[string]example{
	"quam.csv":          quamExamples,
	"gum.csv":           gumExamples,
	"gum-table-g2.csv":  {"Table G.2": tableG2},
	"jcgm101.csv":       jcgm101Examples,
	"dilution.csv":      dilutionExamples,
	"distributions.csv": distributionExamples,
	"nist.csv":          nistExamples,
}

// elsewhere are the files of another form, each read by a test of its own.
var elsewhere = map[string]bool{"adaptive.csv": true, "conformance.csv": true, "nist-data.csv": true}

// example works out all figures of a worked example, by the name of the quantity.
type example func(t testing.TB) quantities

type quantities map[string]figure

// figure is a result of the engine, with its standard error where it was
// simulated.
type figure struct{ value, err float64 }

func TestPublished(t *testing.T) {
	for file, examples := range published {
		t.Run(file, func(t *testing.T) { checkFile(t, file, examples) })
	}
	files, err := filepath.Glob(publishedFolder + "*.csv")
	require.NoError(t, err)
	for _, file := range files {
		name := filepath.Base(file)
		assert.Equal(t, true, published[name] != nil || elsewhere[name], "%s is read by a test", name)
	}
}

// checkFile holds every row of a file against its example: no row and no figure
// may be left over.
func checkFile(t *testing.T, file string, examples map[string]example) {
	rows := readRows(t, file)
	for name, figuresOf := range examples {
		t.Run(name, func(t *testing.T) {
			found := figuresOf(t)
			for _, r := range rows[name] {
				f, ok := found[r.quantity]
				assert.Equal(t, true, ok, "the example gives %q, and only one row does", r.quantity)
				r.check(t, f)
				delete(found, r.quantity)
			}
			assert.Equal(t, quantities{}, found, "figures without a row")
		})
		delete(rows, name)
	}
	assert.Equal(t, map[string][]row{}, rows, "rows without an example")
}

// row is one figure of a published example.
type row struct {
	quantity              string
	recomputed, published written
	mismatch              bool
}

func (r *row) check(t testing.TB, f figure) {
	t.Helper()
	assert.Equal(t, true, portable.IsFinite(f.err), "%s: standard error", r.quantity)
	near.Absolute(t, r.quantity+", recomputed", r.recomputed.value, f.value, r.recomputed.within(f))
	if r.published.text == "" {
		return
	}
	agrees := math.Abs(f.value-r.published.value) <= r.published.within(f)
	assert.Equal(t, !r.mismatch, agrees, "%s: %.10g agrees with the printed %s", r.quantity, f.value, r.published.text)
}

// written is a number as written, half a unit of its last digit, and its
// standard error.
type written struct {
	text             string
	value, half, err float64
}

// within is how far a figure may be away. A half that was rounded to even, such
// as 100.145 to 100.14, is not to fail by the last bit.
func (r *written) within(f figure) float64 {
	return r.half*(1+1e-6) + 5*math.Hypot(r.err, f.err)
}
