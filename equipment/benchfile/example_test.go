package benchfile

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"minim/equipment/quantity"
)

// An invented bench.
const bench = `# bench.toml
[[balance]]
name = "0.01 g scale"
capacity = "200 g"
readability = "0.01 g"
repeatability = "0.01 g"          # or readings = ["0.50 g", "0.51 g", "0.50 g", "0.49 g"]

[[pipette]]
name = "1 mL graduated"
kind = "graduated"                # one-mark, graduated, piston, transfer
capacity = "1 mL"
class = "B"                       # tolerance and graduation from the class table
standard = "ISO"                  # or "ASTM"; never mixed silently

[[cylinder]]
name = "10 mL cylinder"
capacity = "10 mL"
class = "B"
clinging = "0.03 mL"
retained = { mean = "0.04 mL", spread = "0.02 mL" }
`

// An invented preparation.
const prep = `# wash.toml
title = "Wash for a map"
kit = "bench.toml"
target = "0.65 % w/v"
volume = "12 mL"
tolerance = "6 % of target"       # or not-above = "0.70 % w/v", not-below = …
bench = { temperature = "20 °C", within = "3 °C", reading = "careful" }

[solute]
name = "sizing"
assay = { from = "97 %", to = "100 %" }

[solvent]
name = "ethanol"
hazards = ["flammable"]

[[route]]
name = "two dilutions"
steps = [
  { weigh = "1.40 g", on = "0.01 g scale" },
  { make-up-to = "25 mL", in = "25 mL flask" },
  { take = "6 mL", with = "10 mL cylinder" },
  { make-up-to = "10 mL", in = "10 mL cylinder" },
  { take = "4 mL", with = "5 mL graduated" },
  { make-up-to = "20 mL", in = "25 mL cylinder" },
]
`

func TestBench(t *testing.T) {
	root := parsed(t, bench)
	assert.Equal(t, []string{"balance", "pipette", "cylinder"}, root.Keys())
	balance := root.Tables("balance")[0]
	assert.Equal(t, place{"f.toml", 2, 1}, balance.place())
	assert.Equal(t, "0.01 g scale", balance.Text("name"))
	assert.Equal(t, 200.0, balance.Positive("capacity", quantity.Mass))
	assert.Equal(t, 0.01, balance.Positive("readability", quantity.Mass))
	assert.Equal(t, 0.01, balance.Positive("repeatability", quantity.Mass))
	assert.False(t, balance.Has("count"))
	assert.Equal(t, 0, balance.Count("count", 1))
	pipette := root.Tables("pipette")[0]
	assert.Equal(t, "1 mL graduated", pipette.Text("name"))
	assert.Equal(t, "graduated", pipette.Word("kind", "one-mark", "graduated"))
	assert.Equal(t, 1.0, pipette.Positive("capacity", quantity.Volume))
	assert.Equal(t, "B", pipette.Word("class", "A", "B", "AS"))
	assert.Equal(t, "ISO", pipette.Word("standard", "ISO", "ASTM"))
	cylinder := root.Tables("cylinder")[0]
	assert.Equal(t, []string{"name", "capacity", "class", "clinging", "retained"}, cylinder.Keys())
	for _, key := range cylinder.Keys() {
		assert.True(t, cylinder.Has(key))
	}
	retained := cylinder.Table("retained")
	assert.Equal(t, place{"f.toml", 20, 12}, retained.place())
	assert.Equal(t, 0.04, retained.Positive("mean", quantity.Volume))
	assert.Equal(t, 0.02, retained.Positive("spread", quantity.Volume))
	require.NoError(t, root.Err())
}

func TestPrep(t *testing.T) {
	root := parsed(t, prep)
	root.Need("title", "kit", "target", "volume", "tolerance")
	root.Texts("title")
	root.Text("kit")
	root.Text("target")
	root.Text("tolerance")
	assert.Equal(t, 12.0, root.Positive("volume", quantity.Volume))
	day := root.Table("bench")
	assert.Equal(t, 20.0, day.Quantity("temperature", quantity.Temperature))
	assert.Equal(t, 3.0, day.NotNegative("within", quantity.Temperature))
	assert.Equal(t, "careful", day.Word("reading", "careful", "ordinary"))
	solute := root.Table("solute")
	assert.Equal(t, "sizing", solute.Text("name"))
	assay := solute.Table("assay")
	assert.Equal(t, 0.97, assay.Positive("from", quantity.Share))
	assert.Equal(t, 1.0, assay.Positive("to", quantity.Share))
	solvent := root.Table("solvent")
	solvent.Text("name")
	assert.Equal(t, []string{"flammable"}, solvent.Texts("hazards"))
	route := root.Tables("route")[0]
	route.Text("name")
	steps := route.Tables("steps")
	assert.Len(t, steps, 6)
	assert.Equal(t, place{"f.toml", 21, 3}, steps[1].place())
	for _, step := range steps {
		for _, key := range step.Keys() {
			step.Text(key)
		}
		step.Need("weigh")
	}
	assert.Equal(t, "25 mL flask", steps[1].Text("in"))
	all := root.Err().(mistakes)
	assert.Len(t, all, 5)
	assert.EqualError(t, all[0], "f.toml:21:3: a step needs `weigh`\n"+
		"  21 |   { make-up-to = \"25 mL\", in = \"25 mL flask\" },\n"+
		"     |   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^")
}

func TestTheRestOfTOML(t *testing.T) {
	root := parsed(t, "a.b.c = 0x1F\r\na.b.d = 1_000.5 # x\r\n\"e\" = '''\r\nx'''\r\n"+
		"f = [\r\n  1, # one\r\n  2,\r\n]\r\ng = {\r\n  h = true,\r\n}\r\n"+
		"[[i]]\r\n[[i.j]]\r\nk = 1\r\n[[i.j]]\r\nk = 2\r\n[i.m]\r\nn = 1979-05-27\r\n[[i]]\r\n[[i.j]]\r\nk = 3\r\n[o.p]\r\nq = []\r\n[o]\r\nr = +5")
	b := root.Table("a").Table("b")
	assert.Equal(t, 31.0, b.Number("c"))
	assert.Equal(t, 31, b.Count("c", 0))
	assert.Equal(t, 1000.5, b.Number("d"))
	assert.Equal(t, "x", root.Text("e"))
	assert.Equal(t, isList, root.shape("f"))
	assert.Equal(t, number, b.shape("c"))
	assert.Equal(t, isText, root.shape("e"))
	assert.Equal(t, isTable, root.shape("g"))
	assert.True(t, root.Table("g").Flag("h"))
	assert.Equal(t, flag, root.Table("g").shape("h"))
	assert.Equal(t, isList, root.shape("i"))
	var counts []int
	for _, i := range root.Tables("i") {
		for _, j := range i.Tables("j") {
			counts = append(counts, j.Count("k", 1))
		}
		assert.Equal(t, absent, i.shape("x"))
		if i.Has("m") {
			assert.Equal(t, date, i.Table("m").shape("n"))
		}
	}
	assert.Equal(t, []int{1, 2, 3}, counts)
	o := root.Table("o")
	assert.Equal(t, place{"f.toml", 24, 1}, o.place())
	assert.Equal(t, 5, o.Count("r", 1))
	assert.Empty(t, o.Table("p").Texts("q"))
	require.NoError(t, root.Err())
}
