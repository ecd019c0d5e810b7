// Package distribution holds the states of knowledge about influences: probability distributions in the
// sense of JCGM 101, clause 6, and what readings make of a prior.
package distribution
