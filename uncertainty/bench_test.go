package uncertainty

import (
	"context"
	"fmt"
	"testing"
)

// dilutionModel is an invented preparation with 30 influences: a weighing with
// its assay, and three steps of an aliquot made up to a mark.
func dilutionModel() (*Model, Node) {
	m := new(Model)
	plus := func(mean float64, parts ...Distribution) Node {
		sum := m.Constant(mean)
		for _, d := range parts {
			sum = m.Add(sum, add(m, fmt.Sprint(len(m.influences)), d))
		}
		return sum
	}
	mass := plus(1, PlusMinus(0.005), PlusMinus(0.005), Normal{Mu: 0, Sigma: 0.01}, PlusMinus(0.02), PlusMinus(0.001))
	c := m.Multiply(mass, plus(0, Rectangular{Low: 0.97, High: 1}))
	for range 3 {
		aliquot := plus(1, Peaked(0.01), Peaked(0.005), Normal{Mu: 0, Sigma: 0.005}, Gamma{Mu: 0.01, Sigma: 0.005})
		flask := plus(25, Peaked(0.06), Normal{Mu: 0, Sigma: 0.03}, PlusMinus(0.015), PlusMinus(0.02))
		c = m.Divide(m.Multiply(c, aliquot), flask)
	}
	return m, c
}

func BenchmarkPropagate(b *testing.B) {
	m, c := dilutionModel()
	for b.Loop() {
		if _, err := m.Propagate(c, 0.95); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPropagateSecondOrder(b *testing.B) {
	m, c := dilutionModel()
	for b.Loop() {
		if _, err := m.PropagateSecondOrder(c); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSimulate(b *testing.B) {
	m, c := dilutionModel()
	for b.Loop() {
		if _, err := m.Simulate(context.Background(), c, Settings{}); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/DefaultTrials, "ns/trial")
}
