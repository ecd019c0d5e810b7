package data

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words"
	"minim/report/words/reminder"
	"minim/uncertainty/hazards"
	"minim/uncertainty/route"
)

// columns of the CSV that every route has: places in the JSON of a route.
var columns = []string{
	"name", "possible", "reason", "informative", "uninformative_because", "dilutions", "operations", "intended", "aims_elsewhere.off_target", "aims_elsewhere.step", "aims_elsewhere.reading", "aims_elsewhere.conformance_probability",
	"analytic.value", "analytic.standard_uncertainty", "analytic.effective_degrees_of_freedom", "analytic.coverage_probability",
	"analytic.coverage_factor", "analytic.expanded_uncertainty", "analytic.lower", "analytic.upper", "analytic.conformance_probability",
	"second_order.shift", "second_order.standard_uncertainty", "second_order.largest_term_of", "second_order.largest_term_with",
	"monte_carlo.trials", "monte_carlo.seed", "monte_carlo.mean", "monte_carlo.mean_standard_error",
	"monte_carlo.standard_deviation", "monte_carlo.standard_deviation_standard_error",
	"monte_carlo.lower", "monte_carlo.lower_standard_error", "monte_carlo.upper", "monte_carlo.upper_standard_error",
	"monte_carlo.shortest_lower", "monte_carlo.shortest_upper", "monte_carlo.resolution", "monte_carlo.significant_digits",
	"monte_carlo.conformance_probability",
	"cross_check.agrees", "cross_check.tolerance", "cross_check.d_low", "cross_check.d_high", "cross_check.of_expanded",
	"cross_check.cause", "cross_check.influence", "cross_check.with", "quoted.lower", "quoted.upper", "quoted.from",
	"closer_than_use", "holds_within_of_target", "assumed_share_of_variance", "solute_g", "made_mL", "left_over_mL",
	"warnings", "assumed", "from_memory", "not_counted",
}

// csvBoth puts the rows of the kit as it is above those of the changed kit.
func csvBoth(changed, asItIs [][]string) [][]string {
	both := [][]string{append([]string{"kit"}, changed[0]...)}
	for _, row := range asItIs[1:] {
		both = append(both, append([]string{"as it is"}, row...))
	}
	for _, row := range changed[1:] {
		both = append(both, append([]string{"changed"}, row...))
	}
	return both
}

// csvRows are those of the routes, with what may not meet.
func csvRows(c *route.Comparison) [][]string {
	return withStops(c.Prep, routeRows(c), func(i int) *route.Route { return c.Results[i].Route })
}

// withStops adds to every row, in two last columns, what stands above every screen: what may not
// meet of what the route of the row brings together, and of all else that a prep names. A row
// without a route brings nothing together.
func withStops(p *route.Prep, rows [][]string, of func(row int) *route.Route) [][]string {
	rows[0] = append(rows[0], "may_not_meet", "may_not_meet_elsewhere")
	all := p.Clashes(nil)
	for i := range rows[1:] {
		var here []hazards.Clash
		if r := of(i); r != nil {
			here = p.Clashes(r)
		}
		elsewhere := slices.DeleteFunc(slices.Clone(all), func(c hazards.Clash) bool {
			return slices.ContainsFunc(here, func(h hazards.Clash) bool { return reminder.Stop(&h) == reminder.Stop(&c) })
		})
		rows[1+i] = append(rows[1+i], stops(here), stops(elsewhere))
	}
	return rows
}

// stops are the sentences about what may not meet, in a cell.
func stops(clashes []hazards.Clash) string {
	return harmless(strings.Join(reminder.Stops(clashes), " "))
}

// routeRows are the header and a row for each route.
func routeRows(c *route.Comparison) [][]string {
	p, paths := c.Prep, columns
	for i := range p.Tolerances {
		paths = append(paths[:len(paths):len(paths)], fmt.Sprintf("inside.%d.tolerance", i+1), fmt.Sprintf("inside.%d.conformance_probability", i+1))
	}
	rows := [][]string{{"strength_unit", "strength_counts", "counted_of_weighed", "target", "volume_mL", "use"}}
	for _, path := range paths {
		rows[0] = append(rows[0], strings.ReplaceAll(path, ".", "_"))
	}
	wanted := []string{harmless(p.Target.Unit.Name), harmless(words.Meant(p)), quantity.Exact(p.SoluteContent()), quantity.Exact(p.Target.Value), quantity.Exact(p.Volume)}
	for i := range c.Results {
		row := append(wanted[:len(wanted):len(wanted)], strconv.FormatBool(i == c.Verdict.Use))
		whole := routeOf(p, &c.Results[i])
		for _, path := range paths {
			row = append(row, csvCell(lookUp(whole, strings.Split(path, "."))))
		}
		rows = append(rows, row)
	}
	return rows
}

// lookUp goes down the names and numbers (from 1) of a JSON; it is nil below a null and beyond
// the end of a list. It panics when a name is not there.
func lookUp(at any, path []string) any {
	for _, name := range path {
		switch inner := at.(type) {
		case object:
			i := slices.IndexFunc(inner, func(f field) bool { return f.name == name })
			if i < 0 {
				panic("report: the JSON of a route has no " + name)
			}
			at = inner[i].value
		case []object:
			n, err := strconv.Atoi(name)
			if err != nil {
				panic("report: " + name + " is not a place in a list")
			}
			if n > len(inner) {
				return nil
			}
			at = inner[n-1]
		case nil:
			return nil
		default:
			panic("report: there is nothing below " + fmt.Sprint(inner))
		}
	}
	return at
}

// csvCell is a number as it stands in the JSON.
func csvCell(value any) string {
	switch value := plain(finite(value)).(type) {
	case nil:
		return ""
	case string:
		return harmless(value)
	case []string:
		return harmless(strings.Join(value, "; "))
	default: // a number or a bool
		return string(appendJSON(nil, value))
	}
}

// harmless puts an apostrophe before a text that starts as a formula does or
// with a character that a spreadsheet skips before one, as OWASP's page on CSV
// injection advises (from memory).
func harmless(text string) string {
	if strings.IndexAny(text, "=+-@\t\r\n") == 0 {
		return "'" + text
	}
	return text
}
