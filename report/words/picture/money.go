package picture

import (
	"slices"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/uncertainty/purchase"
	"minim/uncertainty/route"
)

// Money is what is drawn of the question what to buy.
type Money struct {
	*purchase.Purchase
	// Coverage is the probability that a give or take has; 0 without any.
	Coverage float64
	// Rows are the benches.
	Rows []MoneyRow
}

// MoneyRow is a bench, by what it has or lacks.
type MoneyRow struct {
	*purchase.Choice
	// With are the words by which it goes. Chosen: the verdict is about it.
	With   string
	Chosen bool
}

// MoneyOf is what is drawn: a row for each choice, and for the present bench without each measure that its best route uses.
func MoneyOf(p *purchase.Purchase) Money {
	m := Money{Purchase: p}
	for i := range p.Choices {
		o := &p.Choices[i]
		m.Rows = append(m.Rows, MoneyRow{o, o.Name, i == p.Verdict.Buy || i == p.Verdict.Present})
	}
	for i := range p.Without {
		m.Rows = append(m.Rows, MoneyRow{&p.Without[i], "without " + p.Without[i].Name, false})
	}
	for _, o := range m.Drawn() {
		m.Coverage = o.Best.Analytic.CoverageProbability
	}
	return m
}

// Drawn are the rows with a route.
func (m *Money) Drawn() []MoneyRow {
	return slices.DeleteFunc(slices.Clone(m.Rows), func(o MoneyRow) bool { return !o.Found })
}

// Caption explains what is drawn, and says what is not, and what the figure shows.
func (m *Money) Caption() Caption {
	gives := clause.Either(len(m.Prep.Tolerances) > 0, "chances in 100", "holds within")
	return Caption{Title: m.title(), Rows: "the bench with", Chance: [2]string{"price", gives}, Notes: m.notes(), Alt: m.alt()}
}

// title says what the bench comes to, and what would change that.
func (m *Money) title() Title {
	v := m.Verdict
	return func(name func(string) string) string {
		switch {
		case v.Present < 0 && v.Buy < 0:
			return "No route was found on any bench"
		case v.Present < 0:
			return "No route on the bench as it is; " + m.bought(v.Buy, name)
		case v.Buy < 0 && (v.Meets || len(m.Prep.Tolerances) == 0):
			return "Nothing need be bought: " + m.comesTo(v.Present, name)
		case v.Buy < 0:
			return "Nothing here is good enough: " + m.comesTo(v.Present, name)
		}
		return capital(m.bought(v.Buy, name)) + "; now, with " + m.comesTo(v.Present, name)
	}
}

// bought is "with 1 mg balance (280 EUR): 99.7 in 100 inside, 12 mL left over".
func (m *Money) bought(at int, name func(string) string) string {
	o := &m.Choices[at]
	return "with " + name(o.Name) + clause.When(o.Price.Stated(), " ("+o.Price.String()+")") + ": " + outcome(m.Prep, &o.Best)
}

func (m *Money) comesTo(at int, name func(string) string) string {
	return name(m.Choices[at].Name) + ": " + outcome(m.Prep, &m.Choices[at].Best)
}

// Holds is the chance of a choice in a hundred, or what it holds within without a tolerance.
func (m *Money) Holds(o *purchase.Choice) string {
	f := words.Shown(m.Prep, &o.Best)
	return clause.Either(f.Inside == "", "± "+f.HoldsWithin, f.Inside)
}

// Price of a choice, or that it is there.
func (m *Money) Price(o *purchase.Choice) string {
	switch {
	case o.Owned:
		return Labels.Owned
	case o.Price.Stated():
		return o.Price.String()
	}
	return Labels.NoPrice
}

func (m *Money) notes() []string {
	list := clause.List{"Each mark is the best route with that balance alone, or with that other instrument beside what is on the bench. In it: how many measurements it takes."}
	list.Add(len(m.Without) > 0, "%s", "\"Without\": what the bench of the route to use now comes to without that piece; that route uses no other glass.")
	list.Put("", m.Coarsest())
	list.Put("", m.cutShort())
	return append(list, predicted)
}

// Coarsest is the coarsest readability that is good enough, by the number of dilutions; "" where
// nothing was searched for.
func (m *Money) Coarsest() string {
	var parts []string
	for i := range m.BreakEven {
		b := &m.BreakEven[i]
		parts = append(parts, Dilutions(b.Dilutions)+" "+coarsestOf(b))
	}
	if len(parts) == 0 {
		return ""
	}
	left := clause.When(m.MostLeftOver > 0 && m.MostLeftOver < 1e9, ", with no more than "+millilitres(m.MostLeftOver)+" left over")
	like := clause.When(m.Like != nil, " like the "+m.likeName())
	return "The coarsest balance" + like + " that is good enough" + left + ", by its readability: " + strings.Join(parts, ", ") + "."
}

func (m *Money) likeName() string {
	if m.Like == nil {
		return ""
	}
	return m.Like.Name
}

// coarsestOf is "0.0005 g", "none", "0.01 g or coarser".
func coarsestOf(b *purchase.BreakEven) string {
	if b.Readability == 0 {
		return clause.Either(b.CutShort, "none found so far", "none")
	}
	return quantity.Grams(b.Readability) + clause.When(b.CutShort, " or coarser")
}

// cutShort says where a search was cut short; "" where of none.
func (m *Money) cutShort() string {
	var with []string
	for _, o := range m.Rows {
		if o.CutShort {
			with = append(with, o.With)
		}
	}
	return clause.When(len(with) > 0, "The search was cut short with: "+strings.Join(with, ", ")+"; a better route may exist there.")
}

func (m *Money) alt() string {
	rows := clause.Each(m.Drawn(), func(o MoneyRow) string {
		return o.With + " (" + m.Price(o.Choice) + "), " + m.chance(&o.Best) + ", " + leavings(&o.Best, m.Prep.Volume) + ", " + clause.Count(o.Best.Operations, "measurement")
	})
	var none []string
	for _, o := range m.Rows {
		if !o.Found {
			none = append(none, o.With)
		}
	}
	parts := clause.List{m.title().String() + ". What an instrument changes of what is left over when one makes " + wanted(m.Prep) + onChanged(m.Prep) + "."}
	parts.Add(len(rows) > 0, "%s.", strings.Join(rows, "; "))
	parts.Add(len(none) > 0, "No route: %s.", quantity.Series(none, "or"))
	parts.Put("", m.Coarsest())
	return strings.Join(parts, " ")
}

func (m *Money) chance(r *route.Result) string {
	return clause.Either(r.Informative, chanceOf(m.Prep, r), "could be nothing at all")
}
