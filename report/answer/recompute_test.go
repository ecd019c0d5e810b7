package answer_test

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/report/answer"
	"minim/uncertainty"
	"minim/uncertainty/near"
)

// A reader of the JSON who has nothing else: what stands in it of a route.
type (
	readRoute struct {
		Name      string
		Possible  bool
		Analytic  readAnalytic
		Equations []struct {
			Symbol, Expression, Quantity, Unit string
			Value                              float64
		}
		Constants []struct {
			Symbol, Quantity, Unit, Source string
			Value                          float64
		}
		Budget []readInput
	}
	readAnalytic struct {
		Value       float64
		U           float64  `json:"standard_uncertainty"`
		Nu          *float64 `json:"effective_degrees_of_freedom"`
		Probability float64  `json:"coverage_probability"`
		K           float64  `json:"coverage_factor"`
		Expanded    float64  `json:"expanded_uncertainty"`
	}
	readInput struct {
		Symbol, Distribution, Type, Source, Owner, Unit string
		Value, Sensitivity, Contribution, Share         float64
		SensitivityUnit                                 string  `json:"sensitivity_unit"`
		U                                               float64 `json:"standard_uncertainty"`
		Lower, Upper                                    *float64
		Nu                                              *float64 `json:"degrees_of_freedom"`
		Set                                             *int     `json:"readings_set"`
	}
)

// routesOf are the routes of the JSON of a prep.
func routesOf(t *testing.T, kit, prep answer.File) (list []readRoute) {
	t.Helper()
	q, err := answer.Read(answer.Files{Kit: kit, Prep: prep})
	if err != nil || len(q.Prep.Routes) == 0 { // some archives are about mistakes
		return nil
	}
	q.Settings = uncertainty.Settings{Trials: 10_000, Seed: 1, Coverage: 0.95}
	a, err := answer.Ask(context.Background(), "compare", q)
	require.NoError(t, err)
	text, err := a.In("json")
	require.NoError(t, err)
	var read struct{ Routes []readRoute }
	require.NoError(t, json.Unmarshal(text, &read))
	return read.Routes
}

// archived are the files in the archives of command tests.
func archived(t *testing.T) (list []map[string]string) {
	t.Helper()
	paths, err := filepath.Glob("../../testdata/commands/*.txt")
	require.NoError(t, err)
	for _, path := range paths {
		files, at := map[string]string{}, ""
		for line := range strings.Lines(string(fileAt(t, path).Data)) {
			if name, ok := strings.CutPrefix(strings.TrimSpace(line), "-- "); ok && strings.HasSuffix(name, " --") {
				at = strings.TrimSuffix(name, " --")
				continue
			}
			files[at] += line
		}
		list = append(list, files)
	}
	return list
}

// everyPrep gives the JSON of each prep of the demo, the benches, the published examples and the
// archives of commands.
func everyPrep(t *testing.T, with func(t *testing.T, name string, r *readRoute)) {
	t.Helper()
	seen := 0
	for _, folder := range []string{"../../cmd/minim/demo", "../../testdata/benches/*", "../../testdata/published/*", "../../testdata/preps"} {
		paths, err := filepath.Glob(folder + "/*.toml")
		require.NoError(t, err)
		for _, path := range paths {
			prep := fileAt(t, path)
			kitName, found := kitNamed(string(prep.Data))
			if !found {
				continue
			}
			routes := routesOf(t, fileAt(t, filepath.Join(filepath.Dir(path), kitName)), prep)
			for i := range routes {
				if routes[i].Possible {
					seen++
					with(t, prep.Name+", "+routes[i].Name, &routes[i])
				}
			}
		}
	}
	assert.Greater(t, seen, 30)
	for _, files := range archived(t) {
		for name, text := range files {
			kit, found := kitNamed(text)
			if !found || !strings.Contains(text, "[[route]]") || files[kit] == "" {
				continue
			}
			routes := routesOf(t, answer.File{Name: kit, Data: []byte(files[kit])}, answer.File{Name: name, Data: []byte(text)})
			for i := range routes {
				if routes[i].Possible {
					seen++
					with(t, name+", "+routes[i].Name, &routes[i])
				}
			}
		}
	}
	assert.Greater(t, seen, 100)
}

func fileAt(t *testing.T, path string) answer.File {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return answer.File{Name: filepath.Base(path), Data: data}
}

// kitNamed is the kit that a prep names.
func kitNamed(prep string) (name string, found bool) {
	for line := range strings.Lines(prep) {
		if key, value, ok := strings.Cut(line, "="); ok && strings.TrimSpace(key) == "kit" {
			name, err := strconv.Unquote(strings.TrimSpace(value))
			return name, err == nil
		}
	}
	return "", false
}

