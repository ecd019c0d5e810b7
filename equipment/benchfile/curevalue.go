package benchfile

import (
	"regexp"
	"strings"

	"minim/equipment/quantity"
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
	found, cure := "found "+found, parts[1]+"."+parts[2]
	if parts[3] != "" {
		return f.mistake(at, found+", a number with a decimal comma", `write "`+cure+" "+parts[3]+`" with a decimal point, in quotes`)
	}
	return f.mistake(at, found+", a number with a decimal comma", "write "+cure+", and a quantity in quotes with its unit")
}

// afterValue: capacity = "10 mL" nominal
func (f *fault) afterValue() *Mistake {
	at := f.bareSpan()
	quoted := at.from < at.to && isOneOf(f.data[at.from], `"'[{`)
	if !f.says("expected newline") || at.from == at.to || !quoted && !strings.Contains(string(f.data[at.from:at.to]), "=") {
		return nil
	}
	extra := span{f.at.from, max(f.at.to, at.to)}
	found := "found " + quote(string(f.data[extra.from:extra.to]))
	if f.char() == "," {
		return f.mistake(extra, found+" after the value", "put several values in brackets, as in [1, 2]")
	}
	return f.mistake(extra, found+" after the value", "start a comment with #, a new key on a new line")
}

// bare: capacity = 10 mL
func (f *fault) bare() *Mistake {
	at := f.bareSpan()
	found := string(f.data[at.from:at.to])
	if f.quote >= 0 || f.says("comment", "nested") {
		return nil
	}
	short := quantity.Shortened(found)
	switch strings.ToLower(found) {
	case "":
		if !f.says("value") {
			return nil
		}
		return f.mistake(f.at, "found no value", `write the value after the =, as in key = "10 mL"`)
	case "true", "yes", "on", "false", "no", "off":
		return f.mistake(at, "found "+short+" without quotes", "write true or false, or put quotes round it: "+quote(found))
	}
	switch {
	case strings.ContainsAny(found[:1], `"'[{`):
		return nil
	case badNumber.MatchString(found):
		return f.mistake(at, "found "+short+", which is not a number", "write digits before and after the point, no zero in front; a quantity stands in quotes with its unit")
	}
	return f.mistake(at, "found "+short+" without quotes", "put quotes round it: "+quote(found))
}

var badNumber = regexp.MustCompile(`^[0-9.+-][0-9.+_eE-]*$`)
