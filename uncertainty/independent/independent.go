// Package independent reads the figures of the scripts in testdata/independent, which work
// out in numpy what the engine works out, without its code. It serves tests only.
package independent

import (
	"bytes"
	"encoding/csv"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// Figure is a simulated quantity of an example or a route, with its standard error.
type Figure struct {
	Of, Quantity string
	Value, Err   float64
}

// Run runs a script in a folder with so many trials, on one processor. It skips the test unless NUMPY names a
// Python interpreter with numpy.
func Run(t testing.TB, folder, script string, trials int) []Figure {
	t.Helper()
	python := os.Getenv("NUMPY")
	if python == "" {
		t.Skip("runs only when NUMPY names a Python interpreter that has numpy, as in NUMPY=python3")
	}
	cmd := exec.Command(python, script, strconv.Itoa(trials), "2") // not the seed of the rows
	cmd.Dir, cmd.Env, cmd.Stderr = folder, append(os.Environ(), "PYTHONDONTWRITEBYTECODE=1", "OMP_NUM_THREADS=1"), os.Stderr
	out, err := cmd.Output()
	require.NoError(t, err)
	return parse(t, bytes.NewReader(out))
}

// Read reads what a script has printed into a file.
func Read(t testing.TB, folder, name string) []Figure {
	t.Helper()
	f, err := os.Open(filepath.Join(folder, name))
	require.NoError(t, err)
	defer f.Close()
	return parse(t, f)
}

func parse(t testing.TB, r io.Reader) (list []Figure) {
	t.Helper()
	records, err := csv.NewReader(r).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(records), 1, "figures below a header")
	for _, record := range records[1:] {
		require.Len(t, record, 4)
		list = append(list, Figure{record[0], record[1], number(t, record[2]), number(t, record[3])})
	}
	return list
}

func number(t testing.TB, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	require.False(t, math.IsNaN(x) || math.IsInf(x, 0), text)
	return x
}

// Within is five standard errors of the difference of a figure and a result that has a
// standard error of its own.
func (f *Figure) Within(err float64) float64 { return 5 * math.Hypot(f.Err, err) }
