package benchfile

import (
	"fmt"
	"regexp"
	"strings"
)

var commaNumber = regexp.MustCompile(`^([+-]?[0-9]+),([0-9]+) *([^0-9.,"']*)$`)

// decimal: capacity = 0,5 mL
func (f *fault) decimal() *Mistake {
	at := f.bareSpan()
	found := string(f.data[at.from:at.to])
	parts := commaNumber.FindStringSubmatch(found)
	if parts == nil {
		return nil
	}
	hint := "write " + parts[1] + "." + parts[2] + ", and a quantity in quotes with its unit"
	if parts[3] != "" {
		hint = fmt.Sprintf(`write "%s.%s %s" with a decimal point, in quotes`, parts[1], parts[2], parts[3])
	}
	return f.source.mistake(at, "found "+found+", a number with a decimal comma", hint)
}

// afterValue: capacity = "10 mL" nominal
func (f *fault) afterValue() *Mistake {
	at := f.bareSpan()
	quoted := at.from < at.to && isOneOf(f.data[at.from], `"'[{`)
	if !f.says("expected newline") || at.from == at.to || !quoted && !strings.Contains(string(f.data[at.from:at.to]), "=") {
		return nil
	}
	hint := "start a comment with #, a new key on a new line"
	if f.char() == "," {
		hint = "put several values in brackets, as in [1, 2]"
	}
	extra := span{f.at.from, max(f.at.to, at.to)}
	return f.source.mistake(extra, "found "+quote(string(f.data[extra.from:extra.to]))+" after the value", hint)
}

// bare: capacity = 10 mL
func (f *fault) bare() *Mistake {
	at := f.bareSpan()
	found := string(f.data[at.from:at.to])
	if f.quote >= 0 || f.says("comment", "nested") {
		return nil
	}
	if found == "" {
		if !f.says("value") {
			return nil
		}
		return f.source.mistake(f.at, "found no value", `write the value after the =, as in key = "10 mL"`)
	}
	if strings.ContainsAny(found[:1], `"'[{`) {
		return nil
	}
	if badNumber.MatchString(found) {
		return f.source.mistake(at, "found "+Shortened(found)+", which is not a number", "write digits before and after the point, no zero in front; a quantity stands in quotes with its unit")
	}
	hint := "put quotes round it: " + quote(found)
	switch strings.ToLower(found) {
	case "true", "yes", "on", "false", "no", "off":
		hint = "write true or false, or put quotes round it: " + quote(found)
	}
	return f.source.mistake(at, "found "+Shortened(found)+" without quotes", hint)
}

var badNumber = regexp.MustCompile(`^[0-9.+-][0-9.+_eE-]*$`)
