// Package kits has every sentence about instruments by themselves: the tables of a kit, the
// class tables, and what may not meet.
package kits
