// Package equipment describes what stands on a bench: balances, measuring
// cylinders, pipettes and flasks, the class tables of the standards, and the
// liquids and glasses whose expansion matters. A kit is made of
// values: [NewMeasure] and [Measure.Complete] fill in what is not stated. Kit files are read
// by package bench.
//
// An instrument is used through a [Use]: it appends its part of the
// measurement model to the model of a route, one influence for each thing that
// can be wrong, and notes what it assumed and what it could not count. Masses
// are in g, volumes in mL, temperatures in °C.
package equipment
