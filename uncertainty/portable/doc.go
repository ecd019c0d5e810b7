// Package portable has elementary functions whose results are the same to the last
// bit on every machine. Those of the standard library are not: some are written in
// assembly for one machine and not for another, and where a machine can round a
// product and a sum in one step, as arm64 and newer amd64 do, the compiler makes
// use of it.
//
// Here are only sums, differences, products, quotients and square roots, which IEEE
// 754 rounds in one way, and every product that meets a sum stands in float64(),
// which forbids to fuse them (The Go Programming Language Specification,
// Floating-point operators). The results are within about one unit of the last place,
// unless a comment says otherwise. Coefficients that are not quotients of whole
// numbers name the paper that they are from.
package portable
