package bench

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/report/words/verb"
	"minim/uncertainty/route"
)

var (
	additionForm = regexp.MustCompile(`^\s*(?:step ([1-9][0-9]*)(,? late)?|entry ([1-9][0-9]*)|(bench))\s*:\s*(.*?)\s*$`)
	amountForm   = regexp.MustCompile(`^(?:(.*?)\s+)??([0-9][0-9.,]*\s*[^\s0-9,.;]+3?)(?:\s+(.*))?$`)
	spoiltForm   = regexp.MustCompile(`^(.*?)[,;]?\s*\bspoilt\b[,:;]?\s*(.*)$`)
	withinForm   = regexp.MustCompile(`^(.*?)(?:,? within (.*))?$`)
	optionForm   = regexp.MustCompile(`^([a-z-]+)\s*=\s*(.+)$`)
)

const howToAdd ofMistake = `write it as in "step 3: took 1.96 mL", "step 3: took 2 mL with the 5 mL pipette", "step 2: spoilt, filled past the mark", "step 2: done", "entry 4: took 1.94 mL", "entry 4: withdrawn" or "bench: 23 °C"`

// What is said of a batch that is strengthened takes more words than others.
const (
	strengthenedBy         ofMistake = "strengthened by"
	exampleOfStrengthening ofMistake = `, as in "step 8: strengthened by 0.5 mL of step 4 with the 2 mL pipette"`
)

// parseAddition turns a line into the keys of an entry.
func parseAddition(line string, r *recordReader) ([]string, error) {
	found := additionForm.FindStringSubmatch(line)
	if found == nil || found[5] == "" {
		return nil, &quantity.Error{Found: line, Message: fmt.Sprintf("%q does not say what was done in which step", line), Hint: howToAdd}
	}
	said, options, err := cutOptions(line, found[5])
	if err != nil {
		return nil, err
	}
	var keys, done []string
	switch step, entry := found[1], found[3]; {
	case entry != "":
		keys = append(keys, "corrects = "+entry)
		done, err = r.parseCorrection(line, said, entry)
	case step != "":
		keys = append(keys, "step = "+step)
		if found[2] != "" {
			keys = append(keys, "late = true")
		}
		done, err = parseDone(line, said, "", r.plannedStep(step))
	default:
		done = parseBench(said)
	}
	return slices.Concat(keys, withoutKeys(done, options), options), err
}

// withoutKeys leaves out the keys of which there are others.
func withoutKeys(keys, others []string) []string {
	return slices.DeleteFunc(keys, func(k string) bool {
		name, _, _ := strings.Cut(k, "=")
		return slices.ContainsFunc(others, func(o string) bool { return strings.HasPrefix(o, name+"=") })
	})
}

// parseCorrection turns what was done in place of an entry into keys. The entry may be
// one that is added with this one, of which nothing is known yet.
func (r *recordReader) parseCorrection(line, said, entry string) (keys []string, err error) {
	number, _ := strconv.Atoi(entry) // 0, which no entry has, when it is too long
	e := r.entry(number)
	switch {
	case e == nil:
		return parseDone(line, said, "", nil)
	case e.Temperature.Known && said != "withdrawn":
		return parseBench(said), nil
	case strings.HasPrefix(said, "done"):
		return parseDone(line, said, e.Done.Verb.Traits().Key, r.plannedStep(strconv.Itoa(e.Step)))
	}
	return parseDone(line, said, e.Done.Verb.Traits().Key, nil)
}

// parseBench turns "23 °C within 1 °C" into keys.
func parseBench(said string) []string {
	at := withinForm.FindStringSubmatch(said)
	keys := []string{textAt("temperature", at[1])}
	if at[2] != "" {
		keys = append(keys, textAt("within", at[2]))
	}
	return keys
}

// cutOptions cuts the keys off that follow a semicolon.
func cutOptions(line, said string) (rest string, options []string, err error) {
	parts := strings.Split(said, ";")
	for _, part := range parts[1:] {
		option := optionForm.FindStringSubmatch(strings.TrimSpace(part))
		if option == nil {
			return "", nil, &quantity.Error{Found: line, Message: fmt.Sprintf("%q after the semicolon is not of the form KEY = VALUE", strings.TrimSpace(part)), Hint: `write it as in "step 3: took 1 mL; note = read twice"`}
		}
		value := option[2]
		if !bareValue.MatchString(value) {
			value = benchfile.Quote(value)
		}
		options = append(options, option[1]+" = "+value)
	}
	return strings.TrimSpace(parts[0]), options, nil
}

