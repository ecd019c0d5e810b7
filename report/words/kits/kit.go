package kits

import (
	"fmt"
	"slices"

	"minim/equipment"
	"minim/equipment/quantity"
	"minim/report/page"
	"minim/report/words/clause"
	"minim/uncertainty/rounding"
)

// titled is "Bookbinder, bench.toml (invented)".
func titled(k *equipment.Kit) string {
	return clause.When(k.Title != "", k.Title+", ") + quantity.Printable(k.File) + clause.When(k.Note != "", " ("+k.Note+")")
}

// Invented marks what is made of the example that comes with the program; "" for a bench of
// the user's.
func Invented(k *equipment.Kit) string {
	return clause.When(k.Invented, "INVENTED EXAMPLE: minim was given no file")
}

// Kit has a title, the instruments of a kit and its candidates apart, with the sources of their
// limits, and what the columns hold.
func Kit(k *equipment.Kit) (title string, blocks []page.Block) {
	title = titled(k)
	if mark := Invented(k); mark != "" {
		blocks = append(blocks, page.Paragraph{Text: mark, Style: "bar"})
	}
	return title, append(append(blocks, page.Title{Text: title}), benchBlocks(k)...)
}

func benchBlocks(k *equipment.Kit) []page.Block {
	all := slices.Concat(k.Measures, k.Candidates.Measures)
	list := instruments(k.Instruments, all)
	if len(k.Candidates.Names()) > 0 {
		list = append(list, page.Heading{Text: "Candidates, which are not on the bench"})
		list = append(list, instruments(k.Candidates, all)...)
	}
	list = append(list, ownTable(all, slices.Concat(k.Balances, k.Candidates.Balances))...)
	return append(append(list, sources(all)...), page.Gap{}, page.Paragraph{Text: columns, Style: "small"})
}

const columns = "s: standard deviation of repeated weighings, or of the volumes of own readings, linearity: limit of the error over the range, as the kit states them; " +
	"* assumed, the linearity for small loads; - replaced by a certificate's uncertainty. u: standard uncertainty of one use, at the capacity for glass and at 100 digits for a balance. " +
	"Least: the least mass or volume whose give or take (95 %) is at most 10 % or 5 % of it. " +
	"Glass is read with ordinary care where the kit does not say how; temperature is left out."

// instruments are a table of balances and one of glass; all are the measures
// that footnotes are numbered over.
func instruments(list equipment.Instruments, all []*equipment.Measure) (blocks []page.Block) {
	if len(list.Balances) > 0 {
		blocks = append(blocks, page.Gap{}, balanceTable(list.Balances))
	}
	if len(list.Measures) > 0 {
		blocks = append(blocks, page.Gap{}, measureTable(list.Measures, all))
	}
	return blocks
}

func balanceTable(list []*equipment.Balance) *page.Table {
	t := &page.Table{Head: []string{"balance", "capacity", "shows", "s", "linearity", "u", "least to 10 %", "to 5 %", "price"}, Numbers: 1}
	for _, balance := range list {
		t.Rows = append(t.Rows, page.Row{Cells: []string{
			counted(balance.Name, balance.Count), quantity.Grams(balance.Capacity), quantity.Grams(balance.Readability),
			spreadOf(balance, "*"), linearityOf(balance, "*"), rounding.ThreeDigits(balance.Uncertainty(SampleOf(balance))) + " g",
			orNone(balance.Least(0.10))(quantity.Grams), orNone(balance.Least(0.05))(quantity.Grams),
			priceOf(balance.Price),
		}})
	}
	t.DropEmpty(8)
	return t
}

// spreadOf is the standard deviation of repeated weighings; assumed marks one that stands in for
// what a kit does not state.
func spreadOf(b *equipment.Balance, assumed string) string {
	switch {
	case b.Weighing.Known:
		return "-"
	case b.Repeatability.Known:
		return quantity.Grams(quantity.Round(b.Repeatability.S, 2))
	default:
		return quantity.Grams(b.Readability) + assumed
	}
}

func linearityOf(b *equipment.Balance, assumed string) string {
	switch {
	case b.Weighing.Known:
		return "-"
	case b.Linearity.Known:
		return "±" + quantity.Grams(b.Linearity.Value)
	default:
		return "±" + quantity.Grams(2*b.Readability) + assumed
	}
}

// SampleOf is a load of 100 digits, or of as many as the balance has.
func SampleOf(b *equipment.Balance) float64 {
	return b.Readability * min(100, float64(int(b.Capacity/b.Readability)))
}

// priceOf is empty where a price is not stated.
func priceOf(p equipment.Price) string { return clause.When(p.Stated(), p.String()) }

func measureTable(list, all []*equipment.Measure) *page.Table {
	t := &page.Table{Head: []string{"glass", "division", "limit", "u", "least to 10 %", "to 5 %", "from", "price"}, Numbers: 1}
	for _, m := range list {
		t.Rows = append(t.Rows, page.Row{Cells: []string{
			counted(m.Name, m.Count), divisionOf(m), limitOf(m), rounding.ThreeDigits(m.Uncertainty(m.Capacity)) + " mL",
			orNone(m.Least(0.10))(quantity.Millilitres), orNone(m.Least(0.05))(quantity.Millilitres), footnote(all, m),
			priceOf(m.Price),
		}})
	}
	t.DropEmpty(7)
	return t
}

func divisionOf(m *equipment.Measure) string {
	switch {
	case m.Division > 0:
		return quantity.Millilitres(m.Division)
	case m.Kind.Traits().Counts:
		return "a drop" + ofLiquid(m)
	case m.Kind.Traits().Set:
		return "as set"
	}
	if m.TwoMarks {
		return "two marks"
	}
	return "one mark"
}

func counted(name string, count int) string {
	return name + clause.When(count > 1, fmt.Sprintf(" (%d)", count))
}

func limitOf(m *equipment.Measure) string {
	return clause.Either(m.Bias.Shape == equipment.Gauss, "u ", "±") + quantity.Millilitres(m.Bias.Limit)
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

// sources are standard and trust of each row of the class tables that is used.
func sources(all []*equipment.Measure) []page.Block {
	list := page.Facts{At: 5, Bare: true}
	for _, m := range all {
		if !ownLimit(m) {
			list.List = append(list.List, page.Fact{Label: footnote(all, m), Text: source(m)})
		}
	}
	if len(list.List) == 0 {
		return nil
	}
	return []page.Block{page.Heading{Text: "Classes", Silent: true}, list, page.Paragraph{Text: "Where each was seen: minim kit --classes", At: 5}}
}

func source(m *equipment.Measure) string {
	numbered := fmt.Sprintf("; numbered every %s (%s)", quantity.Millilitres(m.Numbered), m.Class.NumberedTrust)
	return fmt.Sprintf("%s, %s; trust: %s", m.Class, quantity.Millilitres(m.Class.Capacity), m.Class.Trust) + supersededBy("; ", m.Class) +
		clause.When(m.Numbered > 0 && m.Numbered == m.Class.Numbered, numbered)
}

// ofLiquid names the liquid that the drop of a dropper is one of, where that is not water.
func ofLiquid(m *equipment.Measure) string { return clause.When(m.DropOf != "", " of "+m.DropOf) }

// supersededBy says behind other words that there is a later edition than that of a class; "" where
// there is none.
func supersededBy(behind string, c *equipment.Class) string {
	if c.Superseded == "" {
		return ""
	}
	text := behind + "superseded by the edition of " + c.Superseded
	if c.SupersededTrust == "from memory" {
		text += " (from memory)"
	}
	return text
}
