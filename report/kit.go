package report

import (
	"fmt"
	"strings"

	"minim/equipment"
	"minim/uncertainty"
)

// Kit lists the instruments of a kit: how good each is, where that figure
// comes from, and the least it measures to 10 % and to 5 %.
func Kit(k *equipment.Kit) string {
	b := new(strings.Builder)
	title := k.File
	if k.Title != "" {
		title = k.Title + ", " + title
	}
	if k.Note != "" {
		title += " (" + k.Note + ")"
	}
	fmt.Fprintln(b, title)
	balances(b, k)
	measures(b, k)
	sources(b, k)
	b.WriteString("\n")
	hang(b, "", "s: standard deviation of repeated weighings, linearity: limit of the error over the range, as the kit states them; "+
		"* assumed, the linearity for small loads; - replaced by a certificate's uncertainty. u: standard uncertainty of one use, at the capacity for glass and at 100 digits for a balance. "+
		"Least: the least mass or volume whose give or take (95 %) is at most 10 % or 5 % of it. "+
		"Glass is read with ordinary care where the kit does not say how; temperature is left out.", 0)
	return b.String()
}

func balances(b *strings.Builder, k *equipment.Kit) {
	if len(k.Balances) == 0 {
		return
	}
	rows := [][]string{{"balance", "capacity", "shows", "s", "linearity", "u", "least to 10 %", "5 %"}}
	for _, balance := range k.Balances {
		sample := balance.Readability * min(100, maxSteps(balance))
		rows = append(rows, []string{
			counted(balance.Name, balance.Count), equipment.Grams(balance.Capacity), equipment.Grams(balance.Readability),
			spreadOf(balance), linearityOf(balance), twoDigits(balance.Uncertainty(sample)) + " g",
			orNone(balance.Least(0.10))(equipment.Grams), orNone(balance.Least(0.05))(equipment.Grams),
		})
	}
	printGrid(b, rows)
}

// assumed marks a figure that stands in for what a kit does not state.
const assumed = "*"

func spreadOf(b *equipment.Balance) string {
	switch {
	case b.Weighing.Known:
		return "-"
	case b.Repeatability.Known:
		return equipment.Grams(roundSignificant(b.Repeatability.S, 2))
	default:
		return equipment.Grams(b.Readability) + assumed
	}
}

func linearityOf(b *equipment.Balance) string {
	switch {
	case b.Weighing.Known:
		return "-"
	case b.Linearity.Known:
		return "±" + equipment.Grams(b.Linearity.Value)
	default:
		return "±" + equipment.Grams(2*b.Readability) + assumed
	}
}

func maxSteps(b *equipment.Balance) float64 { return float64(int(b.Capacity / b.Readability)) }

func measures(b *strings.Builder, k *equipment.Kit) {
	if len(k.Measures) == 0 {
		return
	}
	rows := [][]string{{"glass", "division", "limit", "u", "least to 10 %", "5 %", "from"}}
	for _, m := range k.Measures {
		division := "one mark"
		switch {
		case m.Division > 0:
			division = equipment.Millilitres(m.Division)
		case m.Kind == equipment.Dropper:
			division = "a drop"
		case m.Kind.AnyVolume():
			division = "as set"
		}
		rows = append(rows, []string{
			counted(m.Name, m.Count), division, limitOf(m), twoDigits(m.Uncertainty(m.Capacity)) + " mL",
			orNone(m.Least(0.10))(equipment.Millilitres), orNone(m.Least(0.05))(equipment.Millilitres), footnote(k, m),
		})
	}
	printGrid(b, rows)
}

func printGrid(b *strings.Builder, rows [][]string) {
	b.WriteString("\n")
	for _, line := range grid(rows) {
		b.WriteString(line + "\n")
	}
}

func counted(name string, count int) string {
	if count > 1 {
		return fmt.Sprintf("%s (%d)", name, count)
	}
	return name
}

func limitOf(m *equipment.Measure) string {
	if m.Bias.Shape == equipment.Gauss {
		return "u " + equipment.Millilitres(m.Bias.Limit)
	}
	return "±" + equipment.Millilitres(m.Bias.Limit)
}

// twoDigits rounds a standard uncertainty for print.
func twoDigits(u float64) string {
	_, text := uncertainty.RoundExpanded(0, u)
	return text
}

// orNone prints a least amount, or that there is none.
func orNone(amount float64, ok bool) func(func(float64) string) string {
	return func(print func(float64) string) string {
		if !ok {
			return "none"
		}
		return print(amount)
	}
}

// ownLimit reports whether the limit is the kit's own and not that of a class.
func ownLimit(m *equipment.Measure) bool { return !m.Bias.FromClass }

// footnote numbers the rows of the class tables that a kit uses.
func footnote(k *equipment.Kit, m *equipment.Measure) string {
	if ownLimit(m) {
		return "kit"
	}
	n := 0
	for _, other := range k.Measures {
		if ownLimit(other) {
			continue
		}
		n++
		if other == m {
			break
		}
	}
	return fmt.Sprintf("[%d]", n)
}

// sources prints standard, source and trust of each row that is used.
func sources(b *strings.Builder, k *equipment.Kit) {
	label := "\n"
	for _, m := range k.Measures {
		if ownLimit(m) {
			continue
		}
		b.WriteString(label)
		text := fmt.Sprintf("%s, %s; trust: %s; source: %s", m.Class, equipment.Millilitres(m.Class.Capacity), m.Class.Trust, m.Class.Source)
		hang(b, footnote(k, m), text, 5)
		label = ""
	}
}
