package data

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"minim/equipment/quantity"
	"minim/report/words"
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

// CSV is the comparison as a table (RFC 4180, UTF-8): a header, then a row for
// each route. A column is called as in the JSON, analytic.value being
// analytic_value, and holds the same digits; strengths are in strength_unit, of
// what strength_counts says, of which counted_of_weighed is in what is weighed. Each
// tolerance adds inside_1_tolerance and inside_1_conformance_probability, and so on.
// What is null there is empty here, and lists are joined with "; ". A text that a
// spreadsheet would take for a formula is made harmless by an apostrophe in front.
// When before, the comparison on the kit as it is, is not nil, a first column says whose rows they are: those
// of the kit "as it is", and below them those of the kit "changed". The last column,
// may_not_meet, says in every row what may not meet of all that the prep names.
func CSV(c, before *route.Comparison) ([]byte, error) {
	return csvFile(c.Prep, csvRows, c, before)
}

// csvFile writes the rows of a result for a prep, below those of the result on the kit as it is
// where there is one, and in a last column of each, may_not_meet, what stands above every screen.
func csvFile[R comparable](p *route.Prep, rows func(R) ([][]string, error), result, before R) ([]byte, error) {
	all, err := rows(result)
	var none R
	if err == nil && before != none {
		var asItIs [][]string
		if asItIs, err = rows(before); err == nil {
			all = csvBoth(all, asItIs)
		}
	}
	if err != nil {
		return nil, err
	}
	all[0] = append(all[0], "may_not_meet")
	for i := range all[1:] {
		all[1+i] = append(all[1+i], harmless(strings.Join(words.Stops(p), " ")))
	}
	var out bytes.Buffer
	err = csv.NewWriter(&out).WriteAll(all)
	return out.Bytes(), err
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

// csvRows are the header and a row for each route.
func csvRows(c *route.Comparison) ([][]string, error) {
	paths := columns
	for i := range c.Prep.Tolerances {
		paths = append(paths[:len(paths):len(paths)], fmt.Sprintf("inside.%d.tolerance", i+1), fmt.Sprintf("inside.%d.conformance_probability", i+1))
	}
	rows := [][]string{{"strength_unit", "strength_counts", "counted_of_weighed", "target", "volume_mL", "use"}}
	for _, path := range paths {
		rows[0] = append(rows[0], strings.ReplaceAll(path, ".", "_"))
	}
	for i := range c.Results {
		row, err := csvRow(c, i, paths)
		if err != nil {
			return nil, err
		}
		rows = append(rows, row)
	}
	return rows, nil
}

func csvRow(c *route.Comparison, i int, paths []string) ([]string, error) {
	cells, err := cellsOf(routeToJSON(c.Prep, &c.Results[i]), paths)
	p := c.Prep
	row := []string{harmless(p.Target.Unit.Name), harmless(words.Meant(p)), digits(p.SoluteContent()), digits(p.Target.Value), digits(p.Volume), strconv.FormatBool(i == c.Verdict.Use)}
	return append(row, cells...), err
}

// cellsOf are those of one row: what the JSON of a value has at places in it.
func cellsOf(value any, paths []string) (cells []string, err error) {
	data, err := json.Marshal(value)
	if err != nil {
		return nil, err
	}
	decoder := json.NewDecoder(bytes.NewReader(data))
	decoder.UseNumber()
	var whole any
	if err := decoder.Decode(&whole); err != nil {
		return nil, err
	}
	for _, path := range paths {
		cells = append(cells, csvCell(lookUp(whole, strings.Split(path, "."))))
	}
	return cells, nil
}

// recordsCSV is a header and a row for each record, with columns called as in their JSON.
func recordsCSV[R any](records []R, columns ...string) ([]byte, error) {
	rows := [][]string{columns}
	for i := range records {
		cells, err := cellsOf(records[i], columns)
		if err != nil {
			return nil, err
		}
		rows = append(rows, cells)
	}
	var out bytes.Buffer
	err := csv.NewWriter(&out).WriteAll(rows)
	return out.Bytes(), err
}

// digits prints a number with all of its digits.
func digits(x float64) string { return quantity.Exact(x) }

// lookUp goes down the names and numbers (from 1) of a decoded JSON; it is nil
// below a null and beyond the end of a list. It panics when a name is not there.
func lookUp(at any, path []string) any {
	for _, name := range path {
		switch inner := at.(type) {
		case map[string]any:
			next, ok := inner[name]
			if !ok {
				panic("report: the JSON of a route has no " + name)
			}
			at = next
		case []any:
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

func csvCell(value any) string {
	switch value := value.(type) {
	case nil:
		return ""
	case string:
		return harmless(value)
	case []any:
		texts := make([]string, len(value))
		for i := range value {
			texts[i] = fmt.Sprint(value[i])
		}
		return harmless(strings.Join(texts, "; "))
	default: // json.Number or bool
		return fmt.Sprint(value)
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
