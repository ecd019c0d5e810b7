package picture

import (
	"fmt"
	"strconv"

	"minim/equipment/quantity"
	"minim/report/words"
	"minim/report/words/clause"
	"minim/report/words/influence"
	"minim/report/words/inline"
	"minim/uncertainty/route"
)

// Portion is the share of a variance that comes from an instrument, a material or a cause, or from
// all that are not named.
type Portion struct {
	Name, Share string
	Part        float64
	// Rest is all that are not named.
	Rest bool
}

// mostPortions are named by themselves.
const mostPortions = 5

// Portions are the largest shares of a variance, and what is left of it. What takes away from a
// variance, as under correlation, is in the rest, which may then be less than nothing.
func Portions(r *route.Result) (list []Portion) {
	groups, rest, others := r.Analytic.ByGroup(), 0.0, 0
	for _, g := range groups {
		if g.Sum == 0 {
			continue
		}
		if g.Sum < 0 || len(list) == mostPortions {
			rest += g.Sum
			others++
			continue
		}
		list = append(list, Portion{Name: influence.Group(g.Group), Share: ofVariance(g.Sum), Part: g.Sum})
	}
	if others > 0 {
		list = append(list, Portion{Name: fmt.Sprintf(Labels.RestOf, others), Share: ofVariance(rest), Part: rest, Rest: true})
	}
	return list
}

// ofVariance prints a share with a true minus sign.
func ofVariance(x float64) string { return inline.Minus(words.Share(x)) }

// One is what is said of one result.
type One struct {
	Title       Title
	Stated, Alt string
	Portions    []Portion
}

// OfOne words one result that is possible.
func OfOne(c *route.Comparison, r *route.Result) One {
	one := One{Title: supposedly(c.Prep, Found(c.Prep, r)), Stated: Stated(c.Prep, r), Portions: Portions(r)}
	if r.Informative {
		one.Stated += " (" + share(c.Settings.Coverage) + ")"
	}
	spoilt := clause.Each(one.Portions, func(p Portion) string { return p.Name + " " + p.Share })
	one.Alt = fmt.Sprintf("%s. Wanted %s. Strength: %s. Shares of the variance: %s.", one.Title, wanted(c.Prep), one.Stated,
		clause.Either(len(spoilt) > 0, seriesOf(spoilt), Labels.None))
	return one
}

func seriesOf(list []string) string { return quantity.Series(list, "and") }

// Letter of the i-th share or row, by which it is found in a picture: a to z, then a number.
func Letter(i int) string {
	if i < 26 {
		return string(rune('a' + i))
	}
	return strconv.Itoa(i + 1)
}