var bareValue = regexp.MustCompile(`^(true|false|[0-9]+|"[^"\\]*")$`)

// plannedStep is a step of the plan, nil of one that is not planned.
func (r *recordReader) plannedStep(number string) *route.Step {
	if n, err := strconv.Atoi(number); err == nil && n >= 1 && n <= len(r.Planned.Steps) {
		return &r.Planned.Steps[n-1]
	}
	return nil
}

// parseDone turns what was done into keys. The key of the step is "" when it is as planned or
// not known; planned is what it was to be where nothing else is said, nil where that stays open.
func parseDone(line, said, key string, planned *route.Step) (keys []string, err error) {
	if spoilt := spoiltForm.FindStringSubmatch(said); spoilt != nil {
		why := strings.TrimPrefix(cmp.Or(spoilt[2], "spoilt"), "by ")
		said, keys = strings.TrimSpace(spoilt[1]), []string{textAt("spoilt", why)}
	}
	if key == "" && planned != nil {
		key = planned.Verb.Traits().Key
	}
	switch said {
	case "", "done", "done as planned":
		if planned != nil { // what was planned, so that it stays known, and that it is from there
			keys = slices.Concat(mainKeys(planned), []string{"as-planned = true"}, keys)
		}
		return keys, nil
	case "withdrawn":
		return append(keys, "withdrawn = true"), nil
	}
	if rest, all := strings.CutPrefix(said, "took all"); all && (rest == "" || strings.HasPrefix(rest, " of ")) {
		keys = append(keys, textAt("take", "all"))
		if of := strings.TrimPrefix(rest, " of "); of != "" && of != "it" {
			keys = append(keys, textAt("of", of))
		}
		return keys, nil
	}
	parts := amountForm.FindStringSubmatch(said)
	if parts == nil {
		return nil, &quantity.Error{Found: line, Message: fmt.Sprintf("%q gives no reading with its unit", said), Hint: howToAdd}
	}
	does, err := verbOf(line, parts[1], parts[2], key)
	if err != nil {
		return nil, err
	}
	instrument, err := parseInstrument(line, parts[3])
	return append(append([]string{textAt(does, parts[2])}, instrument...), keys...), err
}

// verbOf finds the key of a step for the words that say what was done: that of the
// step, if they fit. A mass that was added is solute.
func verbOf(line, words, amount, key string) (string, error) {
	if words == "" && key != "" {
		return key, nil
	}
	fitting, list := verb.Past(words)
	switch {
	case slices.Contains(fitting, key):
		return key, nil
	case words == "added" && strings.HasSuffix(amount, "g"):
		return "add-solute", nil
	case len(fitting) > 0:
		return fitting[0], nil
	}
	if words == "" {
		return "", &quantity.Error{Found: line, Message: "nothing says what was done with " + amount, Hint: "write one of " + strings.Join(list, ", ")}
	}
	near := cmp.Or(benchfile.Nearest(words, list), "one of "+strings.Join(list, ", "))
	if near == strengthenedBy {
		near += exampleOfStrengthening
	}
	return "", &quantity.Error{Found: line, Message: fmt.Sprintf("%q says nothing of what was done", words), Hint: "write " + near}
}

// parseInstrument turns "of step 2 with the 2 mL pipette" into keys.
func parseInstrument(line, said string) (keys []string, err error) {
	for _, word := range []string{"of", "with", "on", "in", "from"} {
		rest, ok := strings.CutPrefix(said, word+" ")
		if !ok {
			continue
		}
		name, after := strings.TrimPrefix(rest, "the "), ""
		if word == "of" {
			name, after = cutInstrument(name)
		}
		if said = after; word != "of" || name != "solute" && name != "solvent" {
			keys = append(keys, textAt(word, name))
		}
	}
	if said != "" {
		return nil, &quantity.Error{Found: line, Message: fmt.Sprintf("%q does not name an instrument", said), Hint: `write it as in "with the 2 mL pipette", by its name in the kit`}
	}
	return keys, nil
}

// cutInstrument cuts "step 2 with the 2 mL pipette" in two. A name may itself hold with.
func cutInstrument(said string) (name, instrument string) {
	for _, word := range []string{" with the ", " on the ", " with ", " on "} {
		if before, after, found := strings.Cut(said, word); found {
			return before, word[1:] + after
		}
	}
	return said, ""
}

// Said words a step as an addition that says that it was done: "step 7: took 2 mL with
// the 5 mL pipette". Of one that begins with a stock or a packet it says that it was done
// as planned.
func Said(number int, s *route.Step) string { return fmt.Sprintf("step %d: %s", number, verb.Done(s)) }
