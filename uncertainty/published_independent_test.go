package uncertainty

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/uncertainty/independent"
	"minim/uncertainty/near"
)

// byScript is what the note of a row says whose figure testdata/independent/published.py
// gives.
const byScript = "testdata/independent/published.py"

// TestPublishedAgain runs the script that the simulated rows of testdata/published come
// from, with another seed and fewer trials, and holds its figures against those rows and
// against the engine: every row that names the script, and no other.
func TestPublishedAgain(t *testing.T) {
	figures := independent.Run(t, "../testdata/independent", "published.py", 1_000_000)
	rows, found := rowsOfScript(t), make(map[string]quantities)
	for _, f := range figures {
		name := f.Of + ", " + f.Quantity
		row, ok := rows[name]
		if !assert.Equal(t, true, ok, "%s: a row names the script", name) {
			continue
		}
		delete(rows, name)
		near.Absolute(t, name+", row", row.value, f.Value, row.half+f.Within(row.err))
		if found[f.Of] == nil {
			found[f.Of] = exampleOf(f.Of)(t)
		}
		engine := found[f.Of][f.Quantity]
		near.Absolute(t, name+", engine", f.Value, engine.value, f.Within(engine.err))
	}
	assert.Empty(t, rows, "rows that name the script and are not given by it")
}

// rowsOfScript are the recomputed figures of the rows whose note names the script.
func rowsOfScript(t testing.TB) map[string]written {
	rows := make(map[string]written)
	for file := range published {
		for _, c := range readTable(t, file, publishedHeader) {
			if strings.Contains(c[7], byScript) {
				rows[c[0]+", "+c[1]] = readWritten(t, c[2], c[3])
			}
		}
	}
	return rows
}

func exampleOf(name string) example {
	for _, examples := range published {
		if e := examples[name]; e != nil {
			return e
		}
	}
	return nil
}
