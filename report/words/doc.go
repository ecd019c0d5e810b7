// Package words has every sentence of a result: its lines, facts, tables and sections. It
// rounds, sorts and words; it works nothing out.
package words
