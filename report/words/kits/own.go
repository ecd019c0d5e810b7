package kits

import (
	"strconv"
	"strings"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/clause"
	"minim/uncertainty/rounding"
)

// standings say how the mean of own readings counts.
var standings = map[equipment.Standing]string{
	equipment.Combined: "with the limit",
	equipment.Alone:    "alone, without the limit",
	equipment.Few:      "no: fewer than four",
	equipment.NotTold:  "no: of what, or where, is not said",
	equipment.OfOthers: "no: of one piece of several",
	equipment.Unused:   "no: the kit says otherwise what it errs by",
}

// ownTable are the readings of one's own, and how their means count: no blocks where there are none.
func ownTable(all []*equipment.Measure, balances []*equipment.Balance) []page.Block {
	t := &page.Table{Head: []string{"own readings", "of what is", "at", "n", "mean", "s", "the mean lies", "as far off in 100", "counts"}, Numbers: 3}
	for _, b := range balances {
		for i := range b.Checks {
			t.Rows = append(t.Rows, page.Row{Cells: checkCells(b.Name, &b.Checks[i])})
		}
	}
	for _, m := range all {
		for i := range m.Judged {
			j := &m.Judged[i]
			t.Rows = append(t.Rows, page.Row{Cells: append([]string{
				m.Name, ofWhat(j), orDash(j.Mark > 0, quantity.Millilitres(j.Mark)), strconv.Itoa(int(j.Readings())),
				toDigit(quantity.Millilitres(quantity.Round(j.Mean, 5)), j.Digit), rounding.ThreeDigits(j.S) + " mL",
			}, judgedCells(j)...)})
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []page.Block{page.Gap{}, t}
}

// toDigit is a mean with as many decimals as its readings have, at least.
func toDigit(mean string, digit float64) string {
	number, unit, _ := strings.Cut(mean, " ")
	_, decimals, _ := strings.Cut(number, ".")
	wanted := 0
	for scaled := digit; digit > 0 && wanted < 9 && scaled < 1-1e-6; wanted++ {
		scaled *= 10
	}
	if len(decimals) >= wanted {
		return mean
	}
	if decimals == "" {
		number += "."
	}
	return number + strings.Repeat("0", wanted-len(decimals)) + " " + unit
}

// checkCells are those of readings of a check weight.
func checkCells(name string, c *equipment.Check) []string {
	return []string{
		name, clause.Either(c.Weight.Class != "", "check weight, "+c.Weight.Class, "check weight, certified"), quantity.Grams(quantity.Round(c.Weight.Mass, 9)), strconv.Itoa(int(c.Readings())),
		toDigit(quantity.Grams(quantity.Round(c.Mean, 7)), c.Digit), rounding.ThreeDigits(c.S) + " g", c.Far().String(), orDash(c.Compared(), in100(c.Chance)), standings[c.Standing],
	}
}

// judgedCells are how far a mean lies off, the chance of that, and how it counts.
func judgedCells(j *equipment.Judged) []string {
	compared := j.Standing != equipment.NotTold && j.Standing != equipment.OfOthers
	return []string{
		orDash(compared, j.Off().String()), orDash(compared && j.Chance < 1, in100(j.Chance)), standings[j.Standing],
	}
}

// in100 is how many in 100 a chance is.
func in100(chance float64) string {
	return clause.Either(chance < 1e-4, "under 0.01", quantity.Number(quantity.Round(100*chance, 2)))
}

// ofWhat is "delivered", or "delivered, ethanol".
func ofWhat(j *equipment.Judged) string {
	return strings.Trim(string(j.Of)+", "+j.Liquid, ", ")
}

func orDash(known bool, text string) string {
	if !known {
		return "-"
	}
	return text
}
