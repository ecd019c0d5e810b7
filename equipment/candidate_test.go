package equipment

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bodies of instruments of each kind, without name and kind (invented).
var bodies = map[string]string{
	"balance": "capacity = \"20 g\"\nreadability = \"0.001 g\"\nlinearity = \"0.003 g\"\n",
	"dropper": "drop = \"0.04 mL\"\n", "jar": "line = \"50 mL\"\ntolerance = \"1 mL\"\n",
	"syringe": "capacity = \"10 mL\"\nsingle-use = true\n", "piston": "capacity = \"1 mL\"\n", "transfer": "capacity = \"3 mL\"\n",
	"beaker": "capacity = \"100 mL\"\n", "conical-flask": "capacity = \"100 mL\"\n", "conical-measure": "capacity = \"100 mL\"\n",
	"burette": "capacity = \"50 mL\"\nclass = \"A\"\n",
}

func bodyOf(kind string) string {
	if body, ok := bodies[kind]; ok {
		return body
	}
	return "capacity = \"10 mL\"\nclass = \"A\"\n"
}

// A candidate of each kind is the very instrument that would be on the bench, but
// stands apart.
func TestCandidateOfEachKind(t *testing.T) {
	for _, kind := range CandidateKinds() {
		table, own := kind, ""
		if kind != "balance" {
			table = tableOf(kind)
		}
		if table == "pipette" {
			own = "kind = \"" + kind + "\"\n"
		}
		body := "name = \"new\"\nprice = \"90 EUR\"\n" + bodyOf(kind)
		bench := parseKit(t, oneBalance+"[["+table+"]]\n"+own+body)
		kit := parseKit(t, oneBalance+"[[candidate]]\nkind = \""+kind+"\"\n"+body)
		assert.Equal(t, []string{"x"}, kit.Names(), kind)
		assert.Equal(t, []string{"new"}, kit.Candidates.Names(), kind)
		assert.Equal(t, bench.Balance("new"), kit.Candidates.Balance("new"), kind)
		assert.Equal(t, bench.Measure("new"), kit.Candidates.Measure("new"), kind)
		assert.Equal(t, true, kit.Balance("new") == nil && kit.Measure("new") == nil, kind)
	}
	assert.Equal(t, len(kinds)+1, len(CandidateKinds()))
}

// The line of a jar may be set with what stands on the bench, not with another
// candidate.
func TestCandidateJar(t *testing.T) {
	bench := "[[cylinder]]\nname = \"c\"\ncapacity = \"50 mL\"\nclass = \"B\"\n"
	jar := "[[candidate]]\nkind = \"jar\"\nname = \"j\"\nline = \"50 mL\"\nset-with = \"c\"\n"
	kit := parseKit(t, bench+jar)
	assert.Equal(t, kit.Measure("c"), kit.Candidates.Measure("j").Line.With)
	_, err := ParseKit("b.toml", []byte(oneBalance+strings.Replace(bench, "[[cylinder]]", "[[candidate]]\nkind = \"cylinder\"", 1)+jar))
	assert.EqualError(t, err, "b.toml:14:12: set-with: there is no measure in this kit called \"c\"\n"+
		"  14 | set-with = \"c\"\n     |            ^^^\n  there is none to choose from")
}

func TestCandidateMistakes(t *testing.T) {
	const head = oneBalance + "[[candidate]]\n"
	for text, want := range map[string]string{
		head + "name = \"y\"":                     "5:1: a candidate needs `kind`",
		head + "wombat = 1\nkind = \"flask\"":     "5:1: a candidate flask needs `name`",
		head + "name = \"y\"\nkind = \"oven\"":    `7:8: kind: "oven" is not one of balance, cylinder, flask, one-mark, graduated, piston, transfer, burette, syringe, dropper, beaker, conical-flask, conical-measure, jar`,
		head + "name = \"y\"\nkind = \"pipette\"": "7:8: kind: there are several kinds of pipette",
		head + "name = \"y\"\nkind = 3":           "7:8: kind: found the number 3, expected a text in quotes",
		head + "name = \"x\"\nkind = \"dropper\"": `6:8: name: there are two instruments called "x"`,
		head + "name = \"y\"\nkind = \"dropper\"\n" + head[len(oneBalance):] + "name = \"y\"\nkind = \"dropper\"": `9:8: name: there are two instruments called "y"`,
		head + "name = \"y\"\nkind = \"flask\"\ncapacity = \"10 mL\"\nclass = \"A\"\nreadability = \"1 g\"":       "10:1: unknown key `readability` in a candidate flask",
		head + "name = \"y\"\nkind = \"balance\"":                                                                 "5:1: a candidate balance needs `capacity`",
		"[candidate]\nname = \"y\"":                       "1:1: candidate: found a table, expected a list of tables",
		"[[candidate]]\nname = \"y\"\nkind = \"dropper\"": "1:1: the kit holds no instrument",
	} {
		_, err := ParseKit("b.toml", []byte(text))
		require.Error(t, err, text)
		first, _, _ := strings.Cut(err.Error(), "\n")
		assert.Equal(t, "b.toml:"+want, first, text)
	}
}

// tableOf is the table of a kit that holds a kind.
func tableOf(kind string) string {
	if Kind(kind).Traits().Table == "pipette" {
		return "pipette"
	}
	return kind
}
