package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// schema is the part of JSON Schema (draft 2020-12) that testdata/schema.json is written
// in.
type schema struct {
	Ref        string             `json:"$ref"`
	Type       any                `json:"type"`
	Enum       []any              `json:"enum"`
	Required   []string           `json:"required"`
	Properties map[string]*schema `json:"properties"`
	Additional *bool              `json:"additionalProperties"`
	Items      *schema            `json:"items"`
}

// documentedJSON is the whole file: a schema for each thing that is printed.
type documentedJSON struct {
	Defs map[string]*schema `json:"$defs"`
	// met are the places of it that something printed has been held against.
	met map[*schema]bool
}

func readSchema(t *testing.T) *documentedJSON {
	t.Helper()
	d := &documentedJSON{met: map[*schema]bool{}}
	require.NoError(t, json.Unmarshal([]byte(read(t, "../../testdata/schema.json")), d))
	return d
}

// faults are the places where a value is not as a schema says.
func (d *documentedJSON) faults(s *schema, at string, value any) (list []string) {
	if s.Ref != "" {
		return d.faults(d.Defs[strings.TrimPrefix(s.Ref, "#/$defs/")], at, value)
	}
	d.met[s] = d.met[s] || value != nil
	if !s.permits(value) {
		return []string{fmt.Sprintf("%s: %v is not %v", at, value, s.Type)}
	}
	if s.Enum != nil && !slices.Contains(s.Enum, value) {
		list = append(list, fmt.Sprintf("%s: %v is none of %v", at, value, s.Enum))
	}
	switch value := value.(type) {
	case []any:
		for i, item := range value {
			list = append(list, d.faults(s.Items, fmt.Sprintf("%s[%d]", at, i), item)...)
		}
	case map[string]any:
		list = append(list, d.objectFaults(s, at, value)...)
	}
	return list
}

func (d *documentedJSON) objectFaults(s *schema, at string, value map[string]any) (list []string) {
	for _, name := range s.Required {
		if _, ok := value[name]; !ok {
			list = append(list, at+": "+name+" is missing")
		}
	}
	for name, inner := range value {
		switch p, ok := s.Properties[name]; {
		case ok:
			list = append(list, d.faults(p, at+"."+name, inner)...)
		case s.Additional != nil && !*s.Additional:
			list = append(list, at+": "+name+" is in no schema")
		}
	}
	return list
}

// permits reports whether a value is of the type, or of one of the types.
func (s *schema) permits(value any) bool {
	types, several := s.Type.([]any)
	if !several {
		types = []any{s.Type}
	}
	is := map[string]bool{}
	switch value := value.(type) {
	case nil:
		is["null"] = true
	case bool:
		is["boolean"] = true
	case string:
		is["string"] = true
	case float64:
		is["number"], is["integer"] = true, value == math.Trunc(value)
	case []any:
		is["array"] = true
	case map[string]any:
		is["object"] = true
	}
	return slices.ContainsFunc(types, func(t any) bool { return is[t.(string)] })
}

// printedFaults holds a printed JSON against the schema that it names.
func (d *documentedJSON) printedFaults(t *testing.T, text string) []string {
	t.Helper()
	var value map[string]any
	require.NoError(t, json.Unmarshal([]byte(text), &value))
	name, _ := value["schema"].(string)
	s := d.Defs[strings.TrimSuffix(strings.TrimPrefix(name, "minim."), "/1")]
	require.NotNil(t, s, "testdata/schema.json has nothing for %q", name)
	return d.faults(s, name, value)
}

// everythingPrep is an invented prep with much of what a prep can say, on an invented kit,
// and begunRecord the record of a batch of it, half made and its last line cut off.
const (
	everythingPrep = `target = "0.4 % w/v"
volume = "15 mL"
tolerance = "2 % of target"
ladder = ["0.1 % w/v", "0.0001 % w/v"]
ladder-with = "2 mL pipette"
ladder-in = "25 mL cylinder"
solute = { name = "sodium hypochlorite", assay = "at least 97 %" }
solvent = { name = "water" }
[[stock]]
name = "hydrochloric acid"
strength = "5 % w/v"
[[route]]
name = "one dilution"
steps = [
  { weigh = "2.00 g", on = "0.01 g scale", left-behind = "0.01 g", vessel = "3 g" },
  { make-up-to = "25 mL", in = "25 mL flask", reading = "careful", state = "wet" },
  { take = "1 mL", with = "2 mL pipette", piece = 2, rinsed = true },
  { make-up-to = "25 mL", in = "25 mL cylinder" },
  { take = "all" },
  { strengthen = "1 mL", of = "step 2", with = "2 mL pipette", contraction = "0.1 % of volume" },
]
`
	everythingKit = `[[balance]]
name = "0.01 g scale"
capacity = "200 g"
readability = "0.01 g"
readings = { values = ["5.01 g", "5.02 g", "5.00 g"], check-weight = { nominal = "5 g", class = "M1" } }
price = "80 EUR"
[[pipette]]
name = "2 mL pipette"
kind = "graduated"
capacity = "2 mL"
class = "B"
count = 2
[[cylinder]]
name = "25 mL cylinder"
capacity = "25 mL"
class = "B"
readings = [
  { of = "delivered", at = "25 mL", values = ["24.8 mL", "24.9 mL", "24.8 mL", "24.9 mL"] },
  { of = "delivered", at = "25 mL", liquid = "ethanol", values = ["24.9 mL", "24.9 mL", "25.0 mL", "24.9 mL"] },
]
[[flask]]
name = "25 mL flask"
capacity = "25 mL"
class = "A"
`
	begunRecord = `route = "one dilution"
[planned]
target = "0.4 % w/v"
volume = "16 mL"
tolerance = "40 % of target"
solute = { name = "sodium hypochlorite" }
solvent = { name = "water" }
[planned.kit]
balance = [{ name = "0.01 g scale", capacity = "200 g", readability = "0.01 g" }]
pipette = [{ name = "2 mL pipette", kind = "graduated", capacity = "2 mL", class = "B" }]
cylinder = [{ name = "25 mL cylinder", capacity = "25 mL", class = "B" }]
flask = [{ name = "25 mL flask", capacity = "25 mL", class = "A" }]
[[planned.route]]
name = "one dilution"
steps = [
  { weigh = "2.00 g", on = "0.01 g scale" },
  { make-up-to = "25 mL", in = "25 mL flask" },
  { take = "1 mL", with = "2 mL pipette" },
  { make-up-to = "25 mL", in = "25 mL cylinder" },
]
[entries]
1 = { step = 1, weigh = "1.00 g" }
2 = { step = 2, make-up-`
)

