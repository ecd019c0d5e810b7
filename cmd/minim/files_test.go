package main

import (
	"cmp"
	"errors"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/cmd/minim/demo"
	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/report/answer"
	"minim/uncertainty/bench"
)

// documentation is that of all files.
const documentation = "FILES.md"

// documented returns the keys in the first column of the table below a heading.
// With a table name it keeps those whose last column names it.
func documented(t *testing.T, heading, table string) []string {
	t.Helper()
	_, rest, ok := strings.Cut(read(t, documentation), "### "+heading+"\n")
	require.True(t, ok, "%s has no heading %q", documentation, heading)
	rest, _, _ = strings.Cut(rest, "\n##")
	var keys []string
	for line := range strings.Lines(rest) {
		cells := strings.Split(strings.Trim(strings.TrimSpace(line), "|"), "|")
		if !strings.HasPrefix(line, "| `") || len(cells) < 2 {
			continue
		}
		if where := strings.TrimSpace(cells[len(cells)-1]); table != "" && !mentions(where, table) {
			continue
		}
		keys = append(keys, regexp.MustCompile("`([a-z-]+)`").FindAllString(cells[0], -1)...)
	}
	for i := range keys {
		keys[i] = strings.Trim(keys[i], "`")
	}
	slices.Sort(keys)
	return keys
}

// mentions reads the last column: "all", "all but dropper, jar", or a list.
func mentions(where, table string) bool {
	if rest, ok := strings.CutPrefix(where, "all"); ok {
		rest = strings.TrimPrefix(rest, " but ")
		return !slices.Contains(strings.Split(rest, ", "), table)
	}
	return slices.Contains(strings.Split(where, ", "), table)
}

// known asks the program which keys a table may have: an unknown one is a
// mistake whose hint lists them.
func known(t *testing.T, err error) []string {
	t.Helper()
	var m *benchfile.Mistake
	require.True(t, errors.As(err, &m), "%v", err)
	require.Contains(t, m.Message, "unknown key `qqqqqqqqqq`")
	_, list, ok := strings.Cut(m.Hint, " are ")
	require.True(t, ok, m.Hint)
	keys := strings.Split(list, ", ")
	slices.Sort(keys)
	return keys
}

const nonsense = "\nqqqqqqqqqq = 1\n"

// needed are the keys without which an instrument is refused at its header; one
// that is not listed has the last.
var needed = map[string]string{
	"balance": "name = \"x\"\ncapacity = \"10 g\"\nreadability = \"1 g\"\n",
	"dropper": "name = \"x\"\n",
	"jar":     "name = \"x\"\nline = \"10 mL\"\ntolerance = \"1 mL\"\n",
	"":        "name = \"x\"\ncapacity = \"10 mL\"\ntolerance = \"0.1 mL\"\ndivision = \"0.1 mL\"\n",
}

// kitKeys are the keys that the program knows in a table of a kit, for an
// instrument of a kind, which is stated where the table has several.
func kitKeys(t *testing.T, table, kind string) []string {
	keys, ok := needed[kind]
	if !ok {
		keys = needed[""]
	}
	if kind != table {
		keys += "kind = \"" + kind + "\"\n"
	}
	_, err := bench.ParseKit("k", []byte("[["+table+"]]"+nonsense+keys))
	return known(t, err)
}

func TestEveryKeyOfAKitIsDocumented(t *testing.T) {
	skipIfSlow(t)
	tables := tablesOfKits(t)
	require.Len(t, tables, 12)
	for _, table := range tables {
		switch table {
		case "balance":
			assert.Equal(t, documented(t, "[[balance]]", ""), kitKeys(t, table, table))
		case "candidate": // TestEveryCandidateIsDocumented
		case "pipette":
			var all []string
			for _, kind := range equipment.Kinds() {
				if kind.Traits().Table == table {
					all = append(all, kitKeys(t, table, string(kind))...)
				}
			}
			slices.Sort(all)
			assert.Equal(t, documented(t, "Keys of glass and plastic", table), slices.Compact(all), table)
		default:
			assert.Equal(t, documented(t, "Keys of glass and plastic", table), kitKeys(t, table, table), table)
		}
	}
}

