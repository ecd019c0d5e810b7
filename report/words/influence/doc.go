// Package influence says how influences, and quantities on the way, are called by their
// codes; and whose they are, and what they count towards.
package influence
