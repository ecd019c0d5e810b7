// Package equation writes the measurement model of a route down: one equation for each quantity on
// the way, in the order of the steps, in symbols that stand in the table of inputs. It reads the nodes
// of the model, so that no formula is stated twice.
package equation
