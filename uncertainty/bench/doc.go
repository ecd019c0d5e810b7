// Package bench reads the files of a bench into the values of packages equipment, route and
// record, and writes what goes back into files: routes that are saved, the plan that a
// record carries, entries that are added to it. Every mistake in a file is a
// *benchfile.Mistake, which says where it stands; all of a file are told.
//
// A prep and its kit keep the text that they were read from, by which they are read again
// with changes ([Changed]) and written into a record ([Template]).
package bench
