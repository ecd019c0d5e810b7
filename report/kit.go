package report

import (
	"fmt"
	"slices"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty"
)

// Kit lists the instruments of a kit, and its candidates apart: how good each is,
// where that figure comes from, the least it measures to 10 % and to 5 %, and its
// price where one is stated.
func Kit(k *equipment.Kit) string {
	b := new(strings.Builder)
	title := benchfile.Printable(k.File)
	if k.Title != "" {
		title = k.Title + ", " + title
	}
	if k.Note != "" {
		title += " (" + k.Note + ")"
	}
	if mark := invented(k); mark != "" {
		fmt.Fprintln(b, mark)
	}
	fmt.Fprintln(b, title)
	all := slices.Concat(k.Measures, k.Candidates.Measures)
	instruments(b, k.Instruments, all)
	if len(k.Candidates.Names()) > 0 {
		b.WriteString("\nCandidates, which are not on the bench\n")
		instruments(b, k.Candidates, all)
	}
	sources(b, all)
	b.WriteString("\n")
	hang(b, "", "s: standard deviation of repeated weighings, linearity: limit of the error over the range, as the kit states them; "+
		"* assumed, the linearity for small loads; - replaced by a certificate's uncertainty. u: standard uncertainty of one use, at the capacity for glass and at 100 digits for a balance. "+
		"Least: the least mass or volume whose give or take (95 %) is at most 10 % or 5 % of it. "+
		"Glass is read with ordinary care where the kit does not say how; temperature is left out.", 0)
	return b.String()
}

// instruments prints a table of balances and one of glass; all are the measures
// that footnotes are numbered over.
func instruments(b *strings.Builder, list equipment.Instruments, all []*equipment.Measure) {
	balances(b, list.Balances)
	measures(b, list.Measures, all)
}

func balances(b *strings.Builder, list []*equipment.Balance) {
	if len(list) == 0 {
		return
	}
	rows := [][]string{{"balance", "capacity", "shows", "s", "linearity", "u", "least to 10 %", "5 %", "price"}}
	for _, balance := range list {
		sample := balance.Readability * min(100, maxSteps(balance))
		rows = append(rows, []string{
			counted(balance.Name, balance.Count), quantity.Grams(balance.Capacity), quantity.Grams(balance.Readability),
			spreadOf(balance), linearityOf(balance), twoDigits(balance.Uncertainty(sample)) + " g",
			orNone(balance.Least(0.10))(quantity.Grams), orNone(balance.Least(0.05))(quantity.Grams),
			priceOf(balance.Price),
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
		return quantity.Grams(quantity.Round(b.Repeatability.S, 2))
	default:
		return quantity.Grams(b.Readability) + assumed
	}
}

func linearityOf(b *equipment.Balance) string {
	switch {
	case b.Weighing.Known:
		return "-"
	case b.Linearity.Known:
		return "±" + quantity.Grams(b.Linearity.Value)
	default:
		return "±" + quantity.Grams(2*b.Readability) + assumed
	}
}

func maxSteps(b *equipment.Balance) float64 { return float64(int(b.Capacity / b.Readability)) }

// priceOf is empty where a price is not stated.
func priceOf(p equipment.Price) string {
	if !p.Stated() {
		return ""
	}
	return p.String()
}

func measures(b *strings.Builder, list, all []*equipment.Measure) {
	if len(list) == 0 {
		return
	}
	rows := [][]string{{"glass", "division", "limit", "u", "least to 10 %", "5 %", "from", "price"}}
	for _, m := range list {
		division := "one mark"
		switch {
		case m.Division > 0:
			division = quantity.Millilitres(m.Division)
		case m.Kind == equipment.Dropper:
			division = "a drop" + ofLiquid(m)
		case m.Kind.AnyVolume():
			division = "as set"
		}
		rows = append(rows, []string{
			counted(m.Name, m.Count), division, limitOf(m), twoDigits(m.Uncertainty(m.Capacity)) + " mL",
			orNone(m.Least(0.10))(quantity.Millilitres), orNone(m.Least(0.05))(quantity.Millilitres), footnote(all, m),
			priceOf(m.Price),
		})
	}
	printGrid(b, rows)
}

// printGrid prints rows under their head, without a last column that is empty.
func printGrid(b *strings.Builder, rows [][]string) {
	last := len(rows[0]) - 1
	if !slices.ContainsFunc(rows[1:], func(row []string) bool { return row[last] != "" }) {
		for i := range rows {
			rows[i] = rows[i][:last]
		}
	}
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
		return "u " + quantity.Millilitres(m.Bias.Limit)
	}
	return "±" + quantity.Millilitres(m.Bias.Limit)
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
func ownLimit(m *equipment.Measure) bool { return !m.Bias.ClassLimit }

// footnote numbers the rows of the class tables that are used.
func footnote(all []*equipment.Measure, m *equipment.Measure) string {
	if ownLimit(m) {
		return "kit"
	}
	n := 0
	for _, other := range all {
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

// sources prints standard and trust of each row that is used.
func sources(b *strings.Builder, all []*equipment.Measure) {
	label := "\n"
	for _, m := range all {
		if ownLimit(m) {
			continue
		}
		b.WriteString(label)
		hang(b, footnote(all, m), source(m), 5)
		label = ""
	}
	if label == "" {
		b.WriteString("     Where each was seen: minim kit --classes\n")
	}
}

func source(m *equipment.Measure) string {
	numbered := ""
	if m.Numbered > 0 && m.Numbered == m.Class.Numbered {
		numbered = fmt.Sprintf("; numbered every %s (%s)", quantity.Millilitres(m.Numbered), m.Class.NumberedTrust)
	}
	return fmt.Sprintf("%s, %s; trust: %s%s", m.Class, quantity.Millilitres(m.Class.Capacity), m.Class.Trust, numbered)
}