// jsonCommands are commands that together print everything that the schema knows.
func jsonCommands(t *testing.T) [][]string {
	t.Helper()
	dir := t.TempDir()
	prep, kit, batch := filepath.Join(dir, "prep.toml"), filepath.Join(dir, "kit.toml"), filepath.Join(dir, "batch.toml")
	require.NoError(t, os.WriteFile(prep, []byte(everythingPrep), 0o644))
	require.NoError(t, os.WriteFile(kit, []byte(everythingKit), 0o644))
	require.NoError(t, os.WriteFile(batch, []byte(begunRecord), 0o644))
	return [][]string{
		{"compare"}, {"compare", "--change", "0.01 g scale: repeatability = 0.002 g"}, {"made"}, {"made", "--to", "0.05 % w/v"}, {"made", "--to", "200 % w/v"},
		{"rescue", "--has", "8 % w/v, 20 mL", "--to", "1.5 % w/v", "--volume", "60 mL", "--kit", "demo/bench.toml"},
		{"plan", "--steps", "1", "--solute", "5 g", "--strongest", "10 % w/v", "--volume", "400 mL"}, {"buy", "--steps", "1"},
		{"compare", prep, "--kit", kit}, {"made", prep, batch, "--kit", kit},
		{"compare", "../../testdata/benches/darkroom/developer.toml"}, {"kit", kit}, {"kit", "--classes"},
	}
}

// seldom are fields that are null in whatever is printed here: a route of a front and a way
// to correct a batch are never impossible and are compared with none, and the verdict of a
// purchase is asked again only where it rests on what is assumed.
var seldom = []string{
	"member.reason", "member.reason_code", "member.uninformative_because", "member.closer_than_use", "way.reason", "way.reason_code", "way.uninformative_because", "way.closer_than_use",
	"buy.verdict_assumed_doubled", "buy.verdict_assumed_halved",
}

// TestPrintedAsDocumented holds what is printed as JSON against testdata/schema.json, and
// that against what is printed: a field that nothing prints is in no schema. The fields of a
// form keep their names and meanings.
func TestPrintedAsDocumented(t *testing.T) {
	skipIfSlow(t)
	d := readSchema(t)
	for _, args := range jsonCommands(t) {
		args = append(args, "--format", "json")
		if args[0] != "kit" {
			args = append(args, "--trials", "10000")
		}
		text := output(t, args...)
		assert.Empty(t, d.printedFaults(t, text), "%v", args)
	}
	paths, err := filepath.Glob("../../testdata/commands/*.txt")
	require.NoError(t, err)
	for _, path := range paths {
		archive := readArchive(t, path)
		if text := archive.get("stdout"); strings.HasPrefix(text, "{\n  \"schema\"") {
			assert.Empty(t, d.printedFaults(t, text), archive.path)
		}
	}
	for name, s := range d.Defs {
		for field, p := range s.Properties {
			if p.Ref == "" && !slices.Contains(seldom, name+"."+field) {
				assert.True(t, d.met[p], "nothing of what is printed here has %s.%s", name, field)
			}
		}
		assert.ElementsMatch(t, s.Required, fieldNames(s), "%s: every field is always there", name)
	}
}

func fieldNames(s *schema) (names []string) {
	for name := range s.Properties {
		names = append(names, name)
	}
	return names
}

// What a schema forbids is found, each kind of fault by itself.
func TestSchemaFindsFaults(t *testing.T) {
	d := readSchema(t)
	good := read(t, "../../testdata/demo/compare.json")
	require.Empty(t, d.printedFaults(t, good))
	for was, becomes := range map[string]string{
		`"possible": true`: `"possible": "yes"`, `"dilutions": 1`: `"dilutions": 1.5`, `"from": "analytic"`: `"from": "guess"`,
		`"title": `: `"heading": `, `"closer_than_use": null`: `"closer_than_use": []`, `"before": null`: `"before": null, "after": null`,
		`"name": "two dilutions"`: `"name": null`, `"steps": [`: `"steps": [1, `,
	} {
		require.Contains(t, good, was)
		assert.NotEmpty(t, d.printedFaults(t, strings.Replace(good, was, becomes, 1)), becomes)
	}
}