// u, the degrees of freedom, k and U follow from the table of inputs by plain arithmetic.
func (r *readRoute) recompute(t *testing.T, name string) {
	t.Helper()
	variance, fourth := 0.0, 0.0
	sets := map[int]float64{}
	nus := map[int]float64{}
	for i, in := range r.Budget {
		at := name + ", " + in.Symbol
		width := 0.0
		if in.Lower != nil && in.Upper != nil {
			width = *in.Upper - *in.Lower
		}
		switch in.Distribution {
		case "rectangular":
			near.Relative(t, at, width/math.Sqrt(12), in.U, 1e-9)
		case "triangular":
			near.Relative(t, at, width/math.Sqrt(24), in.U, 1e-9)
		case "exact":
			assert.Zero(t, in.U, at)
		}
		part := in.Sensitivity * in.U
		near.Absolute(t, at, part, in.Contribution, max(1e-12*r.Analytic.U, 1e-13*math.Abs(r.Analytic.Value)))
		variance += part * part
		switch {
		case in.Nu != nil && in.Set != nil:
			sets[*in.Set] += part * part
			nus[*in.Set] = *in.Nu
		case in.Nu != nil:
			fourth += part * part * part * part / *in.Nu
		}
		assert.NotEmpty(t, in.Source, at)
		assert.NotEmpty(t, in.Owner, at)
		assert.NotEmpty(t, in.SensitivityUnit, at)
		if in.Nu != nil {
			assert.Contains(t, in.Type, "A", at)
		}
		for _, other := range r.Budget[:i] {
			assert.NotEqual(t, other.Symbol, in.Symbol, name)
		}
	}
	u := math.Sqrt(variance)
	if r.Analytic.U == 0 { // all cancels, but for what the arithmetic rounds
		assert.Less(t, u, 1e-13*math.Abs(r.Analytic.Value), name)
		return
	}
	near.Relative(t, name+": u", u, r.Analytic.U, 1e-6)
	for set, part := range sets {
		fourth += part * part / nus[set]
	}
	nu := math.Inf(1)
	if fourth > 0 {
		nu = variance * variance / fourth
		near.Relative(t, name+": degrees of freedom", nu, *r.Analytic.Nu, 1e-6)
	} else {
		assert.Nil(t, r.Analytic.Nu, name)
	}
	k := studentFactor(r.Analytic.Probability, nu)
	near.Relative(t, name+": k", k, r.Analytic.K, 1e-6)
	near.Relative(t, name+": U", k*u, r.Analytic.Expanded, 1e-6)
}

