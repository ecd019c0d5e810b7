package webtest

import _ "embed"

//go:embed rules.js
var rules string

// Faults are what the page does against our rules for pages, a line each: everything that is used or
// seen has a name, roles and labels are what they should be, headings go level by level, texts have a
// contrast of 4.5 with what they stand on, and the focus goes in the order of reading and is seen.
func (b *Browser) Faults() (faults []string) {
	b.t.Helper()
	for _, fault := range b.Run(rules).([]any) {
		faults = append(faults, fault.(string))
	}
	return faults
}