// tablesOfKits are those that the program knows at the top of a kit, beside its documented keys.
func tablesOfKits(t *testing.T) []string {
	t.Helper()
	_, err := bench.ParseKit("k", []byte(nonsense))
	keys, documented := known(t, err), documented(t, "At the top of a kit", "")
	assert.Subset(t, keys, documented)
	return slices.DeleteFunc(keys, func(key string) bool { return slices.Contains(documented, key) })
}

// A candidate has the keys of its kind, and states it.
func TestEveryCandidateIsDocumented(t *testing.T) {
	skipIfSlow(t)
	assert.Equal(t, []string{"kind"}, documented(t, "[[candidate]]", ""))
	_, err := bench.ParseKit("k", []byte("[[candidate]]\nname = \"x\"\nkind = \"qqqqqqqqqq\"\n"))
	var m *benchfile.Mistake
	require.ErrorAs(t, err, &m)
	_, kinds, found := strings.Cut(m.Message, "is not one of ")
	require.True(t, found, m.Message)
	for _, kind := range strings.Split(kinds, ", ") {
		table := cmp.Or(equipment.Kind(kind).Traits().Table, kind)
		want := append(kitKeys(t, table, kind), "kind")
		slices.Sort(want)
		assert.Equal(t, slices.Compact(want), kitKeys(t, "candidate", kind), kind)
	}
}

// prepText is a prep with further lines below each header.
func prepText(heading string) []byte {
	below := func(header string) string {
		if header == heading {
			return header + nonsense
		}
		return header + "\n"
	}
	top := ""
	if heading == "" {
		top = nonsense
	}
	return []byte(top + "target = \"1 g/L\"\nvolume = \"1 mL\"\n" +
		below("[solute]") + "name = \"x\"\n" + below("[solvent]") + "name = \"water\"\n" +
		below("[[stock]]") + "name = \"s\"\nstrength = \"2 g/L\"\n" + below("[[packet]]") + "name = \"s\"\ncontent = \"2 g\"\n" +
		below("[[hazard]]") + "from = \"1 g/L\"\nwords = [\"irritant\"]\n" +
		below("[plan]") + below("[[route]]") + "name = \"r\"\nsteps = []\n")
}

func TestEveryKeyOfAPrepIsDocumented(t *testing.T) {
	skipIfSlow(t)
	for _, heading := range []string{"[solute]", "[solvent]", "[[stock]]", "[[packet]]", "[[hazard]]", "[plan]", "[[route]]"} {
		_, err := bench.ParsePrep("p", prepText(heading), new(equipment.Kit))
		assert.Equal(t, documented(t, heading, ""), known(t, err), heading)
	}
	_, err := bench.ParsePrep("p", prepText(""), new(equipment.Kit))
	want := slices.Concat(documented(t, "At the top of a prep", ""), []string{"solute", "solvent", "stock", "packet", "hazard", "plan", "route"})
	slices.Sort(want)
	assert.Equal(t, want, known(t, err))
}