// studentFactor is the half-width that holds p of Student's t, by bisection of its integral.
func studentFactor(p, nu float64) float64 {
	low, high := 0.0, 200.0
	for range 60 {
		middle := (low + high) / 2
		if studentWithin(middle, nu) < p {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// studentWithin is the probability within ±k: by x = √ν tan θ the density is cos^(ν-1) θ; that of a
// great many degrees of freedom is normal.
func studentWithin(k, nu float64) float64 {
	if math.IsInf(nu, 1) {
		return math.Erf(k / math.Sqrt2)
	}
	gammas, _ := math.Lgamma((nu + 1) / 2)
	below, _ := math.Lgamma(nu / 2)
	density := func(x float64) float64 {
		return math.Exp(gammas-below-(nu+1)/2*math.Log1p(x*x/nu)) / math.Sqrt(nu*math.Pi)
	}
	const cells = 4000
	sum, h := density(0)+density(k), k/cells
	for i := 1; i < cells; i++ {
		sum += density(float64(i)*h) * float64(2+2*(i%2))
	}
	return 2 * sum * h / 3
}

// The table of inputs gives u, k and U, and the equations the value and the sensitivities.
func TestRecomputed(t *testing.T) {
	answer.SkipIfSlow(t)
	everyPrep(t, func(t *testing.T, name string, r *readRoute) {
		r.recompute(t, name)
		r.evaluate(t, name)
	})
}

// So do those of a batch, of its plan, and of each way to correct it.
func TestRecomputedOfABatch(t *testing.T) {
	var whole any
	require.NoError(t, json.Unmarshal(fileAt(t, "../../testdata/demo/made.json").Data, &whole))
	seen := 0
	eachRoute(whole, func(found map[string]any) {
		text, err := json.Marshal(found)
		require.NoError(t, err)
		var r readRoute
		require.NoError(t, json.Unmarshal(text, &r))
		if r.Possible {
			seen++
			r.recompute(t, r.Name)
			r.evaluate(t, r.Name)
		}
	})
	assert.Greater(t, seen, 3)
}

// eachRoute finds what has a budget.
func eachRoute(value any, with func(map[string]any)) {
	switch value := value.(type) {
	case map[string]any:
		if value["budget"] != nil {
			with(value)
		}
		for _, inner := range value {
			eachRoute(inner, with)
		}
	case []any:
		for _, inner := range value {
			eachRoute(inner, with)
		}
	}
}

func (r *readRoute) evaluate(t *testing.T, name string) {
	t.Helper()
	values := map[string]float64{}
	for _, c := range r.Constants {
		values[c.Symbol] = c.Value
		assert.NotEmpty(t, c.Source, name+", "+c.Symbol)
	}
	for _, in := range r.Budget {
		values[in.Symbol] = in.Value
	}
	lines := map[string]string{}
	for _, l := range r.Equations {
		assert.NotContains(t, lines, l.Symbol, name)
		lines[l.Symbol] = l.Expression
	}
	for _, l := range r.Equations {
		near.Absolute(t, name+": "+l.Symbol, l.Value, (&reader{values: values, lines: lines}).quantity(t, l.Symbol), 1e-10*max(1, math.Abs(l.Value)))
	}
	top := r.Equations[0].Symbol
	assert.InDelta(t, r.Analytic.Value, r.Equations[0].Value, 1e-12*math.Abs(r.Analytic.Value))
	used := strings.Join(func() (all []string) {
		for _, l := range r.Equations {
			all = append(all, l.Expression)
		}
		return all
	}(), " ")
	for _, in := range r.Budget {
		if in.U == 0 || math.Abs(in.Contribution) <= 1e-9*r.Analytic.U {
			continue
		}
		assert.Contains(t, used, in.Symbol, name)
		step := in.U / 1000
		at := func(by float64) float64 {
			moved := map[string]float64{}
			for symbol, value := range values {
				moved[symbol] = value
			}
			moved[in.Symbol] += by
			return (&reader{values: moved, lines: lines}).quantity(t, top)
		}
		near.Absolute(t, name+": sensitivity to "+in.Symbol, in.Sensitivity*in.U, (at(step)-at(-step))*500, 1e-4*r.Analytic.U)
	}
}

// reader works out quantities from the equations.
type reader struct {
	values map[string]float64
	lines  map[string]string
	text   string
}

func (e *reader) quantity(t *testing.T, symbol string) float64 {
	t.Helper()
	if line, found := e.lines[symbol]; found {
		inner := &reader{values: e.values, lines: e.lines, text: line}
		x := inner.sum(t)
		require.Empty(t, inner.text, line)
		return x
	}
	value, found := e.values[symbol]
	require.True(t, found, "nothing is called %q", symbol)
	return value
}

func (e *reader) skip(prefixes ...string) string {
	for _, p := range prefixes {
		if rest, ok := strings.CutPrefix(e.text, p); ok {
			e.text = rest
			return p
		}
	}
	return ""
}

func (e *reader) sum(t *testing.T) float64 {
	t.Helper()
	sign := 1.0
	if e.skip("−") != "" {
		sign = -1
	}
	x := sign * e.product(t)
	for {
		switch e.skip(" + ", " − ") {
		case " + ":
			x += e.product(t)
		case " − ":
			x -= e.product(t)
		default:
			return x
		}
	}
}

func (e *reader) product(t *testing.T) float64 {
	t.Helper()
	x := e.factor(t)
	for {
		switch e.skip("·", "/") {
		case "·":
			x *= e.factor(t)
		case "/":
			x /= e.factor(t)
		default:
			return x
		}
	}
}

func (e *reader) factor(t *testing.T) float64 {
	t.Helper()
	if e.skip("(") != "" {
		x := e.sum(t)
		require.NotEmpty(t, e.skip(")"), e.text)
		return x
	}
	if e.text != "" && e.text[0] >= '0' && e.text[0] <= '9' {
		end := strings.IndexFunc(e.text, func(r rune) bool { return !strings.ContainsRune("0123456789.e+-", r) })
		if end < 0 {
			end = len(e.text)
		}
		x, err := strconv.ParseFloat(e.text[:end], 64)
		require.NoError(t, err, e.text)
		e.text = e.text[end:]
		if rest, ok := strings.CutPrefix(e.text, " "); ok && !strings.HasPrefix(rest, "+") && !strings.HasPrefix(rest, "−") { // its unit
			to := strings.IndexAny(rest, " )")
			if to < 0 {
				to = len(rest)
			}
			e.text = rest[to:]
		}
		return x
	}
	end := strings.IndexAny(e.text, " ·/()")
	if end < 0 {
		end = len(e.text)
	}
	symbol := e.text[:end]
	e.text = e.text[end:]
	return e.quantity(t, symbol)
}
