package uncertainty

import (
	"cmp"
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/uncertainty/portable"
)

// readRows reads the rows of a file by example.
func readRows(t testing.TB, file string) map[string][]row {
	t.Helper()
	rows := make(map[string][]row)
	for _, c := range readTable(t, file, publishedHeader) {
		r := row{quantity: c[1], recomputed: readWritten(t, c[2], c[3]), published: readWritten(t, c[4], c[5]), mismatch: c[6] == "MISMATCH"}
		sound := c[2] != "" && c[8] != "" && (c[6] == "" || r.mismatch && c[4] != "" && c[7] != "")
		assert.Equal(t, true, sound, "a row with value, source, and the reason of a mismatch: %q", c)
		rows[c[0]] = append(rows[c[0]], r)
	}
	return rows
}

// readTable reads a file of testdata/published, lines with # apart, and checks
// its header.
func readTable(t testing.TB, file, header string) [][]string {
	t.Helper()
	f, err := os.Open(publishedFolder + file)
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	records, err := r.ReadAll()
	require.NoError(t, err)
	assert.Equal(t, header, strings.Join(records[0], ","))
	return records[1:]
}

func readWritten(t testing.TB, text, err string) written {
	t.Helper()
	r := written{text: text}
	if text != "" {
		mantissa, exponent, _ := strings.Cut(text, "e")
		_, decimals, _ := strings.Cut(mantissa, ".")
		r.value = readNumber(t, text)
		r.half = 0.5 * math.Pow(10, readNumber(t, cmp.Or(exponent, "0"))-float64(len(decimals)))
	}
	r.err = readNumber(t, cmp.Or(err, "0"))
	return r
}

func readNumber(t testing.TB, text string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	assert.Equal(t, true, portable.IsFinite(value), text)
	return value
}