// The options that the table of steps gives a verb are those that it takes.
func TestEveryStepIsDocumented(t *testing.T) {
	skipIfSlow(t)
	kit, err := bench.ParseKit("k", []byte("[[balance]]\nname = \"B\"\ncapacity = \"10 g\"\nreadability = \"1 g\"\n"+
		"[[cylinder]]\nname = \"C\"\ncapacity = \"10 mL\"\ntolerance = \"0.1 mL\"\ndivision = \"0.1 mL\"\n"))
	require.NoError(t, err)
	_, rest, ok := strings.Cut(read(t, documentation), "### Steps\n")
	require.True(t, ok)
	verbs := 0
	for line := range strings.Lines(rest) {
		cells := strings.Split(line, "|")
		if len(cells) < 4 || !strings.Contains(cells[1], " = ") {
			continue
		}
		verbs++
		step := strings.Trim(strings.TrimSpace(cells[1]), "`")
		step = strings.NewReplacer("PIPETTE", `"C"`, "VESSEL", `"C"`, "CYLINDER", `"C"`, "BALANCE", `"B"`, "STOCK", `"s"`, "PACKET", `"s"`).Replace(step)
		var want []string
		for _, option := range regexp.MustCompile("`([a-z-]+)`").FindAllString(cells[3], -1) {
			want = append(want, strings.Trim(option, "`"))
		}
		for _, m := range regexp.MustCompile(`([a-z-]+) = `).FindAllStringSubmatch(step, -1) {
			want = append(want, m[1])
		}
		slices.Sort(want)
		_, err := bench.ParsePrep("p", []byte("target = \"1 g/L\"\nvolume = \"1 mL\"\n[solute]\nname = \"x\"\n[solvent]\nname = \"water\"\n"+
			"[[stock]]\nname = \"s\"\nstrength = \"2 g/L\"\nvolume = \"9 mL\"\n[[packet]]\nname = \"s\"\ncontent = \"2 g\"\n"+
			"[[route]]\nname = \"r\"\nsteps = [\n{ start = \"s\" }, { take = \"1 mL\", with = \"C\" },\n"+
			"{ qqqqqqqqqq = 1, "+step+" },\n{ make-up-to = \"10 mL\", in = \"C\" }]\n"), kit)
		assert.Equal(t, want, known(t, err), step)
	}
	assert.Equal(t, 14, verbs)
}

// The keys of an entry, beside those of its step, are documented.
func TestEveryKeyOfARecordIsDocumented(t *testing.T) {
	skipIfSlow(t)
	q, err := answer.Read(demo.Files)
	require.NoError(t, err)
	p := q.Prep
	const top, entries = "route = \"two dilutions\"\n", "[entries]\n1 = { step = 3, by = \"x\" }\n"
	_, err = bench.ParseRecord("r", []byte(nonsense+top+entries), p)
	want := append(documented(t, "At the top of a record", ""), "planned", "entries")
	slices.Sort(want)
	assert.Equal(t, want, known(t, err))
	var all []string
	for _, entry := range []string{"step = 3", "corrects = 1", "temperature = \"20 °C\""} {
		_, err := bench.ParseRecord("r", []byte(top+entries+"2 = { qqqqqqqqqq = 1, by = \"x\", at = \"2026-11-28\", "+entry+" }\n"), p)
		all = append(all, known(t, err)...)
	}
	slices.Sort(all)
	ofStep := []string{"take", "of", "with", "piece", "reading", "rinsed", "blown-out", "state"}
	all = slices.DeleteFunc(slices.Compact(all), func(key string) bool { return slices.Contains(ofStep, key) })
	assert.Equal(t, documented(t, "[entries]", ""), all)
}

// The keys of a table of readings.
func TestEveryKeyOfReadingsIsDocumented(t *testing.T) {
	skipIfSlow(t)
	_, err := bench.ParseKit("k", []byte("[[flask]]\nname = \"x\"\ncapacity = \"10 mL\"\ntolerance = \"0.1 mL\"\nreadings = { qqqqqqqqqq = 1, weighed = [\"1 g\", \"2 g\"], temperature = \"20 °C\" }\n"))
	assert.Equal(t, documented(t, "Readings of one's own", ""), known(t, err))
}

// The keys of a table of readings of a balance.
func TestEveryKeyOfReadingsOfABalanceIsDocumented(t *testing.T) {
	skipIfSlow(t)
	_, err := bench.ParseKit("k", []byte("[[balance]]\nname = \"x\"\ncapacity = \"10 g\"\nreadability = \"1 g\"\nreadings = { qqqqqqqqqq = 1, values = [\"1 g\", \"2 g\"] }\n"))
	assert.Equal(t, documented(t, "Readings of a balance", ""), known(t, err))
}
